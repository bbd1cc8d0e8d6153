"""Every quantity of the course, once: one symbol, one name, one meaning.

Axes: x points out from the wall, z points up. Tensions and pulls are positive. Angles say in
their name what they are measured from.

::

    z            D  haul directional (x_D, z_D), A  track directional (x_A, z_A)
    |   D *
    |    / .
    |   /  alpha            alpha  haul elevation: haul leg above the horizontal at P
    |  P - - - - -          beta   ground depression: ground leg below the horizontal at P
    |    . beta  .
    |            .  B       P  master attachment point of the litter (x, z)
    +-------------*-- x     B  hub, the ground anchor (x_B, z_B)
"""

from math import pi, radians

from ropecalc.derivation import (
    ANY,
    NOT_NEGATIVE,
    POSITIVE,
    Domain,
    Range,
    Variable,
)
from ropecalc.units import Kind


def _force(
    name: str, symbol: str, meaning: str, low: float, high: float, default: float
) -> Variable:
    return Variable(name, symbol, meaning, Kind.FORCE, POSITIVE, Range(low, high, default))


def _pull(
    name: str, symbol: str, meaning: str, low: float, high: float, default: float
) -> Variable:
    return Variable(name, symbol, meaning, Kind.FORCE, NOT_NEGATIVE, Range(low, high, default))


def _place(
    name: str, symbol: str, meaning: str, low: float, high: float, default: float
) -> Variable:
    return Variable(name, symbol, meaning, Kind.LENGTH, ANY, Range(low, high, default))


def _length(
    name: str, symbol: str, meaning: str, low: float, high: float, default: float
) -> Variable:
    return Variable(name, symbol, meaning, Kind.LENGTH, POSITIVE, Range(low, high, default))


def _angle(
    name: str, symbol: str, meaning: str, domain: Domain, low: float, high: float, default: float
) -> Variable:
    teaching = Range(radians(low), radians(high), radians(default))
    return Variable(name, symbol, meaning, Kind.ANGLE, domain, teaching)


ACUTE = Domain(0.0, pi / 2, low_open=True)
"""More than 0° and up to 90°: a haul leg, from nearly level to plumb."""
STEEP_EITHER_WAY = Domain(-pi / 2, pi / 2, low_open=True, high_open=True)
LEANING = Domain(0.0, pi / 2, high_open=True)
BETWEEN_STRANDS = Domain(0.0, pi, high_open=True)

# --- weight and pulls at one point
MASS = Variable(
    "mass",
    "m",
    "mass of everything that hangs",
    Kind.MASS,
    POSITIVE,
    Range(60, 320, 200),
    in_si=True,
)
LOAD = _force("load", "W", "weight of everything that hangs", 600, 3200, 2000)
SIDE_PULL = _pull("side_pull", "Q", "horizontal pull aside", 100, 2500, 500)
ROPE_TENSION = _force("rope_tension", "S", "tension of the rope", 500, 6000, 2000)
PLUMB_ANGLE = _angle("plumb_angle", r"\varphi", "angle of the rope from plumb", LEANING, 0, 60, 15)
FIRST_PULL = _force("first_pull", "F_1", "first pull", 500, 5000, 2000)
SECOND_PULL = _force("second_pull", "F_2", "second pull", 500, 5000, 3000)
PULL_ANGLE = _angle(
    "pull_angle", r"\delta", "angle between the two pulling directions", Domain(0, pi), 0, 170, 60
)
ALONG = Variable(
    "along",
    "R_a",
    "part of the resultant along the first pull",
    Kind.FORCE,
    ANY,
    Range(-4000, 9000, 3500),
)
ACROSS = _pull("across", "R_c", "part of the resultant across the first pull", 0, 5000, 2600)
RESULTANT = _pull("resultant", "R", "resultant of the two pulls", 0, 9000, 4000)

# --- anchors
LEG_ANGLE = _angle(
    "leg_angle", r"\theta", "angle between the two legs", BETWEEN_STRANDS, 0, 170, 60
)
LEG_TENSION = _force("leg_tension", "L", "tension in each leg", 400, 8000, 1200)
FIRST_LEG_ANGLE = _angle(
    "first_leg_angle", r"\theta_1", "angle of leg 1 from the line of pull", ACUTE, 10, 60, 20
)
SECOND_LEG_ANGLE = _angle(
    "second_leg_angle", r"\theta_2", "angle of leg 2 from the line of pull", ACUTE, 10, 60, 45
)
FIRST_LEG = _force("first_leg_tension", "L_1", "tension in leg 1", 300, 5000, 1500)
SECOND_LEG = _force("second_leg_tension", "L_2", "tension in leg 2", 300, 5000, 800)
LOAD_RATIO = Variable(
    "load_ratio",
    "k",
    "tension as a multiple of the load",
    Kind.RATIO,
    Domain(0.5, float("inf")),
    Range(0.55, 5.0, 1.0),
)

