"""Small quantities for trying the machinery on arguments whose outcome is obvious."""

import math

from ropecalc.derivation import ANY, NOT_NEGATIVE, POSITIVE, Domain, Range, Variable
from ropecalc.units import Kind

WIDTH = Variable("width", "w", "width of the plate", Kind.LENGTH, POSITIVE, Range(1, 4, 2))
DEPTH = Variable("depth", "d", "depth of the plate", Kind.LENGTH, POSITIVE, Range(1, 4, 3))
SHIFT = Variable("shift", "s", "shift to one side", Kind.LENGTH, ANY, Range(-5, 5, 1))
DIAGONAL = Variable("diagonal", "g", "diagonal", Kind.LENGTH, POSITIVE, Range(1, 9, 4))
REST = Variable("rest", "r", "what is left over", Kind.LENGTH, NOT_NEGATIVE, Range(0, 3, 1))
PULL = Variable("pull", "P", "pull of the string", Kind.FORCE, POSITIVE, Range(100, 900, 500))
SHARE = Variable("share", "k", "share of the pull", Kind.RATIO, Domain(0, 1), Range(0, 1, 0.5))
TURNED = Variable(
    "turned",
    r"\theta",
    "angle that is turned",
    Kind.ANGLE,
    Domain(0.0, math.pi),
    Range(0.1, 1.5, 0.5),
    in_si=True,
)
LEAN = Variable(
    "lean", r"\lambda", "angle of lean", Kind.ANGLE, Domain(0, math.pi), Range(0.1, 3, 1)
)
