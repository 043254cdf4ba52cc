"""Parts of a result, which pickle as their place in it."""

from __future__ import annotations


def part(owner: object, name: str, number: int) -> object:
    """The part of this number in a list of the owner's."""
    return getattr(owner, name)[number]


def find(root: object, *steps: str | int) -> object:
    """The part at the end of these steps: attributes, methods that give it, and numbers in lists."""
    for step in steps:
        if isinstance(step, int):
            root = root[step]  # type: ignore[index]
        else:
            root = getattr(root, step)
            if callable(root):
                root = root()
    return root
