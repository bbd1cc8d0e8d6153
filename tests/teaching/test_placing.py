"""Where words stand: beside their point, on the wanted side if it is free."""

import math

import pytest

from ropecalc.teaching.placing import EVERYWHERE, LINE_COST, Box, Place, best_place

_SIZE: Place = (40.0, 10.0)
_GAPS = (5.0, 20.0)


def _best(
    towards: Place, segments: list[Box] | None = None, taken: list[Box] | None = None, **more: Box
) -> tuple[float, Box, float]:
    frame = more.get("frame", EVERYWHERE)
    return best_place(
        (0.0, 0.0), _SIZE, towards, _GAPS, frame=frame, segments=segments or [], taken=taken or []
    )


@pytest.mark.parametrize(
    ("towards", "box"),
    [
        ((1.0, 0.0), (5.0, -5.0, 45.0, 5.0)),
        ((-1.0, 0.0), (-45.0, -5.0, -5.0, 5.0)),
        ((0.0, 1.0), (-20.0, 5.0, 20.0, 15.0)),
        ((0.0, -1.0), (-20.0, -15.0, 20.0, -5.0)),
    ],
)
def test_a_free_side_is_taken_as_wanted_and_close_by(towards: Place, box: Box) -> None:
    cost, found, gap = _best(towards)
    assert cost == 0.0 and gap == 5.0
    assert found == pytest.approx(box)


def test_a_line_on_the_wanted_side_is_avoided() -> None:
    cost, box, _ = _best((1.0, 0.0), segments=[(20.0, -9.0, 20.0, 9.0)])
    assert cost == 0.0
    assert not (box[0] < 20.0 < box[2] and box[1] < 9.0 and box[3] > -9.0)


def test_words_keep_off_other_words_and_inside_a_frame() -> None:
    taken = [(-30.0, -30.0, 60.0, 4.0)]
    _, box, _ = _best((1.0, 0.0), taken=taken)
    assert box[1] >= 4.0 or box[0] >= 60.0 or box[2] <= -30.0
    _, box, _ = _best((1.0, 0.0), frame=(-100.0, -100.0, 30.0, 100.0))
    assert box[2] <= 30.0


def test_where_no_place_is_free_a_line_is_crossed_rather_than_words() -> None:
    ring = [
        (*_on_ring(i), *_on_ring(i + 1)) for i in range(24)
    ]  # crossed at either gap, whichever way the words go
    cost, _, _ = _best((1.0, 0.0), segments=ring)
    assert cost >= LINE_COST
    everywhere = [(-200.0, -200.0, 200.0, 200.0)]
    covered, _, _ = _best((1.0, 0.0), taken=everywhere)
    assert covered > cost


def _on_ring(number: int) -> Place:
    turn = number * math.tau / 24
    return 24.0 * math.cos(turn), 24.0 * math.sin(turn)
