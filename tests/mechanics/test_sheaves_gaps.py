"""The steps of the sheave's argument say what they do."""

from ropecalc.mechanics.sheaves import bearing_ratio


def test_dividing_by_the_tension_ahead_leaves_none_of_it() -> None:
    ahead = bearing_ratio.symbol("tension_ahead")
    (divided,) = [step for step in bearing_ratio.steps if step.operation == "divide"]
    assert ahead not in divided.equation.free_symbols
