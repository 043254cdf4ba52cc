"""The same tests run the same way every time: nothing is drawn at random between runs."""

from hypothesis import settings

settings.register_profile("fixed", derandomize=True, deadline=None, database=None, max_examples=200)
settings.load_profile("fixed")
