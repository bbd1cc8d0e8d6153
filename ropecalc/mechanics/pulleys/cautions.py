"""What every result about a pulley system assumes, and the sentences that travel with it."""

from ropecalc import cautions

ASSUMPTIONS = (
    "Strands are parallel to the line of pull, unless an anchor's pulley was given an angle.",
    "Ropes and pulleys weigh nothing; grabs and knots do not slip.",
    "Over a sheave the strand behind carries the efficiency times the strand ahead.",
)
CAUTIONS = (
    "Efficiencies differ with pulley, rope, load, water and dirt: enter values you measured, and "
    "expect others on the day.",
    "The more advantage, the harder the same hands can pull into a snag without feeling it; for a "
    "moment people pull much harder than they can keep up.",
    cautions.STATIC,
    cautions.AUTHORITY,
)
SOURCE = "worked out here from the balance of every moving body and the travel of every rope"