# --- redirects
STRAND_TENSION = _force(
    "strand_tension", r"S_\mathrm{p}", "tension of the rope through the pulley", 500, 5000, 2000
)
STRAND_ANGLE = _angle(
    "strand_angle",
    r"\theta_\mathrm{p}",
    "angle between the two strands",
    Domain(0, pi),
    0,
    170,
    70,
)
REDIRECT_PULL = _pull(
    "redirect_pull", r"R_\mathrm{a}", "pull on the redirect's anchor", 0, 10000, 3300
)
FRONT_DEPRESSION = _angle(
    "front_depression",
    r"\alpha_1",
    "angle of the front strand below the horizontal",
    Domain(0, pi / 2),
    15,
    88,
    75,
)
BACK_DEPRESSION = _angle(
    "back_depression",
    r"\alpha_2",
    "angle of the back strand below the horizontal",
    Domain(0, pi / 2),
    5,
    60,
    25,
)
LEAN = _angle(
    "lean",
    r"\lambda",
    "lean of the resultant from plumb, inward positive",
    STEEP_EITHER_WAY,
    -30,
    45,
    25,
)
INWARD_PULL = Variable(
    "inward_pull", "R_x", "inward part of the resultant", Kind.FORCE, ANY, Range(-4000, 5000, 1300)
)
DOWNWARD_PULL = _force("downward_pull", "R_z", "downward part of the resultant", 500, 9000, 2800)

# --- places in the cross-section of a raise
X = _place("x", "x", "distance of the litter out from the wall", 0.6, 8, 2.5)
Z = _place("z", "z", "height of the litter's master attachment point", 1, 29, 27)
Z_LOW = _place("z", "z", "height of the litter's master attachment point", 1, 14, 2)
X_D = _place("x_D", "x_D", "distance of the haul directional out from the wall", 0, 0.5, 0.3)
Z_D = _place("z_D", "z_D", "height of the haul directional", 31, 35, 32)
X_A = _place("x_A", "x_A", "distance of the track directional out from the wall", 0, 0.5, 0.3)
Z_A = _place("z_A", "z_A", "height of the track directional", 31, 36, 33)
X_B = _place("x_B", "x_B", "distance of the hub out from the wall", 30, 80, 40)
Z_B = _place("z_B", "z_B", "height of the hub", -2, 4, 0.5)
X_O = _place("x_O", "x_O", "distance of the outcrop's tip out from the wall", 0.8, 2.5, 1.5)
Z_O = _place("z_O", "z_O", "height of the outcrop's tip", 15, 27, 25)
CLEARANCE = _length("clearance", "c", "clearance between rope and rock", 0.2, 1.2, 0.5)
OFF_PLUMB = _length("off_plumb", "q", "distance of the litter out from the plumb line", 0.4, 3, 1)
DROP = _length("drop", "h", "height of the haul directional above the litter", 2, 30, 8)
LIMIT_OFFSET = _place(
    "limit_offset", r"x_\mathrm{lim}", "distance out that no tension can exceed", 3, 40, 6.6
)
CLEAR_OFFSET = _place(
    "clear_offset",
    r"x_\mathrm{min}",
    "least distance out at which the haul line clears",
    1,
    12,
    7.6,
)
HUB_LIMIT = _place(
    "hub_limit",
    r"x_{B,\mathrm{lim}}",
    "hub distance at which hub, litter and directional are in one line",
    5,
    60,
    14,
)

