"""Parts of a result, which pickle as their place in it."""

from __future__ import annotations


def part(owner: object, name: str, number: int) -> object:
    """The part of this number in a list of the owner's."""
    return getattr(owner, name)[number]
