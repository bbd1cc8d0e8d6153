"""The sentences that travel with results, so that no screen or paper can leave them out."""

STATIC = (
    "Static, two-dimensional model with straight, weightless, inextensible ropes. Left out: "
    "starts, stops and snags, sideways movement, wind, edge damage, anchor quality, people."
)
STRETCHING = (
    "Static, two-dimensional model with straight, weightless ropes. Ropes that are said to stretch "
    "do so in proportion to their tension; all others keep their length. Left out: starts, stops "
    "and snags, sideways movement, wind, edge damage, anchor quality, people."
)
"""Instead of :data:`STATIC` where ropes stretch."""
FRICTIONLESS = (
    "No friction at pulleys and edges: real hauling takes more force than this and real lowering "
    "less."
)
AUTHORITY = (
    "Study material. Rig only under your authority having jurisdiction, within your current "
    "qualification, with the manufacturers' instructions for your own equipment; where they "
    "differ from this, follow them."
)
NEAR_DIRECTIONAL = (
    "In the last metres below the directional small errors of position change the tension many "
    "times over. Change the method before that, and do not rely on numbers there."
)
COMMON_HUB = (
    "The ground anchor takes the pull of all lines together, partly upwards, and the direction "
    "turns upwards as the litter rises."
)
ATTENDANT_LIMITS = (
    "An attendant adds their own mass to the load, and cannot push where the wall falls away or "
    "the footing is wet."
)
REHEARSE = "Do not rehearse failures with a person on the litter."
KNOWLEDGE_CHECK = (
    "A score is a check of knowledge, not a certification. Practical competence is assessed by "
    "your authority."
)
EVERY_RESULT = (STATIC, FRICTIONLESS, AUTHORITY)
