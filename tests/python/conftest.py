"""Fixed seeds: the same tests run the same way every time."""

from hypothesis import settings

settings.register_profile("fixed", derandomize=True, deadline=None, database=None, max_examples=200)
settings.load_profile("fixed")