# --- holding a litter off
HAUL_ELEVATION = _angle(
    "haul_elevation", r"\alpha", "angle of the haul leg above the horizontal", ACUTE, 45, 88, 66
)
TRACK_ELEVATION = _angle(
    "track_elevation",
    r"\alpha_A",
    "angle of the track's upper leg above the horizontal",
    Domain(0.0, pi, low_open=True, high_open=True),
    46,
    89,
    70,
)
GROUND_DEPRESSION = _angle(
    "ground_depression",
    r"\beta",
    "angle of the ground leg below the horizontal",
    STEEP_EITHER_WAY,
    -20,
    38,
    35,
)
LINE_ELEVATION = _angle(
    "line_elevation",
    r"\varepsilon",
    "angle of the line to the hub above the horizontal",
    LEANING,
    0,
    40,
    15,
)
HAUL_SLOPE = Variable(
    "haul_slope", "s_D", "slope of the haul leg", Kind.RATIO, POSITIVE, Range(1, 30, 2.3)
)
GROUND_SLOPE = Variable(
    "ground_slope",
    "s_B",
    "slope of the ground leg, falling outward",
    Kind.RATIO,
    ANY,
    Range(-0.3, 0.75, 0.7),
)
PUSH = _pull("push", "N", "outward push of the attendant", 0, 1200, 250)
HAUL_TENSION = _pull("haul_tension", r"T_\mathrm{h}", "tension of the haul line", 200, 6000, 2000)
TAG_TENSION = _pull("tag_tension", r"T_\mathrm{g}", "tension of the tag line", 50, 5000, 1500)
TRACK_TENSION = _pull(
    "track_tension", r"T_\mathrm{t}", "tension of the track lines together", 50, 5000, 1500
)
LINE_TENSION = _pull(
    "line_tension",
    "T",
    "tension of the line to the hub (tag line, or track lines together)",
    50,
    5000,
    1500,
)
TRACK_LIFT = Variable(
    "track_lift",
    r"V_\mathrm{t}",
    "upward force of the track lines on the litter",
    Kind.FORCE,
    ANY,
    Range(-2000, 3000, 500),
)
LITTER_ANGLE = _angle(
    "litter_angle",
    r"\psi",
    "angle at the litter between the haul leg and the ground leg",
    Domain(0, 2 * pi),
    95,
    175,
    149,
)
HUB_UPLIFT = Variable(
    "hub_uplift", r"V_B", "upward pull on the hub", Kind.FORCE, ANY, Range(-1500, 3500, 900)
)
BRIDLE_TILT = _angle(
    "bridle_tilt", r"\tau", "tilt of the litter's bridle from plumb", LEANING, 0, 60, 19
)
TRACK_LENGTH = _length(
    "track_length",
    r"\ell",
    "length of one track line from its directional past the litter to the hub",
    30,
    90,
    52,
)
TAKE_IN_RATE = Variable(
    "take_in_rate",
    r"r_\mathrm{t}",
    "rope of each track line to take in per length raised straight up",
    Kind.RATIO,
    ANY,
    Range(-0.2, 1.2, 0.5),
)
TAG_LENGTH = _length(
    "tag_length",
    r"\ell_\mathrm{G}",
    "length of the tag line from the litter to the hub",
    10,
    60,
    40,
)
PAY_OUT_RATE = Variable(
    "pay_out_rate",
    r"r_\mathrm{p}",
    "tag line to pay out per length raised straight up",
    Kind.RATIO,
    ANY,
    Range(-0.2, 1.0, 0.4),
)

# --- friction
TENSION_BEHIND = _force(
    "tension_behind", r"S_\mathrm{b}", "tension on the side the rope comes from", 500, 3000, 2000
)
TENSION_AHEAD = _force(
    "tension_ahead", r"S_\mathrm{a}", "tension on the side the rope moves towards", 500, 12000, 3200
)
FRICTION = Variable(
    "friction",
    r"\mu",
    "coefficient of friction between rope and edge",
    Kind.RATIO,
    Domain(0.0, 3.0),
    Range(0.05, 0.6, 0.3),
)
TURN = Variable(
    "turn",
    r"\gamma",
    "angle through which the rope turns",
    Kind.ANGLE,
    Domain(0.0, 16 * 2 * pi),
    Range(radians(10), radians(120), radians(90)),
    in_si=True,
)

