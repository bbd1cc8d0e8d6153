"""Finding a part of the course by its key; who asks for one that is not there is told the keys."""

from collections.abc import Iterable, Mapping
from typing import Protocol, TypeVar


class Keyed(Protocol):
    """Something with a key of its own."""

    @property
    def key(self) -> str: ...


K = TypeVar("K", bound=Keyed)
T = TypeVar("T")


def by_key(things: Iterable[K]) -> dict[str, K]:
    """The same things, each under its key."""
    return {thing.key: thing for thing in things}


def find(things: Mapping[str, T], key: str, what: str) -> T:
    """The one of ``things`` under ``key``. ``what`` they are is said with the keys if it is none.

    Raises KeyError in words.
    """
    if key not in things:
        raise KeyError(f"there is no {what} {key!r}; there is {', '.join(things) or 'none'}")
    return things[key]
