"""Waiting for what is still on its way from the browser."""

import asyncio
from collections.abc import Callable

_ON_ITS_WAY = 0.4  # seconds


def after_the_last_move(act: Callable[[], object]) -> None:
    """Call ``act`` once the last move of a slider or a list has come.

    A browser holds a move back while an earlier one is being worked on, and lets a press on a
    button overtake it.
    """
    try:
        loop = asyncio.get_running_loop()
    except RuntimeError:  # outside a kernel nothing is on its way
        act()
        return
    loop.call_later(_ON_ITS_WAY, act)