# --- three legs, legs that share, bridles
LEG_PLUMB_ANGLE = _angle(
    "leg_plumb_angle", r"\varphi_L", "angle of each leg from the line of pull", LEANING, 0, 80, 30
)
THREE_LEG_RATIO = Variable(
    "load_ratio",
    "k",
    "tension as a multiple of the load",
    Kind.RATIO,
    Domain(1 / 3, float("inf")),
    Range(0.4, 5.0, 1.0),
)
SLANTED = Domain(0.0, pi / 2, low_open=True, high_open=True)
FRONT_LEG_ANGLE = _angle(
    "front_leg_angle",
    r"\varphi_\mathrm{f}",
    "angle of the front leg from plumb",
    SLANTED,
    5,
    70,
    25,
)
BACK_LEG_ANGLE = _angle(
    "back_leg_angle", r"\varphi_\mathrm{b}", "angle of each back leg from plumb", SLANTED, 5, 70, 30
)
HALF_SPREAD = _angle(
    "half_spread",
    r"\omega",
    "angle in plan between each back leg and the line straight back",
    LEANING,
    0,
    75,
    40,
)
FRONT_LEG = _pull("front_leg_tension", r"L_\mathrm{f}", "tension in the front leg", 0, 5000, 1200)
BACK_LEG = _pull("back_leg_tension", r"L_\mathrm{b}", "tension in each back leg", 0, 5000, 700)
PULL_SWING = _angle(
    "pull_swing", r"\delta_p", "angle of the pull from the bisector of the legs", LEANING, 0, 40, 10
)
GAINING_LEG = _force(
    "gaining_leg_tension",
    r"L_\mathrm{g}",
    "tension of the leg that the pull swings into line with",
    400,
    8000,
    1500,
)
LOSING_LEG = _pull("losing_leg_tension", r"L_\mathrm{l}", "tension of the other leg", 0, 5000, 800)
OUTER_LEG_ANGLE = _angle(
    "outer_leg_angle",
    r"\theta_o",
    "angle of each outer leg from the middle leg",
    LEANING,
    0,
    75,
    30,
)
MIDDLE_LEG = _force(
    "middle_leg_tension", r"L_\mathrm{m}", "tension of the middle leg", 200, 3000, 900
)
OUTER_LEG = _force("outer_leg_tension", r"L_\mathrm{o}", "tension of each outer leg", 50, 3000, 700)
LEG_STIFFNESS = _force(
    "leg_stiffness",
    r"K_L",
    "force that would stretch a leg to twice its length if it stayed linear",
    20_000,
    400_000,
    50_000,
)
KNOT_SINK = _length("knot_sink", "u", "distance the knot sinks under load", 0.001, 0.2, 0.02)
KNOT_DEPTH = _length(
    "knot_depth", r"h_L", "distance of the knot from the row of anchors", 0.3, 5, 1.5
)
LEG_LENGTH = _length("leg_length", r"\ell_L", "length of each leg", 1.6, 8, 2)
ANCHOR_SPACING = Variable(
    "anchor_spacing",
    "d_L",
    "distance between the two anchors, on one level",
    Kind.LENGTH,
    NOT_NEGATIVE,
    Range(0, 3, 1.5),
)

# --- a pulley with friction, and a head with several lines
SHEAVE_EFFICIENCY = Variable(
    "efficiency",
    r"\eta",
    "efficiency of one sheave: tension behind it over tension ahead of it",
    Kind.RATIO,
    Domain(0.01, 1.0),
    Range(0.6, 1.0, 0.9),
)
FRONT_TENSION = _pull(
    "front_tension", r"S_\mathrm{front}", "tension of the front strand, towards the litter", 500,
    5000, 2000,
)  # fmt: skip
BACK_TENSION = _pull(
    "back_tension", r"S_\mathrm{back}", "tension of the back strand, towards the team", 500,
    5000, 2200,
)  # fmt: skip
FRONT_TOGETHER = _pull(
    "front_together", r"F_\mathrm{front}", "tension of all front strands together", 500, 9000, 3100
)

# --- frames
HEAD_HEIGHT = _length(
    "head_height", r"h_F", "height of the frame's head above its feet", 1.5, 3.2, 2.0
)
HEAD_REACH = _place("head_reach", r"x_F", "distance of the head out past the front feet", 0, 1, 0.3)
LANDING = _place(
    "landing",
    r"x_\mathrm{land}",
    "distance behind the front feet at which the line of action meets the ground",
    -1,
    2.5,
    0.6,
)
GUY_DEPRESSION = _angle(
    "guy_depression",
    r"\gamma_G",
    "angle of the guy below the horizontal",
    STEEP_EITHER_WAY,
    20,
    60,
    40,
)
GUY_TENSION = _pull("guy_tension", "G", "tension of the guy", 0, 6000, 1600)
FRAME_FORCE = _force(
    "frame_force", "C", "force along the frame from its head to its feet", 500, 12000, 4000
)
LEG_HALF_SPREAD = _angle(
    "leg_half_spread",
    r"\varepsilon_L",
    "half the angle between the frame's two legs",
    LEANING,
    5,
    40,
    20,
)
LEG_COMPRESSION = _force(
    "leg_compression", r"C_L", "compression of each of the frame's two legs", 300, 9000, 2600
)

