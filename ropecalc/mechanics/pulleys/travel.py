"""How far everything moves while the load rises: no rope gets longer or shorter.

Between two places where a rope is held (tied, gripped, in the hand) its length stays the same, so
what one strand loses another gains. Nothing here looks at a force; that the hand's travel over the
load's equals the advantage without friction is virtual work, and a check on both.
"""

from dataclasses import dataclass
from fractions import Fraction

from ropecalc.derivation import DomainError, Explanation
from ropecalc.mechanics.manners import account, said
from ropecalc.mechanics.pulleys.system import How, Strand, System, solve_exactly


@dataclass(frozen=True)
class Travel:
    """Exact travel per metre that the load rises.

    ``ratio`` is rope taken in by the hand; ``rise`` how far each free body moves towards the
    anchor's side; ``growth`` how much longer each strand gets (negative: shorter), by strand index;
    ``flow`` how much rope passes each sheave, by its place in ``system.sheaves``, positive towards
    the last visit of its rope.
    """

    system: System
    ratio: Fraction
    rise: dict[str, Fraction]
    growth: tuple[Fraction, ...]
    flow: tuple[Fraction, ...]

    def explain(self) -> Explanation:
        """Rope by rope, what gets shorter and what gets longer per metre of load."""
        lines = [said(f"Let {self.system.load.name} rise by 1 m.", law=True)]
        for name, rise in self.rise.items():
            if name != self.system.load.name:
                lines.append(said(f"{name} then {_moved(rise)}."))
        for strand, growth in zip(self.system.strands, self.growth, strict=True):
            lines.append(said(f"{strand.name}: {_grown(growth)}."))
        lines.append(
            said("What the strands up to the hand lose together has come through the hand.")
        )
        return account(
            f"{self.system.name}: travel",
            lines,
            f"rope through the hand: {_number(self.ratio)} m for 1 m of load",
            assumptions=("Ropes do not stretch, grabs do not slip.",),
            source="worked out here from each rope's length staying the same",
        )


def travel(system: System) -> Travel:
    """Travel ratio, the bodies' and the strands' movements, from rope conservation alone."""
    runs = _runs(system)
    moving = [b.name for b in system.free_bodies if b is not system.load]
    columns = {name: i for i, name in enumerate(moving)}
    matrix, right = [], []
    for run in runs:
        row = [0] * (len(moving) + 1)
        known = 0
        for strand in run:
            for end in (strand.start.body, strand.end.body):
                if end in columns:  # towards the anchor's side is positive here
                    row[columns[end]] += _growth(system, strand, end)
                elif end == system.load.name:
                    known += _growth(system, strand, end)
        row[-1] = 1 if system.hand_strand in run else 0
        matrix.append(row)
        right.append(-known)
    solution = solve_exactly(matrix, right)
    if solution is None:  # cannot happen while the tensions settle: the same numbers, transposed
        raise DomainError(f"{system.name}: the bodies' movements do not settle. Check the ropes.")
    rise = dict(zip(moving, solution[:-1], strict=True))
    rise = {b.name: rise.get(b.name, Fraction(1)) for b in system.free_bodies}
    growth = tuple(
        sum(
            (
                _growth(system, s, end) * rise.get(end, Fraction(0))
                for end in (s.start.body, s.end.body)
            ),
            Fraction(0),
        )
        for s in system.strands
    )
    return Travel(system, solution[-1], rise, growth, _flow(system, growth))


def _growth(system: System, strand: Strand, end: str) -> int:
    """How much longer the strand gets when its end at ``end`` moves 1 towards the anchor's side."""
    return system.pull(strand, end)


def _runs(system: System) -> list[list[Strand]]:
    """Strands between two places where their rope is held."""
    runs: list[list[Strand]] = []
    for attachment in system.attachments:
        if attachment.after is not None:
            if attachment.visit.how is not How.OVER:
                runs.append([])
            runs[-1].append(attachment.after)
    return runs


def _flow(system: System, growth: tuple[Fraction, ...]) -> tuple[Fraction, ...]:
    """Rope that passes each sheave, followed from an end of its run that is not the hand."""
    flows: dict[int, Fraction] = {}  # by the strand before the sheave
    for run in _runs(system):
        from_hand = system.hand.name == run[0].start.body
        total = sum((growth[s.index] for s in run), Fraction(0)) if from_hand else Fraction(0)
        passed = total  # what the hand at the start has taken in flows out of the run there
        for strand in run[:-1]:
            passed -= growth[strand.index]
            flows[strand.index] = passed
    return tuple(flows[a.before.index] for a in system.sheaves if a.before is not None)


def _number(value: Fraction) -> str:
    return str(value)


def _moved(rise: Fraction) -> str:
    if rise == 0:
        return "stays where it is"
    way = "towards the anchor" if rise > 0 else "away from the anchor"
    return f"moves {_number(abs(rise))} m {way}"


def _grown(growth: Fraction) -> str:
    if growth == 0:
        return "stays as long"
    return f"{_number(abs(growth))} m {'longer' if growth > 0 else 'shorter'}"
