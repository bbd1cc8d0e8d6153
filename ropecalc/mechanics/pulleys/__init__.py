"""Pulley systems as data: tensions, advantage, travel, loads on anchors, throws and resets."""

from ropecalc.mechanics.pulleys.loads import Forces, forces
from ropecalc.mechanics.pulleys.named import common_system, common_systems, series_tensioner_system
from ropecalc.mechanics.pulleys.system import (
    Attachment,
    Body,
    How,
    Role,
    Rope,
    Strand,
    System,
    Visit,
    gripped,
    over,
    tied,
)
from ropecalc.mechanics.pulleys.tensions import Count, count_tensions
from ropecalc.mechanics.pulleys.throw import (
    Room,
    Throws,
    haulers,
    plan_throws,
    room,
    rope_needed,
    snag_force,
)
from ropecalc.mechanics.pulleys.travel import Travel, travel

__all__ = [
    "Attachment",
    "Body",
    "Count",
    "Forces",
    "How",
    "Role",
    "Room",
    "Rope",
    "Strand",
    "System",
    "Throws",
    "Travel",
    "Visit",
    "common_system",
    "common_systems",
    "count_tensions",
    "forces",
    "gripped",
    "haulers",
    "over",
    "plan_throws",
    "room",
    "rope_needed",
    "series_tensioner_system",
    "snag_force",
    "tied",
    "travel",
]
