"""What cells tell, against an elastic tensioner rope that is taken in and then handed over."""

import pytest

from ropecalc.mechanics.measurement import LastMove, Tensioner, line_from_strand, total_from_strand
from tests.mechanics.test_tensioner_flow import line_tensions, tensioned


@pytest.mark.parametrize(("lines", "efficiency"), [(2, 0.85), (3, 0.9)])
def test_taken_in_and_handed_over(lines: int, efficiency: float) -> None:
    """Handing over lets rope back, nobody measures how much: at first too little to be seen."""
    system = Tensioner(lines, efficiency)
    flow = tensioned(lines, efficiency, stiff_lines=False)

    def inferred(move: LastMove) -> list[tuple[float, float]]:
        reading = {"reading": flow.tension(flow.hand), "strand": 1, "last_move": move}
        bands = [total_from_strand(system, **reading).band]
        bands += [line_from_strand(system, line=i + 1, **reading).band for i in range(lines)]
        return [(band.low, band.high) for band in bands]

    def truth() -> list[float]:
        each = line_tensions(flow, lines)
        return [sum(each), *each]

    flow.take_in(0.8)
    for value, (low, high) in zip(truth(), inferred(LastMove.TAKEN_IN), strict=True):
        assert low == high == pytest.approx(value, rel=3e-3)
    most_wrong = 0.0
    for _ in range(30):
        flow.take_in(-0.003)
        values = truth()
        for value, (low, high) in zip(values, inferred(LastMove.HANDED_OVER), strict=True):
            assert low * (1 - 3e-3) <= value <= high * (1 + 3e-3)
        most_wrong = max(most_wrong, values[0] / inferred(LastMove.TAKEN_IN)[0][0])
    assert most_wrong > 1.15  # the one value of a strand still in the hand would be far too low
    while flow.tension(flow.hand) > 120.0:
        flow.take_in(-0.004)
    for _ in range(3):  # let out, handing over goes on in the same direction
        for value, (low, high) in zip(truth(), inferred(LastMove.LET_OUT), strict=True):
            assert low == high == pytest.approx(value, rel=4e-3)
        flow.take_in(-0.003)
