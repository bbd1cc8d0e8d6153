"""Pulley systems against sympy.physics.mechanics, a general-purpose mechanics library.

Its pathways know nothing of pulley systems: a rope is a path through points in space, its
tension gives a force at each point and its length a rate of change, both by vector algebra. The
forces at each free body must balance and each rope must keep its length. The library is part of
sympy, used and tested far beyond this project; its pathways are compared in its own tests with
equations of motion from textbooks.
"""

import pytest
import sympy as sp
from sympy.physics.mechanics import LinearPathway, ObstacleSetPathway, Point, ReferenceFrame
from sympy.physics.vector import dynamicsymbols

from ropecalc.mechanics.pulleys import common_system, common_systems, travel
from ropecalc.mechanics.pulleys.system import How, Role

NAMES = [(name, redirect) for name in common_systems() for redirect in (False, True)]


def lengths_of_rope(system) -> list[list[str]]:
    """Each rope cut where it is tied or gripped: over those points no tension passes on."""
    pieces = []
    for rope in system.ropes:
        piece: list[str] = []
        for visit in rope.visits:
            piece.append(visit.body)
            if visit.how is not How.OVER and len(piece) > 1:
                pieces.append(piece)
                piece = [visit.body]
    return pieces


@pytest.mark.parametrize(("name", "redirect"), NAMES)
def test_forces_and_motion_by_pathways_agree(name: str, redirect: bool) -> None:
    system = common_system(name, redirect=redirect)
    frame, origin = ReferenceFrame("N"), Point("O")
    origin.set_vel(frame, 0)
    place, speed, points = {}, {}, {}
    for body in system.bodies:
        moves = body.role is not Role.ANCHOR
        label = body.name.replace(" ", "_")
        place[body.name] = dynamicsymbols(label) if moves else sp.Float(body.station)
        speed[body.name] = place[body.name].diff() if moves else sp.S.Zero
        points[body.name] = origin.locatenew(label, place[body.name] * frame.x)
        points[body.name].set_vel(frame, speed[body.name] * frame.x)
    at = {place[b.name]: b.station for b in system.bodies if b.role is not Role.ANCHOR}

    pieces = lengths_of_rope(system)
    tensions = sp.symbols(f"tension:{len(pieces)}")
    pull = {body.name: sp.S.Zero for body in system.bodies}
    kept = []
    for piece, tension in zip(pieces, tensions, strict=True):
        through = [points[body] for body in piece]
        pathway = LinearPathway(*through) if len(piece) == 2 else ObstacleSetPathway(*through)
        for point, force in pathway.to_loads(-tension):
            body = next(name for name, known in points.items() if known is point)
            pull[body] += force.dot(frame.x).subs(at)
        kept.append(pathway.extension_velocity)

    weight = 1
    balance = [
        pull[b.name] + (weight if b.role is Role.LOAD else 0) for b in system.bodies if b.free
    ]
    solved = sp.solve(balance, tensions, dict=True)
    hand = next(
        tension
        for piece, tension in zip(pieces, tensions, strict=True)
        if any(body.role is Role.HAND and body.name in piece for body in system.bodies)
    )
    ratio = sp.nsimplify(weight / solved[0][hand], rational=True, tolerance=1e-9)
    assert ratio == travel(system).ratio

    rates = sp.symbols(f"rate:{len(system.bodies)}")
    known = {
        speed[body.name]: rate
        for body, rate in zip(system.bodies, rates, strict=True)
        if speed[body.name] != 0
    }
    stays = [velocity.subs(known).subs(at) for velocity in kept]
    motion = sp.solve(stays, [r for r in known.values()], dict=True)[0]
    by_name = {body.name: rate for body, rate in zip(system.bodies, rates, strict=True)}
    load_name = next(b.name for b in system.bodies if b.role is Role.LOAD)
    hand_name = next(b.name for b in system.bodies if b.role is Role.HAND)
    load_rate = motion.get(by_name[load_name], by_name[load_name])
    hand_rate = motion.get(by_name[hand_name], by_name[hand_name])
    assert abs(abs(float(hand_rate / load_rate)) - float(travel(system).ratio)) < 1e-9
