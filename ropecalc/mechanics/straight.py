"""When lines count as lying in one straight line, or in one plane: one tolerance for all.

Near such a geometry tensions grow without limit, and a number there says more about the last
digit of a measured place than about a rope. So it is refused like the geometry itself.
"""

FLAT = 1e-3
"""Angle in rad between two lines, or volume spanned by three unit vectors, up to which they count
as one line or one plane: a millimetre in a metre, less than anyone measures at a rock wall. Forces
would be up to a thousand times the load there."""
FLAT_WORDS = "0.06°"
"""The same for sentences, rounded up."""