# --- critical geometry and loaded spans
REDIRECT_RATIO = Variable(
    "pull_ratio",
    "k_R",
    "pull on the redirect's anchor divided by the tension of the rope",
    Kind.RATIO,
    Domain(0.0, 2.0),
    Range(0.1, 2.0, 1.0),
)
SPAN_RATIO = Variable(
    "load_ratio",
    "k",
    "tension as a multiple of the load",
    Kind.RATIO,
    Domain(0.5, float("inf"), low_open=True),
    Range(0.6, 6.0, 1.0),
)
LINE_RATIO = Variable(
    "load_ratio",
    "k",
    "tension as a multiple of the load",
    Kind.RATIO,
    NOT_NEGATIVE,
    Range(0.1, 5.0, 1.0),
)
HAUL_RATIO = Variable(
    "load_ratio",
    "k",
    "tension as a multiple of the load",
    Kind.RATIO,
    POSITIVE,
    Range(1.0, 5.0, 2.0),
)
SPAN = _length("span", r"\ell_S", "level distance between the ends of the span", 5, 60, 30)
SAG = _length("sag", "f", "sag at the load, measured loaded", 0.5, 12, 3)
SAG_RATIO = Variable(
    "sag_ratio",
    "r",
    "sag at mid-span divided by the span, measured loaded",
    Kind.RATIO,
    POSITIVE,
    Range(0.03, 0.5, 0.1),
)
SPAN_TENSION = _force("span_tension", r"T_S", "tension of the span", 1000, 20000, 5000)
FIRST_SAG_ANGLE = _angle(
    "first_sag_angle",
    r"\sigma_1",
    "angle at which the span rises from the load on side 1",
    STEEP_EITHER_WAY,
    5,
    60,
    20,
)
SECOND_SAG_ANGLE = _angle(
    "second_sag_angle",
    r"\sigma_2",
    "angle at which the span rises from the load on side 2",
    STEEP_EITHER_WAY,
    5,
    60,
    35,
)
CONTROL_PULL = Variable(
    "control_pull",
    "P_c",
    "level pull of the control line, towards side 2 positive",
    Kind.FORCE,
    ANY,
    Range(-3000, 3000, 300),
)
SPAN_RISE = _place("span_rise", r"d_z", "height of one end of the span above the other", -10, 10, 2)
SPAN_ROPE = _length(
    "span_rope", r"\ell_R", "length of the rope between the ends of the span, loaded", 20, 80, 40
)

# --- guiding: litter pulley with friction, two hubs, sagging and sideways
LEG_RATIO = Variable(
    "leg_ratio",
    r"\rho",
    "tension of the track's upper leg divided by that of its ground leg",
    Kind.RATIO,
    POSITIVE,
    Range(0.8, 1.25, 0.9),
)
HUB_SPREAD = _angle(
    "hub_spread",
    r"\omega_B",
    "half the angle in plan between the lines to the two hubs",
    LEANING,
    0,
    40,
    30,
)
LEG_ROPE_WEIGHT = _force(
    "leg_rope_weight", r"W_\ell", "weight of the rope in the ground leg", 5, 250, 35
)
END_ANGLE = _angle(
    "end_angle",
    r"\zeta",
    "angle by which a sagging line leaves its end off the straight line",
    LEANING,
    0.5,
    20,
    5,
)
GROUND_LEG_LENGTH = _length("ground_leg_length", r"\ell_B", "length of the ground leg", 10, 80, 46)
HAUL_LEG_LENGTH = _length("haul_leg_length", r"\ell_h", "length of the haul leg", 2, 30, 5.5)
SIDEWAYS = Variable(
    "sideways",
    "y",
    "small distance of the litter sideways, along the wall",
    Kind.LENGTH,
    NOT_NEGATIVE,
    Range(0.05, 1.0, 0.5),
)
SIDE_FORCE = _pull(
    "side_force", "Y", "force that brings the litter back from sideways", 0, 3000, 300
)
HUB_MASS = Variable(
    "hub_mass",
    "m_B",
    "mass of a hub that only its weight holds down",
    Kind.MASS,
    POSITIVE,
    Range(300, 4000, 2500),
    in_si=True,
)
HUB_FRICTION = Variable(
    "hub_friction",
    r"\mu_B",
    "coefficient of friction between hub and level ground",
    Kind.RATIO,
    NOT_NEGATIVE,
    Range(0.2, 0.8, 0.5),
)

# --- friction in a groove
GROOVE_ANGLE = _angle(
    "groove_angle",
    r"\kappa",
    "angle between the flanks of the groove",
    Domain(0.0, pi, low_open=True),
    20,
    180,
    45,
)

