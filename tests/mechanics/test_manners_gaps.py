"""What solvers share: values are checked by name, and an account reads well."""

import numpy as np
import pytest

from ropecalc import cautions
from ropecalc.derivation import DomainError
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics.manners import account, checked, named, said


def test_values_come_back_as_numbers_in_order() -> None:
    load, turn = checked((q.LOAD, 2000), (q.TURN, [1, 2]))
    assert load == 2000.0 and type(load) is float
    assert isinstance(turn, np.ndarray) and turn.tolist() == [1.0, 2.0]


@pytest.mark.parametrize("which", [0, 1])
def test_every_value_is_checked(which: int) -> None:
    values = [2000.0, 1.0]
    values[which] = -1.0
    variable = (q.LOAD, q.TURN)[which]
    with pytest.raises(DomainError, match=rf"\b{variable.name}\b"):
        checked((q.LOAD, values[0]), (q.TURN, values[1]))


def test_a_variable_is_asked_for_under_another_name() -> None:
    asked = named(q.LOAD, "cargo", "weight of the cargo")
    assert (asked.name, asked.meaning) == ("cargo", "weight of the cargo")
    assert (asked.symbol, asked.domain, asked.kind) == (q.LOAD.symbol, q.LOAD.domain, q.LOAD.kind)
    with pytest.raises(DomainError, match=r"weight of the cargo") as refusal:
        checked((asked, -1.0))
    assert "load" not in str(refusal.value)


def test_a_sentence_is_no_law_unless_it_says_so() -> None:
    assert not said("It hangs.").is_law
    line = said("A law.", r"S_\mathrm{a} = S_\mathrm{b}\, \mu \cdot 2", law=True)
    assert line.is_law and line.sentence == "A law."
    assert line.text.replace("  ", " ") == "S_a = S_b mu * 2"


def test_an_account_carries_everything_that_was_told() -> None:
    lines = [said("One."), said("Two.")]
    told = account("Title", lines, "result: 1", assumptions=["Assumed."])
    assert (told.title, told.lines, told.result) == ("Title", tuple(lines), "result: 1")
    assert told.assumptions == ("Assumed.",)
    assert told.cautions == cautions.EVERY_RESULT and "equilibrium" in told.source
