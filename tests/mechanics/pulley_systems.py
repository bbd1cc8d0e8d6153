"""Pulley systems nobody designed: drawn at random, kept if the library accepts them."""

from collections.abc import Iterator

import numpy as np
from hypothesis import strategies as st

from ropecalc.derivation import DomainError
from ropecalc.mechanics.pulleys import Body, Role, Rope, System, Visit, gripped, over, tied


def wild(count: int, seed: int) -> Iterator[System]:
    """``count`` accepted systems of an anchor or two, up to three moving bodies and a few ropes."""
    rng = np.random.default_rng(seed)
    found = 0
    while found < count:
        try:
            system = _drawn(rng)
        except DomainError:
            continue
        found += 1
        yield system


def _drawn(rng: np.random.Generator) -> System:
    moving = [f"body {i}" for i in range(int(rng.integers(1, 4)))]
    anchors = ["anchor", "far anchor"][: int(rng.integers(1, 3))]
    grabs = {name for name in moving if rng.random() < 0.4}
    everything = [*anchors, "load", *moving, "hand"]
    where = dict(zip(everything, rng.permutation(len(everything)) * 2.0, strict=True))
    where["load"] = 20.0 + rng.integers(0, 2)  # mostly at the far end, like a load that hangs
    roles = {"load": Role.LOAD, "hand": Role.HAND} | dict.fromkeys(anchors, Role.ANCHOR)
    roles |= {name: Role.GRAB if name in grabs else Role.PULLEY for name in moving}
    held = [*anchors, "load", *moving]
    ropes = []
    for number in range(len(moving) + 1 - len(grabs)):
        ends = ["hand" if number == 0 else str(rng.choice(held)), str(rng.choice(held))]
        visits: list[Visit] = [tied(ends[0])]
        last = ends[0]
        for _ in range(int(rng.integers(0, 5))):
            body = str(rng.choice(held))
            if body == last:
                continue
            grips = body in grabs and not any(
                v == gripped(body) for r in [*ropes, Rope("", tuple(visits))] for v in r.visits
            )
            visits.append(gripped(body) if grips else over(body))
            last = body
        if last == ends[1]:
            visits.pop()
        ropes.append(Rope(f"rope {number}", (*visits, tied(ends[1]))))
    bodies = tuple(Body(name, roles[name], float(where[name])) for name in everything)
    return System("drawn at random", bodies, tuple(ropes)).with_own_efficiencies()


@st.composite
def staged(draw: st.DrawFn) -> tuple[System, int]:
    """A compound system of up to three stages, redirects between them, and its whole ratio.

    The ratio is the product of the stages' strands, which is the trade's own rule.
    """
    stages = draw(st.lists(st.integers(2, 4), min_size=1, max_size=3))
    bodies = [Body("load", Role.LOAD, 100.0)]
    ropes: list[Rope] = []
    visits: list[Visit] = [tied("load")]
    ratio, at, name = 1, 0.0, "rope 0"
    for number, parts in enumerate(stages):
        anchor, traveller = f"anchor {number}", f"traveller {number}"
        ratio *= parts
        bodies.append(Body(anchor, Role.ANCHOR, at))
        if parts % 2:
            bodies.append(Body(traveller, Role.GRAB, at + 3))
            visits += [gripped(traveller), *[over(anchor), over(traveller)] * (parts // 2)]
        else:
            bodies.append(Body(traveller, Role.PULLEY, at + 3))
            ropes.append(Rope(name, (*visits, tied(traveller))))
            name = f"rope {number + 1}"
            visits = [tied(anchor), *[over(traveller), over(anchor)] * (parts // 2)][:-1]
        at -= 5
        if draw(st.booleans()):
            bodies.append(Body(f"redirect {number}", Role.ANCHOR, at - 1))
            angle = draw(st.sampled_from([None, 0.5, 1.5, 3.0]))
            visits.append(over(f"redirect {number}", angle=angle))
            at -= 20
    bodies.append(Body("hand", Role.HAND, at - 40))
    ropes.append(Rope(name, (*visits, tied("hand"))))
    return System("staged", tuple(bodies), tuple(ropes)), ratio
