"""How much a checked result costs over the bare formula, and `import ropecalc` over `import sympy`.

Run as a plain script; it prints ratios and asserts nothing about time. Each derivation is
evaluated on 100 000 points, with all its domain checks, against the same formula written by hand
in numpy without any. The two are timed in turn, so that whatever else the machine does hits both.
"""

import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[2]))

from tests.mechanics.every import EVERY, draw

POINTS = 100_000
REPEATS = 25
IMPORT_REPEATS = 9
NUMERIC_AIM = 2.0
IMPORT_AIM = 0.3

sin, cos, tan, sqrt, arctan = np.sin, np.cos, np.tan, np.sqrt, np.arctan


def _line_tension_from_places(
    load: Any, x: Any, z: Any, x_D: Any, z_D: Any, x_B: Any, z_B: Any
) -> Any:
    down = (z - z_B) / (x_B - x)
    return load / ((z_D - z) / (x - x_D) - down) * sqrt(1 + down**2)


def _on_ellipse(length: Any, z: Any, x_D: Any, z_D: Any, x_B: Any, z_B: Any) -> Any:
    wide, high, off_middle = x_B - x_D, z_D - z_B, 2 * z - z_D - z_B
    root = sqrt((length**2 - wide**2 - high**2) * (length**2 - wide**2 - off_middle**2))
    return (x_D + x_B - (wide * high * off_middle + length * root) / (length**2 - wide**2)) / 2


def _raised_offset(x_1: Any, z_1: Any, raised: Any, x_D: Any, z_D: Any, x_B: Any, z_B: Any) -> Any:
    upper = sqrt((x_1 - x_D) ** 2 + (z_D - z_1) ** 2)
    length = upper + sqrt((x_B - x_1) ** 2 + (z_1 - z_B) ** 2)
    return _on_ellipse(length, z_1 + raised, x_D, z_D, x_B, z_B)


def _lowered_tension(
    load: Any, off_plumb: Any, drop: Any, lowered: Any, hub_run: Any, hub_fall: Any
) -> Any:
    upper = sqrt(off_plumb**2 + drop**2)
    length = upper + sqrt((hub_run - off_plumb) ** 2 + (hub_fall - drop) ** 2)
    z = -drop - lowered
    x = _on_ellipse(length, z, 0.0, 0.0, hub_run, -hub_fall)
    return _line_tension_from_places(load, x, z, 0.0, 0.0, hub_run, -hub_fall)


def _line_margin(
    near_line: Any,
    breaking_strength: Any,
    termination: Any,
    grab_strength: Any,
    pulley_strength: Any,
    device_strength: Any,
    efficiency: Any,
) -> Any:
    rope = np.minimum(breaking_strength * termination, grab_strength)
    rest = np.minimum(pulley_strength, device_strength * (1 + efficiency))
    return np.minimum(rope, rest) / near_line


def _bearing_ratio(efficiency: Any, turn: Any) -> Any:
    """The smaller root of the axle's balance: tension lost over pull on the axle is one share."""
    share = ((1 - efficiency) / (1 + efficiency)) ** 2
    middle = (1 - share * cos(turn)) / (1 - share)
    return middle - sqrt(middle**2 - 1)


def _leg_compression(
    downward_pull: Any, guy_tension: Any, guy_depression: Any, head_height: Any, head_reach: Any,
    leg_half_spread: Any,
) -> Any:  # fmt: skip
    along = sqrt(1 + (head_reach / head_height) ** 2)
    return along * (downward_pull + guy_tension * sin(guy_depression)) / (2 * cos(leg_half_spread))