# --- stretch, slip, swing and arrest
STIFFNESS = _force(
    "stiffness",
    "EA",
    "stiffness of the rope: tension divided by stretch per length",
    10_000,
    400_000,
    50_000,
)
ROPE_LENGTH = _length("rope_length", r"\ell_0", "length of the rope without tension", 5, 90, 60)
STRETCHED_LENGTH = _length(
    "stretched_length", r"\ell_1", "length of the rope under tension", 5, 95, 62
)
STRETCH = Variable(
    "stretch", r"\Delta", "stretch of the rope", Kind.LENGTH, NOT_NEGATIVE, Range(0, 6, 1)
)
BREAKING_STRENGTH = _force(
    "breaking_strength", r"B_\mathrm{r}", "breaking strength of the rope", 15_000, 45_000, 30_000
)
QUOTED_ELONGATION = Variable(
    "quoted_elongation",
    r"e_{10}",
    "elongation that is quoted at a tenth of the breaking strength",
    Kind.RATIO,
    Domain(0.0, 1.0, low_open=True),
    Range(0.01, 0.1, 0.03),
)
LOAD_STEP = _force("load_step", r"\Delta_F", "force added in the test", 300, 5000, 1000)
ELONGATION = Variable(
    "elongation",
    r"\Delta_e",
    "elongation that the added force gives, per length",
    Kind.RATIO,
    Domain(0.0, 1.0, low_open=True),
    Range(0.005, 0.1, 0.03),
)
SWING_IN_RATE = Variable(
    "swing_in_rate",
    "r_x",
    "distance the litter swings in per length raised against a locked tensioner",
    Kind.RATIO,
    POSITIVE,
    Range(0.2, 5, 1),
)
SLIP = Variable(
    "slip",
    "s",
    "rope that slips out of the line to the hub",
    Kind.LENGTH,
    NOT_NEGATIVE,
    Range(0.0, 0.5, 0.2),
)
ARC_MOVEMENT = Variable(
    "arc_movement",
    "d_s",
    "distance the litter moves along its arc",
    Kind.LENGTH,
    NOT_NEGATIVE,
    Range(0, 3, 0.4),
)
INWARD_MOVEMENT = Variable(
    "inward_movement",
    "d_x",
    "distance the litter moves towards the wall",
    Kind.LENGTH,
    NOT_NEGATIVE,
    Range(0, 3, 0.4),
)
FALL = Variable(
    "fall", r"h_\mathrm{f}", "height fallen", Kind.LENGTH, NOT_NEGATIVE, Range(0, 3, 0.5)
)
PLAY = _length(
    "play",
    r"\ell_\mathrm{p}",
    "distance of a line's travelling pulley from the hub",
    1,
    15,
    3,
)
RELEASED = _length(
    "released", r"s_\mathrm{p}", "slack that runs into each of the other lines", 0.2, 15, 3
)
BELAY_SLACK = Variable(
    "belay_slack", r"s_\mathrm{b}", "slack in the belay", Kind.LENGTH, NOT_NEGATIVE,
    Range(0, 1.5, 0.5),
)  # fmt: skip
BELAY_LENGTH = _length(
    "belay_length", r"\ell_\mathrm{b}", "length of belay rope that stretches", 5, 40, 15
)
ARREST_PEAK = _force(
    "arrest_peak", r"F_\mathrm{p}", "largest tension of the belay", 1000, 20_000, 5000
)

# --- strength and measurement
COMPONENT_STRENGTH = _force("strength", "B", "strength of the component", 4000, 45_000, 20_000)
COMPONENT_LOAD = _force("component_load", "F", "load of that component", 200, 8000, 1500)
LOAD_UNCERTAINTY = Variable(
    "load_uncertainty",
    "v_F",
    "share by which the load may be higher",
    Kind.RATIO,
    NOT_NEGATIVE,
    Range(0, 1, 0.3),
)
STRENGTH_UNCERTAINTY = Variable(
    "strength_uncertainty",
    "v_B",
    "share by which the strength may be lower",
    Kind.RATIO,
    Domain(0.0, 1.0, high_open=True),
    Range(0, 0.5, 0.0),
)
MARGIN = Variable(
    "margin", "M", "strength divided by load", Kind.RATIO, POSITIVE, Range(0.5, 20, 8)
)
TERMINATION = Variable(
    "termination",
    r"k_\mathrm{t}",
    "share of the rope's strength that its knot or termination leaves",
    Kind.RATIO,
    Domain(0.0, 1.0, low_open=True),
    Range(0.4, 1.0, 0.7),
)
FULL_SCALE = _force(
    "full_scale", r"F_\mathrm{fs}", "full scale of the load cell", 5000, 50_000, 40_000
)
CELL_ERROR = Variable(
    "cell_error",
    "p",
    "error of the load cell as a share of its full scale",
    Kind.RATIO,
    Domain(0.0, 1.0),
    Range(0.001, 0.02, 0.01),
)
READING = _force("reading", r"F_\mathrm{c}", "reading of the load cell", 400, 5000, 1500)
READING_ERROR = Variable(
    "reading_error",
    r"p_\mathrm{c}",
    "error as a share of the reading",
    Kind.RATIO,
    NOT_NEGATIVE,
    Range(0, 1, 0.25),
)
HAUL_SENSITIVITY = Variable(
    "haul_sensitivity",
    r"c_\alpha",
    "relative change of the tension per radian of haul elevation",
    Kind.RATIO,
    ANY,
    Range(-20, 0, -4),
)
GROUND_SENSITIVITY = Variable(
    "ground_sensitivity",
    r"c_\beta",
    "relative change of the tension per radian of ground depression",
    Kind.RATIO,
    ANY,
    Range(-1, 20, 2),
)

