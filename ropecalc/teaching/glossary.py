"""The trade's words as this course uses them, and what a team calls them instead.

A team's own words change what the glossary and the lessons' lists of words show beside the
course's; the course's own texts keep theirs, so that every page means the same thing.
"""

from dataclasses import dataclass

from ropecalc.teaching.keyed import by_key


@dataclass(frozen=True)
class Term:
    """A word of the trade and what it means here."""

    key: str
    word: str
    meaning: str


TERMS = by_key(
    (
        # --- loads and forces
        Term("load", "load", "Everything that hangs on the ropes; its weight is a force."),
        Term(
            "mass",
            "mass",
            "How much of something there is, in kilograms or pounds; the same everywhere.",
        ),
        Term(
            "force",
            "force",
            "A push or a pull, with a size and a direction; in kilonewtons, kilograms-force or "
            "pounds-force.",
        ),
        Term(
            "side-pull",
            "side pull",
            "Whatever holds a hanging load aside: hands, legs, wind or a line.",
        ),
        Term(
            "free-body",
            "free body",
            "One part cut out of the rig, with every force that acts on it drawn as an arrow.",
        ),
        Term(
            "balance",
            "balance",
            "What is at rest has forces that add to nothing, along and across any direction.",
        ),
        Term("tension", "tension", "The pull along a rope, the same at both ends of a free piece."),
        Term(
            "resultant", "resultant", "The one force that does the same as several others together."
        ),
        # --- anchors and directionals
        Term(
            "anchor", "anchor", "What the ropes are tied to and what holds everything in the end."
        ),
        Term("leg", "leg", "One of the slings or ropes that run from an anchor to the knot."),
        Term("bisector", "bisector", "The line that halves the angle between two legs."),
        Term(
            "redundant",
            "redundant",
            "More legs than balance can tell apart; if one goes, the others still hold.",
        ),
        Term(
            "high-directional",
            "high directional",
            "A frame or anchor above the edge over which ropes run down the wall.",
        ),
        Term(
            "redirect", "redirect", "A pulley that turns a rope without giving an advantage by it."
        ),
        Term(
            "hub",
            "hub",
            "The ground anchor out in front of the wall at which tag and track lines end.",
        ),
        Term(
            "tie-off",
            "high-strength tie-off",
            "A way to end a rope that keeps nearly all of its strength.",
        ),
        Term("head", "head", "The top of a frame, where the pulleys of the lines hang."),
        Term(
            "lean",
            "lean",
            "The angle between a pull and the plumb line, here inward (towards the team) or "
            "outward.",
        ),
        Term(
            "line-of-action",
            "line of action",
            "The straight line along which a force acts, drawn on as far as one needs it.",
        ),
        Term(
            "footprint",
            "footprint",
            "The ground between the feet of a frame; while the line of action meets it, the frame "
            "stands by itself.",
        ),
        Term("guy", "guy", "A rope from the head to an anchor that keeps a frame from falling."),
        # --- ropes
        Term("haul-line", "haul line", "The rope that raises the litter."),
        Term("belay", "belay", "A second rope that holds the litter if the first one fails."),
        Term(
            "tag-line",
            "tag line",
            "A rope from the litter to the ground that pulls it off the rock, and down.",
        ),
        Term(
            "track-line",
            "track line",
            "A rope from a high tie-off over the directional, through a pulley at the litter and "
            "out to the hub; the litter runs along it.",
        ),
        Term(
            "tensioner",
            "series tensioner",
            "One rope that runs through a travelling pulley on each track line and so tightens all "
            "of them, as a 2:1 on each.",
        ),
        Term(
            "near-line",
            "near line",
            "Of several track lines in series the one next to the device; line 1.",
        ),
        Term(
            "far-line",
            "far line",
            "Of several track lines in series the one next to the tied-off end of the tensioner.",
        ),
        Term(
            "travelling-pulley",
            "travelling pulley",
            "The pulley at the end of a track line, which the tensioner pulls towards the hub.",
        ),
        Term(
            "play",
            "play",
            "How far a line's travelling pulley still stands from the hub: what can be taken in.",
        ),
        Term(
            "device",
            "device",
            "The descent-control device with progress capture at which the tensioner rope is "
            "taken in, held and let out.",
        ),
        Term(
            "hand-over",
            "handing over",
            "Leaving a strand to the progress capture after pulling; it lets a little rope back.",
        ),
        # --- planning
        Term(
            "station",
            "station",
            "A height of the raise at which a plan states where the litter is and what it takes.",
        ),
        Term(
            "governing-station",
            "governing station",
            "The station at which the plan takes most; everything is sized for it.",
        ),
        Term(
            "margin",
            "margin",
            "How many times the largest load fits into the least strength, errors counted.",
        ),
        Term(
            "stop-value",
            "stop value",
            "The reading of a cell at which everybody stops, worked out beforehand.",
        ),
        Term(
            "guidance-ends",
            "end of guidance",
            "The height at which edge attendants take over from the lines that hold the "
            "litter off.",
        ),
        # --- readings and ropes that give
        Term("full-scale", "full scale", "The largest force that a load cell is made to show."),
        Term("slack", "slack", "Length of rope that has to run out before a rope pulls at all."),
        Term("stretch", "stretch", "How much longer a rope is under tension than without it."),
        # --- haul systems
        Term(
            "strand",
            "strand",
            "A piece of rope between two places where it is held or turns; a haul system is "
            "counted strand by strand.",
        ),
        Term("throw", "throw", "One pull of the system from pulled out to pulled in."),
        Term("reset", "reset", "Pulling the system out again while the load is parked."),
        Term(
            "progress-capture",
            "progress capture",
            "What holds the rope whenever the hands let go, so that no height is lost.",
        ),
        Term("snag", "snag", "The litter or a rope catches on rock while the team hauls."),
        Term(
            "traveller",
            "traveller",
            "The part of a haul system that moves along with the load: a rope grab or a knot, "
            "with a pulley.",
        ),
        Term("rope-grab", "rope grab", "A device or a hitch that grips a rope at any place."),
        Term(
            "advantage",
            "mechanical advantage",
            "The load divided by the pull of the hand; without friction it is also the rope "
            "pulled in, divided by the rise.",
        ),
        Term(
            "compound-system",
            "compound system",
            "One haul system that pulls on the haul strand of another.",
        ),
        Term(
            "complex-system",
            "complex system",
            "A haul system in which parts travel at different speeds or against each other; no "
            "simple rule fits, only a count.",
        ),
        # --- friction
        Term(
            "friction-coefficient",
            "coefficient of friction",
            "Friction over the push that presses rope and rock together; measured, never known "
            "beforehand.",
        ),
        Term(
            "turn",
            "turn",
            "The angle by which a rope changes its direction over an edge or a pulley.",
        ),
        Term(
            "efficiency",
            "efficiency of a pulley",
            "Tension behind the pulley over tension ahead of it, while the rope moves.",
        ),
        Term(
            "ahead-behind",
            "ahead and behind",
            "Ahead is the side that the rope moves towards; it carries more. Behind is the other.",
        ),
        Term(
            "actual-advantage",
            "actual advantage",
            "Load over the pull of the hand with friction, while hauling; less than what one "
            "counts.",
        ),
        Term(
            "held-band",
            "band of holding",
            "At rest friction may help either way: every tension between lowering and raising "
            "holds.",
        ),
        # --- the litter
        Term(
            "attachment-point",
            "master attachment point",
            "Where the ropes meet at the litter; its body hangs a bridle's length below.",
        ),
        Term("bridle", "bridle", "The legs from the master attachment point to the litter's rail."),
        Term("attendant", "attendant", "A rescuer who goes with the litter."),
        Term("plumb", "plumb", "Straight down, as a weight on a string hangs."),
        # --- angles
        Term(
            "haul-elevation",
            "haul elevation",
            "The angle of the haul leg above the horizontal, at the litter.",
        ),
        Term(
            "ground-depression",
            "ground depression",
            "The angle of the ground leg below the horizontal, at the litter.",
        ),
        Term("multiple", "multiple", "How many times the load a tension is."),
        Term("span", "span", "A rope between two ends that carries a load on its way."),
        Term("sag", "sag", "How far the loaded point hangs below the line between the ends."),
        Term(
            "critical-angle",
            "critical angle",
            "The geometry at which a tension reaches a chosen multiple of the load; each rig has "
            "its own.",
        ),
    )
)
"""Every term by its key, by topic."""
