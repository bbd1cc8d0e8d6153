"""What a reader sees of an argument."""

import math

from ropecalc import cautions
from ropecalc.derivation import Argument, Explanation, Step, derive
from ropecalc.mechanics.anchors import critical_leg_angle, two_leg_anchor
from ropecalc.mechanics.critical import track_tension_at_litter_angle
from ropecalc.mechanics.friction import capstan_tension
from ropecalc.mechanics.guiding import (
    attendant_haul_tension,
    slack_haul_depression,
    straight_line_limit,
)
from ropecalc.units import Display
from tests.derivation.toys import DIAGONAL, SHIFT, WIDTH


def numbers(explanation: Explanation) -> list[str]:
    return [line.numbers for line in explanation.lines]


def test_the_readers_numbers_stand_in_the_mathematics() -> None:
    explanation = two_leg_anchor.explain(load=2000.0, leg_angle=math.radians(120.0))
    assert numbers(explanation) == [
        r"2 \times L \times \cos{\left(\frac{120^\circ}{2} \right)} = 2.00\,\mathrm{kN}",
        r"L = \frac{2.00\,\mathrm{kN}}{2 \times \cos{\left(\frac{120^\circ}{2} \right)}}"
        r" = 2.00\,\mathrm{kN}",
    ]
    assert explanation.result == "Tension in each leg: 2.00 kN"
    assert [line.is_law for line in explanation.lines] == [True, False]
    assert explanation.lines[1].latex == r"L = \frac{W}{2 \cos{\left(\frac{\theta}{2} \right)}}"
    assert explanation.lines[1].text == "L = W/(2*cos(theta/2))"
    assert explanation.cautions == cautions.EVERY_RESULT


def test_a_half_turn_beside_angles_is_in_their_unit_and_no_pi() -> None:
    explanation = track_tension_at_litter_angle.explain(
        load=2000.0, litter_angle=math.radians(120), ground_depression=math.radians(10)
    )
    turned = next(line for line in explanation.lines if "pi" in line.latex)
    assert turned.numbers == r"\alpha + 120^\circ = 180^\circ + 10.0^\circ"
    assert r"\pi" in turned.latex  # the law itself is as it is
    radians = track_tension_at_litter_angle.explain(
        Display(angle="rad"), load=2000.0, litter_angle=2.0, ground_depression=0.2
    )
    assert r"3.14\,\mathrm{rad}" in "".join(line.numbers for line in radians.lines)


def test_in_the_readers_units() -> None:
    explanation = attendant_haul_tension.explain(
        Display(force="lbf", length="ft"), load=2000.0, off_plumb=0.6096, drop=6.096
    )
    assert explanation.result == "Tension of the haul line: 452 lbf"
    last = explanation.lines[-1].numbers
    assert r"450\,\mathrm{lbf}" in last and r"\left(2.00\,\mathrm{ft}\right)^{2}" in last
    assert r"\left(20.0\,\mathrm{ft}\right)^{2}" in last
    # 1/10 is a lean of 5.71 degrees, found on the way and used from then on
    assert any(line.numbers.endswith(r"= 5.71^\circ") for line in explanation.lines)
    assert any(r"\cos{\left(5.71^\circ \right)}" in line.numbers for line in explanation.lines)


def test_negative_numbers_stand_in_brackets_and_the_answer_does_not() -> None:
    explanation = straight_line_limit.explain(z=10.0, x_D=0.3, z_D=32.0, x_B=40.0, z_B=-2.0)
    assert r"\left(-2.00\,\mathrm{m}\right)" in explanation.lines[-1].numbers
    slack = slack_haul_depression.explain(haul_elevation=math.radians(60.0))
    assert slack.lines[-1].numbers == r"\beta = - 60.0^\circ = -60.0^\circ"
    assert slack.result.endswith(": −60.0°")


def test_an_angle_that_counts_as_an_arc_is_shown_in_radians() -> None:
    explanation = capstan_tension.explain(tension_behind=2000.0, friction=0.3, turn=math.pi / 2)
    assert explanation.lines[-1].numbers.endswith(
        r"= 2.00\,\mathrm{kN} \times e^{1.57\,\mathrm{rad} \times 0.300} = 3.20\,\mathrm{kN}"
    )
    assert explanation.lines[0].numbers == ""  # a rate of change has no place for a number
    assert "Derivative" in explanation.lines[0].text


def test_a_line_without_given_values_stays_without_numbers() -> None:
    explanation = critical_leg_angle.explain(load_ratio=1.0)
    assert explanation.lines[0].numbers == ""
    assert explanation.lines[-1].numbers.endswith(r"= 120^\circ")


def test_a_constant_that_is_found_does_not_leave_half_an_equation() -> None:
    @derive("Constant", given=(WIDTH,), between=(SHIFT,), result=DIAGONAL)
    def constant(argument: Argument) -> Step:
        w, s, g = argument.symbols(WIDTH, SHIFT, DIAGONAL)
        fixed = argument.law("Two.", s, argument.sympy.Integer(2))
        total = argument.law("Add.", g, w + s)
        return argument.substitute("Put in.", total, fixed)

    lines = constant.explain(width=3.0).lines
    assert lines[0].numbers == ""
    assert lines[1].numbers == r"g = 2.00\,\mathrm{m} + 3.00\,\mathrm{m} = 5.00\,\mathrm{m}"


def test_as_text() -> None:
    text = two_leg_anchor.explain(load=2000.0, leg_angle=math.radians(120.0)).as_text()
    lines = text.splitlines()
    assert lines[0] == "Two equal legs share a load"
    assert lines[1] == "Assumed: The pull acts at the point where the legs meet."
    assert lines[-2] == ("2. Divide by what stands beside the tension. L = W/(2*cos(theta/2))")
    assert lines[-1] == "Tension in each leg: 2.00 kN"