# --- pulley systems
HAND_PULL = _pull("hand_pull", "E", "pull of the hand on the haul strand", 50, 4000, 700)
ADVANTAGE = Variable(
    "advantage",
    r"k_\mathrm{A}",
    "load divided by the pull of the hand",
    Kind.RATIO,
    POSITIVE,
    Range(0.5, 12, 3),
)
SHEAVE_TURN = Variable(
    "turn",
    r"\gamma",
    "angle through which the rope turns",
    Kind.ANGLE,
    Domain(0.0, pi),
    Range(radians(10), radians(175), radians(90)),
)
SHEAVE_RATIO = Variable(
    "sheave_ratio",
    r"\eta_\gamma",
    "tension behind the sheave over tension ahead of it, for this turn",
    Kind.RATIO,
    Domain(0.0, 1.0, low_open=True),
    Range(0.6, 1.0, 0.93),
)
BEARING_SHARE = Variable(
    "bearing_share",
    r"c_\mathrm{p}",
    "tension lost at the sheave as a share of its pull on the axle",
    Kind.RATIO,
    Domain(0.0, 1.0, high_open=True),
    Range(0.0, 0.25, 0.05),
)
SHEAVE_PULL = _pull("sheave_pull", r"R_\mathrm{p}", "pull of the rope on the axle", 0, 9000, 3000)
SHEAVES = Variable(
    "sheaves", r"n_\mathrm{p}", "number of sheaves", Kind.RATIO, NOT_NEGATIVE, Range(0, 8, 3)
)
PARTS = Variable(
    "parts",
    r"n_\mathrm{s}",
    "number of strands that carry the load",
    Kind.RATIO,
    Domain(1.0, float("inf")),
    Range(1, 8, 4),
)

# --- counting a pulley system's advantage
TRAVELLING_PULLEYS = Variable(
    "travelling_pulleys",
    r"n_\mathrm{t}",
    "number of pulleys that travel with the load",
    Kind.RATIO,
    Domain(1.0, float("inf")),
    Range(1, 4, 2),
)
END_AT_LOAD = Variable(
    "end_at_load",
    r"n_\mathrm{e}",
    "rope ends tied on the load's side (1, or 0 where the end is at the anchor)",
    Kind.RATIO,
    Domain(0.0, 1.0),
    Range(0, 1, 1),
)
FIRST_ADVANTAGE = Variable(
    "first_advantage",
    "k_1",
    "advantage of the system in the hands",
    Kind.RATIO,
    POSITIVE,
    Range(1, 5, 3),
)
SECOND_ADVANTAGE = Variable(
    "second_advantage",
    "k_2",
    "advantage of the system that it pulls on",
    Kind.RATIO,
    POSITIVE,
    Range(1, 5, 3),
)
JOINING_TENSION = _force(
    "joining_tension", r"S_\mathrm{j}", "tension of the strand that joins both", 100, 6000, 2000
)
GRIPPED_TENSION = _force(
    "gripped_tension", r"S_\mathrm{g}", "tension of the gripped strand up to the anchor", 100, 6000,
    1200,
)  # fmt: skip
ANCHOR_PULL = _pull(
    "anchor_pull", r"A_\mathrm{p}", "pull of the whole system on its anchor", 0, 9000, 2600
)
RISE = _length("rise", r"r_\mathrm{L}", "height that the load rises", 0.1, 5, 1)
HAND_TRAVEL = _length("hand_travel", r"d_\mathrm{H}", "rope pulled through the hands", 0.1, 40, 3)
SYSTEM_EFFICIENCY = Variable(
    "system_efficiency",
    r"\eta_\mathrm{S}",
    "work out over work in, for the whole system",
    Kind.RATIO,
    NOT_NEGATIVE,
    Range(0.3, 1.0, 0.8),
)