BY_HAND: dict[str, Callable[..., Any]] = {
    "redirects.hauled_redirect_pull": lambda front_tension, efficiency, strand_angle: (
        front_tension * np.sqrt(1 + 1 / efficiency**2 + 2 * cos(strand_angle) / efficiency)
    ),
    "advantage.simple_advantage": lambda travelling_pulleys, end_at_load: (
        2 * travelling_pulleys + end_at_load
    ),
    "advantage.compound_advantage": lambda first_advantage, second_advantage: (
        first_advantage * second_advantage
    ),
    "advantage.complex_hand_pull": lambda load: load / 5,
    "advantage.rope_through_hands": lambda rise, advantage: advantage * rise,
    "advantage.system_efficiency": lambda load, hand_pull, rise, hand_travel: (
        load * rise / (hand_pull * hand_travel)
    ),
    "advantage.anchor_in_line": lambda load, advantage: load - load / advantage,
    "advantage.anchor_redirected": lambda load, advantage: load + load / advantage,
    "anchors.two_leg_anchor": lambda load, leg_angle: load / (2 * cos(leg_angle / 2)),
    "anchors.two_leg_ratio": lambda leg_angle: 1 / (2 * cos(leg_angle / 2)),
    "anchors.critical_leg_angle": lambda load_ratio: 2 * np.arccos(1 / (2 * load_ratio)),
    "anchors.first_leg_tension": lambda load, first_leg_angle, second_leg_angle: (
        load * sin(second_leg_angle) / sin(first_leg_angle + second_leg_angle)
    ),
    "anchors.second_leg_tension": lambda load, first_leg_angle, second_leg_angle: (
        load * sin(first_leg_angle) / sin(first_leg_angle + second_leg_angle)
    ),
    "anchors.gaining_leg_tension": lambda load, leg_angle, pull_swing: (
        load * sin(leg_angle / 2 + pull_swing) / sin(leg_angle)
    ),
    "anchors.losing_leg_tension": lambda load, leg_angle, pull_swing: (
        load * sin(leg_angle / 2 - pull_swing) / sin(leg_angle)
    ),
    "anchors.three_leg_anchor": lambda load, leg_plumb_angle: load / (3 * cos(leg_plumb_angle)),
    "anchors.three_leg_ratio": lambda leg_plumb_angle: 1 / (3 * cos(leg_plumb_angle)),
    "anchors.critical_three_leg_angle": lambda load_ratio: np.arccos(1 / (3 * load_ratio)),
    "friction.capstan_tension_behind": lambda tension_ahead, friction, turn: (
        tension_ahead * np.exp(-friction * turn)
    ),
    "friction.edge_reversal": lambda friction, turn: np.exp(2 * friction * turn),
    "pulleys.formulas.simple_advantage": lambda efficiency, parts: (
        (1 - efficiency**parts) / (1 - efficiency)
    ),
    "pulleys.formulas.simple_pull_hauling": lambda load, efficiency, parts: (
        load * (1 - efficiency) / (1 - efficiency**parts)
    ),
    "pulleys.formulas.simple_pull_lowering": lambda load, efficiency, parts: (
        load * efficiency ** (parts - 1) * (1 - efficiency) / (1 - efficiency**parts)
    ),
    "pulleys.formulas.stacked_advantage": lambda efficiency, first_parts, second_parts: (
        (1 - efficiency**first_parts) * (1 - efficiency**second_parts) / (1 - efficiency) ** 2
    ),
    "pulleys.formulas.two_pulley_advantage": lambda near_efficiency, far_efficiency: (
        1 + near_efficiency + near_efficiency * far_efficiency
    ),
    "two_stations.tension_ratio": lambda x, z_1, z_2, x_D, z_D, x_B, z_B: (
        _line_tension_from_places(1.0, x, z_2, x_D, z_D, x_B, z_B)
        / _line_tension_from_places(1.0, x, z_1, x_D, z_D, x_B, z_B)
    ),
    "two_stations.tension_directional_moved": (
        lambda load, x, z, x_D, moved_out, z_D, x_B, z_B: _line_tension_from_places(
            load, x, z, x_D + moved_out, z_D, x_B, z_B
        )
    ),
    "two_stations.track_taken_in": lambda x_1, z_1, x_2, z_2, x_A, z_A, x_B, z_B: (
        sqrt((x_A - x_1) ** 2 + (z_A - z_1) ** 2)
        + sqrt((x_B - x_1) ** 2 + (z_B - z_1) ** 2)
        - sqrt((x_A - x_2) ** 2 + (z_A - z_2) ** 2)
        - sqrt((x_B - x_2) ** 2 + (z_B - z_2) ** 2)
    ),
    "two_stations.quick_play": lambda cliff, hub_distance: (
        cliff + hub_distance - sqrt(cliff**2 + hub_distance**2)
    ),
    "two_stations.tag_paid_out": lambda x_1, z_1, x_2, z_2, x_B, z_B: (
        sqrt((x_B - x_2) ** 2 + (z_B - z_2) ** 2) - sqrt((x_B - x_1) ** 2 + (z_B - z_1) ** 2)
    ),
    "locked_moves.raised_offset": _raised_offset,
    "locked_moves.lowered_tension": _lowered_tension,
    "raise_limits.track_rope": lambda setback, track_length, gap, line_tail: (
        setback + track_length - gap + line_tail
    ),
    "raise_limits.stop_value": (
        lambda strength, load_uncertainty, strength_uncertainty, margin: (
            strength * (1 - strength_uncertainty) / (margin * (1 + load_uncertainty))
        )
    ),
    "tensioner_let_out.line_let_out": lambda device_pull, efficiency, line: (
        device_pull * (1 + 1 / efficiency) / efficiency ** (2 * (line - 1))
    ),
    "tensioner_lines.line_taken_in": lambda device_pull, efficiency, line: (
        device_pull * (1 + efficiency) * efficiency ** (2 * (line - 1))
    ),
    "tensioner_lines.far_over_near": lambda efficiency, lines: efficiency ** (2 * (lines - 1)),
    "tensioner_lines.most_loaded_line": lambda track_tension, efficiency, lines: (
        track_tension * (1 - efficiency**2) / (1 - efficiency ** (2 * lines))
    ),
    "tensioner_lines.all_lines": lambda near_line, efficiency, lines: (
        near_line * (1 - efficiency ** (2 * lines)) / (1 - efficiency**2)
    ),
    "tensioner_lines.device_strand": lambda near_line, efficiency: near_line / (1 + efficiency),
    "tensioner_lines.hub_pulley_load": lambda device_pull, efficiency: (
        device_pull * efficiency * (1 + efficiency)
    ),
    "tensioner_lines.rope_through_device": lambda lines, take_in: 2 * lines * take_in,
    "tensioner_lines.rope_needed": lambda lines, least_play, take_in, line_stretch, tail: (
        2 * lines * (least_play + take_in + line_stretch) + tail
    ),
    "tensioner_lines.device_speed": (
        lambda lines, haul_speed, track_elevation, ground_depression: (
            2 * lines * haul_speed * (sin(track_elevation) - sin(ground_depression))
        )
    ),
    "tensioner_lines.hand_pull": (
        lambda far_line, efficiency, lines, device_share, tail_advantage: (
            far_line
            / (efficiency ** (2 * (lines - 1)) * (1 + efficiency) * device_share * tail_advantage)
        )
    ),
    "friction.groove_tension": lambda tension_behind, friction, turn, groove_angle: (
        tension_behind * np.exp(friction * turn / sin(groove_angle / 2))
    ),
    "stretch.stretch": lambda rope_tension, rope_length, stiffness: (
        rope_tension * rope_length / stiffness
    ),
    "tensioner.effective_lines": lambda efficiency, lines: (
        (1 - efficiency ** (2 * lines)) / (1 - efficiency**2)
    ),
    "friction.capstan_tension": lambda tension_behind, friction, turn: (
        tension_behind * np.exp(friction * turn)
    ),
    "guiding.attendant_push": lambda load, off_plumb, drop: load * off_plumb / drop,
    "guiding.attendant_haul_tension": lambda load, off_plumb, drop: (
        load * sqrt(1 + off_plumb**2 / drop**2)
    ),
    "guiding.tag_tension": lambda load, haul_elevation, ground_depression: (
        load * cos(haul_elevation) / sin(haul_elevation - ground_depression)
    ),
    "guiding.haul_tension_with_tag": lambda load, haul_elevation, ground_depression: (
        load * cos(ground_depression) / sin(haul_elevation - ground_depression)
    ),
    "guiding.track_tension": lambda load, haul_elevation, ground_depression: (
        load * cos(haul_elevation) / sin(haul_elevation - ground_depression)
    ),
    "guiding.haul_tension_with_track": lambda load, haul_elevation, ground_depression: (
        load
        * sin((haul_elevation + ground_depression) / 2)
        / cos((haul_elevation - ground_depression) / 2)
    ),
    "guiding.track_tension_apart": (
        lambda load, haul_elevation, track_elevation, ground_depression: (
            load
            * cos(haul_elevation)
            / (sin(haul_elevation - ground_depression) + sin(track_elevation - haul_elevation))
        )
    ),
    "guiding.haul_tension_with_track_apart": (
        lambda load, haul_elevation, track_elevation, ground_depression: (
            load
            * (cos(ground_depression) - cos(track_elevation))
            / (sin(haul_elevation - ground_depression) + sin(track_elevation - haul_elevation))
        )
    ),
    "guiding.line_tension_from_places": _line_tension_from_places,
    "guiding.straight_line_limit": lambda z, x_D, z_D, x_B, z_B: (
        x_D + (x_B - x_D) * (z_D - z) / (z_D - z_B)
    ),
    "guiding.hub_limit": lambda x, z, x_D, z_D, z_B: x_D + (x - x_D) * (z_D - z_B) / (z_D - z),
    "guiding.haul_clearance_offset": lambda z, x_D, z_D, x_O, z_O, clearance: (
        x_D + (x_O + clearance - x_D) * (z_D - z) / (z_D - z_O)
    ),
    "leg_angles.haul_elevation": lambda x, z, x_D, z_D: arctan((z_D - z) / (x - x_D)),
    "leg_angles.ground_depression": lambda x, z, x_B, z_B: arctan((z - z_B) / (x_B - x)),
    "guiding.litter_angle": lambda haul_elevation, ground_depression: (
        np.pi - haul_elevation + ground_depression
    ),
    "guiding.track_lift": lambda track_tension, haul_elevation, ground_depression: (
        track_tension * (sin(haul_elevation) - sin(ground_depression))
    ),
    "guiding.hub_uplift": lambda line_tension, ground_depression: (
        line_tension * sin(ground_depression)
    ),
    "guiding.bridle_tilt": lambda load, side_pull, ground_depression: arctan(
        side_pull / (side_pull * tan(ground_depression) + load)
    ),
    "guiding.track_length": lambda x, z, x_A, z_A, x_B, z_B: (
        sqrt((x_A - x) ** 2 + (z_A - z) ** 2) + sqrt((x_B - x) ** 2 + (z_B - z) ** 2)
    ),
    "guiding.take_in_rate": lambda track_elevation, ground_depression: (
        sin(track_elevation) - sin(ground_depression)
    ),
    "guiding.tag_length": lambda x, z, x_B, z_B: sqrt((x_B - x) ** 2 + (z_B - z) ** 2),
    "guiding.tag_pay_out_rate": lambda ground_depression: sin(ground_depression),
    "guiding.slack_haul_depression": lambda haul_elevation: -haul_elevation,
    "guiding.slack_haul_track_tension": lambda load, haul_elevation: (
        load / (2 * sin(haul_elevation))
    ),
    "guiding.tension_to_high_hub": lambda load, haul_elevation, line_elevation: (
        load * cos(haul_elevation) / sin(haul_elevation + line_elevation)
    ),
    "redirects.redirect_resultant": lambda strand_tension, strand_angle: (
        2 * strand_tension * cos(strand_angle / 2)
    ),
    "redirects.head_lean": lambda front_depression, back_depression: (
        (front_depression - back_depression) / 2
    ),
    "vectors.pounds_into_kilonewtons": lambda pounds_force: pounds_force / 225,
    "vectors.kilonewtons_into_kilograms": lambda kilonewtons: 102 * kilonewtons,
    "vectors.level_part": lambda rope_tension, rope_elevation: rope_tension * cos(rope_elevation),
    "vectors.upward_part": lambda rope_tension, rope_elevation: rope_tension * sin(rope_elevation),
    "vectors.side_pull_offset": lambda load, side_pull, rope_above: (
        rope_above * side_pull / np.sqrt(load**2 + side_pull**2)
    ),
    "vectors.slanted_pull_angle": lambda load, slanted_pull, pull_elevation: np.arctan(
        slanted_pull * cos(pull_elevation) / (load - slanted_pull * sin(pull_elevation))
    ),
    "vectors.slanted_pull_tension": lambda load, slanted_pull, pull_elevation: np.sqrt(
        load**2 + slanted_pull**2 - 2 * load * slanted_pull * sin(pull_elevation)
    ),
    "vectors.lean_reach": lambda rope_above, plumb_angle: rope_above * sin(plumb_angle),
    "vectors.weight": lambda mass: 9.80665 * mass,
    "vectors.side_pull_angle": lambda load, side_pull: arctan(side_pull / load),
    "vectors.side_pull_tension": lambda load, side_pull: sqrt(side_pull**2 + load**2),
    "vectors.resultant_of_two": lambda first_pull, second_pull, pull_angle: sqrt(
        first_pull**2 + 2 * first_pull * second_pull * cos(pull_angle) + second_pull**2
    ),
    "anchors.leg_growth": lambda angle_before, angle_after: (
        cos(angle_before / 2) / cos(angle_after / 2)
    ),
    "guiding_limits.reach_off_plumb": lambda load, line_tension, drop, ground_depression: (
        line_tension
        * drop
        * cos(ground_depression)
        / (load + line_tension * sin(ground_depression))
    ),
    "hauling.rise_in_a_throw": lambda clear_way, traveller_room, advantage: np.minimum(
        clear_way / advantage, traveller_room
    ),
    "hauling.people_needed": lambda load, friction, turn, efficiency, parts, pull_per_person: (
        np.ceil(
            load
            * np.exp(friction * turn)
            * (1 - efficiency)
            / (1 - efficiency**parts)
            / pull_per_person
        )
    ),
    "line_margin.line_margin": _line_margin,
    "litter_pulley.haul_difference": lambda track_tension, leg_ratio: (
        track_tension * (1 / leg_ratio - leg_ratio)
    ),
    "measurement.error_from_angle": lambda haul_elevation, ground_depression, angle_error: (
        angle_error * (tan(haul_elevation) + 1 / tan(haul_elevation - ground_depression))
    ),
    "measurement.line_let_out": lambda reading, efficiency: reading * (1 + 1 / efficiency),
    "stretch.stretch_from_quoted_elongation": (
        lambda rope_tension, rope_length, breaking_strength, quoted_elongation: (
            10 * quoted_elongation * rope_length * rope_tension / breaking_strength
        )
    ),
    "swing.swing_speed": lambda haul_leg_length, off_plumb: sqrt(
        2 * 9.80665 * (haul_leg_length - sqrt(haul_leg_length**2 - off_plumb**2))
    ),
    "swing.survivor_at_rest": lambda independent_lines, line_before: (
        line_before * independent_lines / (independent_lines - 1)
    ),
    "tensioner_lines.ideal_line": lambda device_pull, lines: 2 * device_pull,
    "tensioner_lines.lines_for_limit": lambda track_tension, line_limit, efficiency: np.maximum(
        1,
        np.ceil(
            np.log(1 - track_tension * (1 - efficiency**2) / line_limit) / (2 * np.log(efficiency))
        ),
    ),
    "anchors.back_leg_tension": lambda load, front_leg_angle, back_leg_angle, half_spread: (
        load
        / 2
        / (sin(back_leg_angle) * cos(half_spread) / tan(front_leg_angle) + cos(back_leg_angle))
    ),
    "anchors.front_leg_tension": lambda load, front_leg_angle, back_leg_angle, half_spread: (
        load
        * sin(back_leg_angle)
        * cos(half_spread)
        / (
            sin(back_leg_angle) * cos(half_spread) * cos(front_leg_angle)
            + sin(front_leg_angle) * cos(back_leg_angle)
        )
    ),
    "anchors.middle_leg_tension": lambda load, outer_leg_angle: (
        load / (1 + 2 * cos(outer_leg_angle) ** 3)
    ),
    "anchors.outer_leg_tension": lambda load, outer_leg_angle: (
        load * cos(outer_leg_angle) ** 2 / (1 + 2 * cos(outer_leg_angle) ** 3)
    ),
    "anchors.bridle_leg_tension": lambda load, leg_length, anchor_spacing: (
        load * leg_length / sqrt(4 * leg_length**2 - anchor_spacing**2)
    ),
    "critical.redirect_ratio": lambda strand_angle: 2 * cos(strand_angle / 2),
    "critical.line_ratio": lambda haul_elevation, ground_depression: (
        cos(haul_elevation) / sin(haul_elevation - ground_depression)
    ),
    "critical.haul_ratio": lambda haul_elevation, ground_depression: (
        cos(ground_depression) / sin(haul_elevation - ground_depression)
    ),
    "critical.mid_span_tension": lambda load, span, sag: (
        load * sqrt(1 + span**2 / (4 * sag**2)) / 2
    ),
    "critical.span_ratio": lambda sag_ratio: sqrt(1 + 1 / (4 * sag_ratio**2)) / 2,
    "critical.trolley_tension": lambda load, first_sag_angle, second_sag_angle: (
        load / (sin(first_sag_angle) + sin(second_sag_angle))
    ),
    "critical.trolley_control": lambda load, first_sag_angle, second_sag_angle: (
        load * tan((second_sag_angle - first_sag_angle) / 2)
    ),
    "critical.free_trolley_tension": lambda load, span, span_rise, span_rope: (
        load / (2 * sqrt(1 - span**2 / span_rope**2))
    ),
    "critical.track_tension_at_litter_angle": lambda load, litter_angle, ground_depression: (
        -load * cos(litter_angle - ground_depression) / sin(litter_angle)
    ),
    "critical.critical_redirect_angle": lambda pull_ratio: 2 * np.arccos(pull_ratio / 2),
    "critical.critical_sag_ratio": lambda load_ratio: 1 / (2 * sqrt(4 * load_ratio**2 - 1)),
    "critical.critical_line_elevation": lambda ground_depression, load_ratio: arctan(
        tan(ground_depression) + 1 / (load_ratio * cos(ground_depression))
    ),
    "critical.critical_haul_elevation": lambda ground_depression, load_ratio: (
        ground_depression + np.arcsin(cos(ground_depression) / load_ratio)
    ),
    "frames.landing": lambda head_height, head_reach, lean: head_height * tan(lean) - head_reach,
    "frames.guy_in_front": (
        lambda inward_pull, downward_pull, head_height, head_reach, guy_depression: (
            (inward_pull * head_height - downward_pull * head_reach)
            / (head_height * cos(guy_depression) + head_reach * sin(guy_depression))
        )
    ),
    "frames.guy_behind": (
        lambda inward_pull, downward_pull, head_height, head_reach, guy_depression: (
            (downward_pull * head_reach - inward_pull * head_height)
            / (head_height * cos(guy_depression) - head_reach * sin(guy_depression))
        )
    ),
    "frames.leg_compression": _leg_compression,
    "guiding_limits.two_hub_tension": (
        lambda load, haul_elevation, ground_depression, hub_spread: (
            load
            * cos(haul_elevation)
            / (
                sin(haul_elevation) * cos(ground_depression) * cos(hub_spread)
                - sin(ground_depression) * cos(haul_elevation)
            )
        )
    ),
    "guiding_limits.end_angle": lambda leg_rope_weight, ground_depression, line_tension: np.arcsin(
        leg_rope_weight * cos(ground_depression) / (2 * line_tension)
    ),
    "guiding_limits.least_straight_tension": (
        lambda leg_rope_weight, ground_depression, end_angle: (
            leg_rope_weight * cos(ground_depression) / (2 * sin(end_angle))
        )
    ),
    "guiding_limits.leg_sag": (
        lambda leg_rope_weight, ground_depression, line_tension, ground_leg_length: (
            leg_rope_weight * ground_leg_length * cos(ground_depression) / (8 * line_tension)
        )
    ),
    "guiding_limits.side_force": (
        lambda haul_tension, track_tension, haul_leg_length, ground_leg_length, sideways: (
            sideways
            * ((haul_tension + track_tension) / haul_leg_length + track_tension / ground_leg_length)
        )
    ),
    "guiding_limits.hub_sliding_tension": lambda hub_mass, hub_friction, ground_depression: (
        9.80665
        * hub_friction
        * hub_mass
        / (cos(ground_depression) + hub_friction * sin(ground_depression))
    ),
    "hauling.throws_needed": lambda raise_height, throw_rise, reset_loss: np.maximum(
        1, np.ceil((raise_height - reset_loss) / (throw_rise - reset_loss))
    ),
    "hauling.raise_time": (
        lambda raise_height, advantage, hand_speed, throws, reset_loss, reset_time: (
            advantage * (raise_height + (throws - 1) * reset_loss) / hand_speed
            + (throws - 1) * reset_time
        )
    ),
    "hauling.main_rope": lambda raise_height, edge_setback, advantage, throw_rise, haul_tail: (
        raise_height + edge_setback + (advantage - 1) * throw_rise + haul_tail
    ),
    "hauling.snag_pull": lambda people, burst_per_person, advantage: (
        people * burst_per_person * advantage
    ),
    "litter_pulley.track_tension_with_friction": (
        lambda load, haul_elevation, ground_depression: (
            load * cos(haul_elevation) / sin(haul_elevation - ground_depression)
        )
    ),
    "litter_pulley.haul_tension_with_friction": (
        lambda load, haul_elevation, ground_depression, leg_ratio: (
            load
            * (cos(ground_depression) - leg_ratio * cos(haul_elevation))
            / sin(haul_elevation - ground_depression)
        )
    ),
    "litter_pulley.sticking_leg_ratio": lambda haul_elevation, ground_depression: (
        cos(ground_depression) / cos(haul_elevation)
    ),
    "locked.locked_offset": lambda track_length, z, x_A, z_A, x_B, z_B: _on_ellipse(
        track_length, z, x_A, z_A, x_B, z_B
    ),
    "locked.swing_in_rate": lambda track_elevation, ground_depression: (
        1 / tan((track_elevation + ground_depression) / 2)
    ),
    "measurement.weight_from_readings": (
        lambda haul_tension, track_tension, haul_elevation, ground_depression: (
            (haul_tension + track_tension) * sin(haul_elevation)
            - track_tension * sin(ground_depression)
        )
    ),
    "measurement.full_scale_error": lambda full_scale, cell_error, reading: (
        full_scale * cell_error / reading
    ),
    "measurement.haul_sensitivity": lambda haul_elevation, ground_depression: (
        -tan(haul_elevation) - 1 / tan(haul_elevation - ground_depression)
    ),
    "measurement.ground_sensitivity": lambda haul_elevation, ground_depression: (
        1 / tan(haul_elevation - ground_depression)
    ),
    "measurement.rope_ahead_of_redirect": lambda reading, strand_angle, efficiency: (
        reading / sqrt(1 + 2 * efficiency * cos(strand_angle) + efficiency**2)
    ),
    "raise_limits.governing_tension": (
        lambda load, x_1, z_1, x_2, z_2, x_3, z_3, x_D, z_D, x_B, z_B: np.maximum(
            _line_tension_from_places(load, x_1, z_1, x_D, z_D, x_B, z_B),
            np.maximum(
                _line_tension_from_places(load, x_2, z_2, x_D, z_D, x_B, z_B),
                _line_tension_from_places(load, x_3, z_3, x_D, z_D, x_B, z_B),
            ),
        )
    ),
    "redirects.combined_head_pull": (
        lambda load, haul_elevation, ground_depression, back_depression: (
            2
            * load
            * sin((haul_elevation + back_depression) / 2)
            * cos(ground_depression)
            / sin(haul_elevation - ground_depression)
        )
    ),
    "redirects.unequal_redirect_pull": (
        lambda front_tension, back_tension, front_depression, back_depression: sqrt(
            front_tension**2
            + back_tension**2
            - 2 * front_tension * back_tension * cos(front_depression + back_depression)
        )
    ),
    "redirects.unequal_head_lean": (
        lambda front_tension, back_tension, front_depression, back_depression: arctan(
            (back_tension * cos(back_depression) - front_tension * cos(front_depression))
            / (back_tension * sin(back_depression) + front_tension * sin(front_depression))
        )
    ),
    "sheaves.bearing_ratio": _bearing_ratio,
    "sheaves.tenth_rule": lambda load, sheaves, parts: load * (1 + sheaves / 10) / parts,
    "slip.slip_along_arc": lambda slip, haul_elevation, ground_depression: (
        slip / sin(haul_elevation - ground_depression)
    ),
    "slip.slip_inward": lambda slip, haul_elevation, ground_depression: (
        slip * sin(haul_elevation) / sin(haul_elevation - ground_depression)
    ),
    "strength.margin": lambda strength, component_load, load_uncertainty, strength_uncertainty: (
        strength * (1 - strength_uncertainty) / (component_load * (1 + load_uncertainty))
    ),
    "strength.terminated_strength": lambda breaking_strength, termination: (
        breaking_strength * termination
    ),
    "stretch.unstretched_length": lambda stretched_length, rope_tension, stiffness: (
        stretched_length / (1 + rope_tension / stiffness)
    ),
    "stretch.stiffness_from_quoted_elongation": lambda breaking_strength, quoted_elongation: (
        breaking_strength / (10 * quoted_elongation)
    ),
    "stretch.stiffness_from_two_loads": lambda load_step, elongation: load_step / elongation,
    "swing.swing_fall": lambda haul_leg_length, off_plumb: (
        haul_leg_length - sqrt(haul_leg_length**2 - off_plumb**2)
    ),
    "swing.swing_peak": lambda load, haul_leg_length, off_plumb: (
        load * (3 - 2 * sqrt(1 - (off_plumb / haul_leg_length) ** 2))
    ),
    "swing.arrest_peak": lambda load, belay_slack, belay_length, stiffness: (
        load * (1 + sqrt(1 + 2 * stiffness * belay_slack / (load * belay_length)))
    ),
    "swing.fastest_fall": lambda load, belay_slack, belay_length, stiffness: (
        belay_slack + load * belay_length / (2 * stiffness)
    ),
    "tensioner.lines_ceiling": lambda efficiency: 1 / (1 - efficiency**2),
    "tensioner.released_slack": lambda play, lines: play / (lines - 1),
    "track_path.released_track_tension": lambda load, track_elevation, ground_depression: (
        load
        * cos((track_elevation + ground_depression) / 2)
        / (2 * sin((track_elevation - ground_depression) / 2))
    ),
}


