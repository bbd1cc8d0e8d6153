"""Follow the rope: a tensioner on three lines, strand by strand, from one reading."""

from dataclasses import replace

from sympy import Integer

from ropecalc import cautions
from ropecalc.mechanics import quantities as q
from ropecalc.mechanics import tensioner, tensioner_let_out
from ropecalc.mechanics import tensioner_lines as lines_of
from ropecalc.teaching.questions.bank import tensioner as bank
from ropecalc.teaching.questions.given import Given
from ropecalc.teaching.questions.template import Mistake, Template, Tolerance
from ropecalc.teaching.scenarios.content import Judged, Part, Scenario

_NEAR = Given(tensioner.NEAR_LINE, 1.0, 1.5, 0.05, "kN")
_EFFICIENCY = Given(q.SHEAVE_EFFICIENCY, 0.80, 0.92, 0.01, "")
_THREE = Given(tensioner.LINES, 3, 3, 1, "")
_PULL = Given(tensioner.DEVICE_PULL, 0.4, 0.9, 0.001, "kN")
_FAR = Given(lines_of.FAR_LINE, 0.4, 1.1, 0.01, "kN")
_LINE = Given(lines_of.LINE, 1, 3, 1, "")
_SHARE = Given(lines_of.DEVICE_SHARE, 0.5, 0.7, 0.05, "")
_TAIL = Given(lines_of.TAIL_ADVANTAGE, 3, 3, 1, "")


_LET_OUT = Template(
    key="follow-the-rope-let-out",
    title="The same reading after letting out",
    stem=(
        "Later the cell at the device reads {device_pull} again, but this time rope has just been "
        "let out. Every sheave has an efficiency of {efficiency}. What does line number {line}, "
        "the far one, carry now?"
    ),
    asked="Tension of the far line after letting out",
    givens=(_PULL, _EFFICIENCY, _LINE),
    derivation=tensioner_let_out.line_let_out,
    tolerance=Tolerance(relative=0.015),
    mistakes=(
        Mistake(
            "taken-in-for-let-out",
            "Friction taken as while taking in",
            "Let out, the rope moves away from the device: the strands further from it carry more.",
            lambda v: v.device_pull * (1 + v.efficiency) * v.efficiency ** (2 * (v.line - 1)),
        ),
        Mistake(
            "no-friction",
            "Every strand taken to carry the same",
            "Each sheave on the way asks for more beyond it. Two sheaves lie between neighbouring "
            "lines.",
            lambda v: 2 * v.device_pull,
        ),
        Mistake(
            "one-sheave-a-line",
            "One sheave counted from line to line",
            "There are two: the travelling pulley of the line and the pulley at the hub.",
            lambda v: v.device_pull * (1 + 1 / v.efficiency) / v.efficiency ** (v.line - 1),
        ),
        Mistake(
            "nothing-beyond-the-device",
            "The device's strand taken for the line",
            "The device feels one strand, and the one with the least tension now.",
            lambda v: Integer(1) * v.device_pull,
        ),
    ),
    difficulty=3,
    objective="say what a reading at the device means after letting out",
)

FOLLOW_THE_ROPE = Scenario(
    key="follow-the-rope",
    number=4,
    title="Follow the rope",
    story=(
        "At the hub below the Upper Heron Wall in Tamarack Gorge one rope tightens {lines} track "
        "lines in series. Rope has just been taken in, and the cell in the near line, next to the "
        "device, reads {near_line}. Every sheave has an efficiency of {efficiency}. While rope is "
        "pulled through it, the device passes on {device_share} of a pull on its tail; a "
        "{tail_advantage}:1 without friction pulls on the tail."
    ),
    givens=(_THREE, _NEAR, _EFFICIENCY, _SHARE, _TAIL),
    parts=(
        Part(
            replace(
                bank.DEVICE,
                key="follow-the-rope-device",
                title="At the device",
                stem=(
                    "The near line carries {near_line} just after taking in, and every sheave has "
                    "an efficiency of {efficiency}. What tension is in the strand at the device?"
                ),
                givens=(_NEAR, _EFFICIENCY),
                must_pass=False,
            ),
            gives=_PULL,
        ),
        Part(
            replace(
                bank.ONE_LINE,
                key="follow-the-rope-far-line",
                title="At the far end",
                stem=(
                    "With {device_pull} at the device and sheaves of efficiency {efficiency}, what "
                    "does line number {line}, the far one, carry while rope is taken in?"
                ),
                asked="Tension of the far line",
                givens=(_PULL, _EFFICIENCY, _LINE),
                must_pass=False,
            ),
            take={"line": "lines"},
            after=("device_pull",),
            gives=_FAR,
        ),
        Part(
            replace(
                bank.HUB_TOTAL,
                key="follow-the-rope-hub",
                title="What the hub holds",
                stem=(
                    "{lines} lines in series end at one hub; the near one carries {near_line}, and "
                    "every sheave has an efficiency of {efficiency}. What do they put on the hub "
                    "together?"
                ),
                givens=(_NEAR, _EFFICIENCY, _THREE),
                must_pass=False,
            ),
        ),
        Part(
            replace(
                bank.HUB_PULLEY,
                key="follow-the-rope-hub-pulley",
                title="The first pulley at the hub",
                stem=(
                    "With {device_pull} at the device and sheaves of efficiency {efficiency}: what "
                    "does the hub pulley next to the near line carry?"
                ),
                givens=(_PULL, _EFFICIENCY),
                must_pass=False,
            ),
            after=("device_pull",),
        ),
        Part(_LET_OUT, take={"line": "lines"}, after=("device_pull",)),
        Part(
            replace(
                bank.HANDS,
                key="follow-the-rope-hands",
                title="The hands on the tail",
                stem=(
                    "To bring the far line to {far_line} with {lines} lines in series on sheaves "
                    "of efficiency {efficiency}, through a device that passes on {device_share} of "
                    "a pull and with a {tail_advantage}:1 on the tail: what pull of the hands does "
                    "it take?"
                ),
                givens=(_FAR, _EFFICIENCY, _THREE, _SHARE, _TAIL),
                must_pass=False,
            ),
            after=("far_line",),
        ),
    ),
    judged=(
        Judged(
            key="follow-the-rope-equalise",
            title="Equal lines",
            question=(
                "How would you get the lines to carry about the same, and how would you know that "
                "they do? What would you write down, and why?"
            ),
            points=(
                "Take in a little more than wanted, then ease: on the way back friction works the "
                "other way and the lines come nearer to each other.",
                "Stop easing when the cells in the near line and the far line read alike within "
                "what the cells can tell.",
                "Write down which way the rope moved last: the same reading at the device means "
                "another hub load after taking in than after letting out.",
                "While they are unequal, the line that carries most decides how far one may go: "
                "the near one after taking in, the far one after letting out.",
                "Equal is not a backup: it is still one rope, and the loss of one line is felt by "
                "all.",
            ),
        ),
    ),
    lessons=(10,),
    cautions=(
        cautions.AUTHORITY,
        cautions.STATIC,
        tensioner.NO_BACKUP,
        cautions.COMMON_HUB,
    ),
)