# --- a load that rolls freely
TROLLEY_ANGLE = _angle(
    "trolley_angle",
    r"\sigma",
    "angle at which both sides rise from a load that rolls freely",
    Domain(0.0, pi / 2, low_open=True, high_open=True),
    5,
    60,
    20,
)

# --- the ground leg's own sag
LEG_SAG = _length(
    "leg_sag", r"f_\ell", "sag of the ground leg's middle off the straight line", 0.05, 6, 1
)

# --- a rope pulled aside along a slope, and what a load cell says in other units
SLANTED_PULL = _pull("slanted_pull", r"Q_\mathrm{s}", "pull aside, along its own line", 0, 900, 500)
PULL_ELEVATION = _angle(
    "pull_elevation",
    r"\varepsilon_Q",
    "angle of the pull above the horizontal (negative: below it)",
    STEEP_EITHER_WAY,
    -40,
    40,
    10,
)
ROPE_ABOVE = _length("rope_above", r"\ell_\mathrm{a}", "length of rope above the load", 2, 30, 5)
MOVED_ASIDE = Variable(
    "moved_aside",
    r"d_\mathrm{a}",
    "distance that the load moves off plumb",
    Kind.LENGTH,
    NOT_NEGATIVE,
    Range(0, 25, 1.2),
)
ROPE_ELEVATION = _angle(
    "rope_elevation", r"\theta_S", "angle of the rope above the horizontal", ACUTE, 5, 85, 35
)
LEVEL_PART = _pull("level_part", "S_x", "level part of the rope's pull", 0, 6000, 1600)
UPWARD_PART = _pull("upward_part", "S_z", "upward part of the rope's pull", 0, 6000, 1100)
POUNDS_FORCE = Variable(
    "pounds_force",
    r"n_\mathrm{lbf}",
    "number of pounds-force",
    Kind.RATIO,
    NOT_NEGATIVE,
    Range(100, 3000, 600),
)
KILOGRAMS_FORCE = Variable(
    "kilograms_force",
    r"n_\mathrm{kgf}",
    "number of kilograms-force",
    Kind.RATIO,
    NOT_NEGATIVE,
    Range(50, 1500, 400),
)
KILONEWTONS = Variable(
    "kilonewtons",
    r"n_\mathrm{kN}",
    "number of kilonewtons",
    Kind.RATIO,
    NOT_NEGATIVE,
    Range(0.5, 15, 4),
)

# --- a haul team: throws, resets, people
RAISE_HEIGHT = Variable(
    "raise_height", "H", "height of the whole raise", Kind.LENGTH, POSITIVE, Range(15, 60, 30)
)
THROW_RISE = Variable(
    "throw_rise",
    r"s_\mathrm{throw}",
    "rise of the load in one throw",
    Kind.LENGTH,
    POSITIVE,
    Range(2, 8, 4),
)
RESET_LOSS = Variable(
    "reset_loss", r"\delta_\mathrm{reset}", "height lost at each reset", Kind.LENGTH, NOT_NEGATIVE,
    Range(0.2, 0.6, 0.4),
)  # fmt: skip
HAND_SPEED = Variable(
    "hand_speed", r"v_\mathrm{hand}", "speed of the haul team", Kind.SPEED, POSITIVE,
    Range(0.2, 0.6, 0.3),
)  # fmt: skip
RESET_TIME = Variable(
    "reset_time", r"t_\mathrm{reset}", "time of one reset", Kind.TIME, NOT_NEGATIVE,
    Range(10, 40, 20),
)  # fmt: skip
STEADY_PULL = Variable(
    "pull_per_person", r"f_\mathrm{steady}", "pull that one person keeps up", Kind.FORCE, POSITIVE,
    Range(100, 300, 200),
)  # fmt: skip
PEOPLE = Variable(
    "people",
    r"n_\mathrm{people}",
    "number of people hauling",
    Kind.RATIO,
    POSITIVE,
    Range(2, 10, 5),
)
BURST = Variable(
    "burst_per_person", r"f_\mathrm{burst}", "most that one person pulls for a moment", Kind.FORCE,
    POSITIVE, Range(200, 600, 350),
)  # fmt: skip
TRAVEL_ADVANTAGE = Variable(
    "advantage",
    r"n_\mathrm{A}",
    "advantage by travel: rope through the hands for each length of rise",
    Kind.RATIO,
    POSITIVE,
    Range(0.5, 12, 3),
)
"""What a load over a pull is only without friction; friction asks for more pull, not more rope."""