def seconds(call: Callable[[], Any]) -> float:
    """Wall time of one call."""
    start = time.perf_counter()
    call()
    return time.perf_counter() - start


def in_turn(
    one: Callable[[], Any], two: Callable[[], Any], repeats: int
) -> tuple[list[float], list[float]]:
    """Times of both calls, taken alternately and after one run of each that is not counted."""
    one(), two()
    pairs = [(seconds(one), seconds(two)) for _ in range(repeats)]
    return [pair[0] for pair in pairs], [pair[1] for pair in pairs]


def ratios(checked: list[float], bare: list[float]) -> tuple[float, float]:
    """Ratio of the fastest times, and of the medians."""
    return min(checked) / min(bare), statistics.median(checked) / statistics.median(bare)


def bench_numeric() -> None:
    """Each derivation with its checks against the bare formula."""
    print(f"{'checked result / bare numpy, 100 000 points':48}{'min':>7}{'median':>8}{'µs':>8}")
    medians = []
    for name, derivation in EVERY.items():
        if name not in BY_HAND:
            print(f"{name:48}  (no formula by hand)")
            continue
        drawn = draw(derivation, POINTS)
        values = {n: np.resize(column, POINTS) for n, column in drawn.items()}
        formula = BY_HAND[name]
        np.testing.assert_allclose(derivation(**values), formula(**values), rtol=1e-9, atol=1e-9)
        checked, bare = in_turn(
            lambda d=derivation, v=values: d(**v), lambda f=formula, v=values: f(**v), REPEATS
        )
        least, median = ratios(checked, bare)
        medians.append(median)
        note = "" if median <= NUMERIC_AIM else f"  above {NUMERIC_AIM:g}"
        print(f"{name:48}{least:7.2f}{median:8.2f}{1e6 * min(bare):8.0f}{note}")
    print(f"{'largest':48}{'':7}{max(medians):8.2f}")
    print(f"{'middle':48}{'':7}{statistics.median(medians):8.2f}")


def bench_import() -> None:
    """Fresh processes; what starting Python itself costs is taken off both."""

    def start(code: str) -> Callable[[], Any]:
        return lambda: subprocess.run([sys.executable, "-c", code], check=True)

    times = {
        code: in_turn(start(code), start("pass"), IMPORT_REPEATS)
        for code in ("import ropecalc", "import sympy")
    }
    print("\nimport in a fresh process, beyond starting Python")
    net = {}
    for code, (whole, empty) in times.items():
        net[code] = min(whole) - min(empty)
        print(f"  {code:20}{1000 * min(whole):8.1f} ms, net {1000 * net[code]:7.1f} ms")
    least, median = ratios(times["import ropecalc"][0], times["import sympy"][0])
    note = "" if median <= IMPORT_AIM else f"  above {IMPORT_AIM:g}"
    print(f"  import ropecalc / import sympy: min {least:.2f}, median {median:.2f}{note}")
    print(f"  the same, net of starting Python: {net['import ropecalc'] / net['import sympy']:.3f}")


if __name__ == "__main__":
    bench_numeric()
    bench_import()
