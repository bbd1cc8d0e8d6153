"""Rope over an edge: the side the rope moves towards carries more."""

from ropecalc import cautions
from ropecalc.derivation import Argument, Step, derive
from ropecalc.mechanics import quantities as q


@derive(
    "Rope over a rounded edge",
    given=(q.TENSION_BEHIND, q.FRICTION, q.TURN),
    result=q.TENSION_AHEAD,
    assumptions=(
        "The rope slides, or is just about to, over a smooth rounded edge.",
        "A sharp edge is a matter of cutting, not of friction.",
    ),
    cautions=(cautions.STATIC, cautions.AUTHORITY),
    source="Euler and Eytelwein's belt friction, derived here from a short piece of rope",
)
def capstan_tension(argument: Argument) -> Step:
    """Tension in N on the side the rope moves towards, from the tension on the other side.

    Hauling: the load's side is behind, the team's side ahead. Lowering: the other way round.
    """
    behind, mu, turn, ahead = argument.symbols(
        q.TENSION_BEHIND, q.FRICTION, q.TURN, q.TENSION_AHEAD
    )
    sp = argument.sympy
    along = sp.Function("S")
    law = argument.law(
        "A short piece of rope presses on the edge with its tension times its small turn; "
        "friction adds that pressure times the coefficient to the tension.",
        sp.Derivative(along(turn), turn),
        mu * along(turn),
    )
    solution = sp.dsolve(law.equation, along(turn), ics={along(0): behind})
    grown = argument.solved(
        "Add up all the pieces, starting from the tension behind.", along(turn), solution.rhs
    )
    named = argument.law("After the whole turn this is the tension ahead.", ahead, along(turn))
    return argument.solved(
        "So the tension grows with every bit of turn.",
        ahead,
        named.equation.rhs.subs(along(turn), grown.equation.rhs),
    )
