"""What solvers share: names, checks and accounts."""

import numpy as np
import pytest

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import account, checked, named, one_case, said, single
from ropecalc.mechanics.swing import haul_lost, line_lost
from tests.mechanics.cases import CASE, CASE_LOAD


def test_a_variable_under_another_name() -> None:
    other = named(q.LOAD, "first_load", "weight on the left")
    assert (other.name, other.meaning) == ("first_load", "weight on the left")
    assert (other.symbol, other.kind, other.domain) == (q.LOAD.symbol, q.LOAD.kind, q.LOAD.domain)


def test_values_are_numbers_inside_their_domain() -> None:
    load, angle = checked((q.LOAD, 2000), (q.LEG_ANGLE, [0.1, 0.2]))
    assert load == 2000.0 and type(load) is float
    assert isinstance(angle, np.ndarray) and angle.tolist() == [0.1, 0.2]
    with pytest.raises(DomainError, match="load"):
        checked((q.LOAD, -1.0), (q.LEG_ANGLE, 0.1))
    with pytest.raises(DomainError, match="leg_angle"):
        checked((q.LOAD, 1.0), (q.LEG_ANGLE, 3.2))
    with pytest.raises(DomainError, match="must be a number"):
        checked((q.LOAD, "heavy"))


def test_an_account() -> None:
    lines = (said("First.", r"S_\mathrm{a} = e\, S", "numbers", law=True), said("Then."))
    told = account("A title", lines, "the result", assumptions=["It is so."])
    assert told.as_text() == (
        "A title\nAssumed: It is so.\n1. First. S_a = e S\n2. Then. \nthe result"
    )
    assert [line.is_law for line in told.lines] == [True, False]
    assert told.lines[0].numbers == "numbers" and told.lines[1].latex == ""
    assert told.cautions == cautions.EVERY_RESULT
    assert told.source == "worked out here from equilibrium" and told.meanings == ()
    own = account("A", lines, "", cautions=("Mind.",), source="a book")
    assert own.cautions == ("Mind.",) and own.source == "a book" and own.assumptions == ()
    assert said("x", r"\sum N_i \vec{u}_i \cdot c").text == "sum of N_i u_i * c"


def test_what_takes_one_number_refuses_arrays_in_words() -> None:
    assert single((q.LOAD, 2000)) == [2000.0]
    rig, place = CASE, (CASE_LOAD, 2.5, 27.0)
    belay = {"belay_slack": 0.5, "belay_length": 15.0, "stiffness": 5e4}
    for name in belay:
        with pytest.raises(DomainError, match=f"{name} is an array; give one number at a time"):
            haul_lost(rig, *place, **{**belay, name: [1.0, 2.0]})
    series = {"stiffness": 5e4, "play": 3.0, "efficiency": 0.9, "tie_back_slack": 0.3}
    for name in ("stiffness", "play", "tie_back_slack"):
        with pytest.raises(DomainError, match=f"{name} is an array; give one number at a time"):
            line_lost(
                rig, *place, lines=3, tensioning="one rope in series",
                **{**series, name: [1.0, 2.0]},
            )  # fmt: skip


def test_words_tell_of_one_case() -> None:
    one_case(1.0, 2)
    one_case()
    with pytest.raises(DomainError, match=r"single numbers, not arrays\. Choose one case"):
        one_case(1.0, np.array([1.0, 2.0]))
