"""Where a quantity changes its sign, for many places at once."""

from collections.abc import Callable
from typing import Any

import numpy as np

_HALVINGS = 200
"""More than a double can tell apart; the search ends by itself when nothing moves any more."""


def bisected(function: Callable[[Any], Any], low: Any, high: Any) -> Any:
    """The place between ``low`` and ``high`` where ``function`` falls from above zero to below.

    All three work on arrays; each point is searched on its own. Where the function is nowhere
    above zero the answer is ``low``, where it is nowhere below it is ``high``.
    """
    low, high = (np.array(end, dtype=float) for end in np.broadcast_arrays(low, high))
    for _ in range(_HALVINGS):
        middle = 0.5 * (low + high)
        if np.all((middle <= low) | (middle >= high)):
            break
        above = function(middle) > 0
        low, high = np.where(above, middle, low), np.where(above, high, middle)
    return 0.5 * (low + high)
