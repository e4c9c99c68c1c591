"""Random lines and grids of beam on piles, in plain numbers (kN, m), and the requests that say the same.

A model is a list of straight beams with their loads, a list of piles, and combinations. Nothing
here calculates.
"""

import math
from dataclasses import dataclass, field

KINDS = ("dead", "live", "snow")
COMBINATIONS = (
    ("D+0.75L+0.75S", (1.0, 0.75, 0.75)),
    ("D+L", (1.0, 1.0, 0.0)),
    ("0.6D-S", (0.6, 0.0, -1.0)),
)


@dataclass
class Spread:
    """A load that varies evenly from `a` to `b` along a beam, kN/m down."""

    kind: str
    a: float
    b: float
    start: float
    end: float

    def at(self, s):
        return self.start + (self.end - self.start) * (s - self.a) / (self.b - self.a)


@dataclass
class Beam:
    """A straight beam; places along it count from its start."""

    start: tuple
    end: tuple
    rigidity: float
    torsion: float
    spreads: list = field(default_factory=list)

    @property
    def length(self):
        return math.dist(self.start, self.end)

    def at(self, s):
        t = s / self.length
        return tuple(p + t * (q - p) for p, q in zip(self.start, self.end, strict=True))


@dataclass
class Force:
    """A force at a place of a beam, kN down."""

    kind: str
    beam: int
    s: float
    load: float


@dataclass
class Model:
    """Beams on piles. `meets` are places where beams meet: tuples of (beam, place along it)."""

    name: str
    beams: list
    piles: list  # (beam, place, stiffness or None where rigid)
    forces: list
    meets: list
    torsion: bool

    @property
    def springs(self):
        return any(k is not None for _, _, k in self.piles)


def _spreads(rnd, length, uplift):
    out = [Spread("dead", 0.0, length, rnd.uniform(5, 25), 0.0)]
    out[0].end = out[0].start
    a, b = sorted(round(rnd.uniform(0, length), 2) for _ in range(2))
    if b - a < 0.3:
        a, b = 0.0, length
    out.append(Spread("live", a, b, rnd.uniform(2, 15), rnd.uniform(0, 15)))
    if rnd.random() < 0.6:
        q = rnd.uniform(2, 12) * (3.0 if uplift else 1.0)
        # some pull up at one end and press down at the other
        out.append(Spread("snow", 0.0, length, q, rnd.choice((q, -2.0 * q))))
    return out


def _torsion(rnd, rigidity):
    return rigidity * rnd.uniform(0.02, 0.6)


def line(rnd, index):
    """A beam on 2 to 9 piles, rigid or on springs, with overhangs."""
    gaps = [rnd.uniform(0.9, 4.0) for _ in range(rnd.randint(1, 8))]
    first = rnd.choice((0.0, rnd.uniform(0.2, 1.2)))
    places = [first]
    for gap in gaps:
        places.append(places[-1] + gap)
    length = places[-1] + rnd.choice((0.0, rnd.uniform(0.2, 1.2)))
    x, y, turn = rnd.uniform(-20, 20), rnd.uniform(-20, 20), rnd.uniform(0, math.tau)
    end = (x + length * math.cos(turn), y + length * math.sin(turn))
    rigidity = rnd.uniform(5e3, 1e5)
    beam = Beam((x, y), end, rigidity, _torsion(rnd, rigidity))
    beam.spreads = _spreads(rnd, beam.length, index % 5 == 0)
    springs = index % 2 == 1
    piles = [(0, s, rnd.uniform(4e3, 6e4) if springs else None) for s in places]
    forces = [
        Force(rnd.choice(KINDS), 0, rnd.uniform(0, beam.length), rnd.uniform(5, 80))
        for _ in range(rnd.randint(0, 3))
    ]
    return Model(f"line {index}", [beam], piles, forces, [], False)


def grid(rnd, index):
    """Two families of beams at any angle to each other, some crossings without a pile."""
    torsion = index % 2 == 0
    springs = index % 3 != 0
    turn = rnd.uniform(0, math.tau)
    skew = rnd.choice((math.pi / 2, rnd.uniform(0.9, 2.2)))
    along = (math.cos(turn), math.sin(turn))
    across = (math.cos(turn + skew), math.sin(turn + skew))
    columns = [0.0]
    rows = [0.0]
    for _ in range(rnd.randint(1, 3)):
        columns.append(columns[-1] + rnd.uniform(2.0, 4.5))
    for _ in range(rnd.randint(1, 3)):
        rows.append(rows[-1] + rnd.uniform(2.0, 4.5))
    shift = (rnd.uniform(-30, 30), rnd.uniform(-30, 30))

    def point(u, v):
        return tuple(s + u * a + v * b for s, a, b in zip(shift, along, across, strict=True))

    def beam(p, q):
        rigidity = rnd.uniform(5e3, 1e5)
        made = Beam(p, q, rigidity, _torsion(rnd, rigidity))
        made.spreads = _spreads(rnd, made.length, False)
        return made

    beams = [beam(point(columns[0], v), point(columns[-1], v)) for v in rows]
    beams += [beam(point(u, rows[0]), point(u, rows[-1])) for u in columns]
    meets = [
        ((r, u), (len(rows) + c, v)) for r, v in enumerate(rows) for c, u in enumerate(columns)
    ]

    def stiffness():
        return rnd.uniform(4e3, 6e4) if springs else None

    corners = {(r, u) for r in (0, len(rows) - 1) for u in (columns[0], columns[-1])}
    piles = [
        (*first, stiffness()) for first, _ in meets if first in corners or rnd.random() < 0.55
    ]
    forces = []
    for b, made in enumerate(beams):
        # clear of the crossings: places within 3 mm of one are the crossing
        crossings = [at for meet in meets for i, at in meet if i == b]
        s = rnd.uniform(0.35, 0.65) * made.length
        if rnd.random() < 0.6 and all(abs(s - at) > 0.3 for at in crossings):
            piles.append((b, s, stiffness()))
        s = rnd.uniform(0.0, made.length)
        if rnd.random() < 0.4 and all(abs(s - at) > 0.01 for at in crossings):
            forces.append(Force(rnd.choice(KINDS), b, s, rnd.uniform(5, 60)))
    return Model(f"grid {index}", beams, piles, forces, meets, torsion)


def _m(v):
    return {"value": v, "unit": "m"}


def _at(p):
    return {"x": _m(p[0]), "y": _m(p[1])}


def request(model):
    """The request of a model. On springs the beams need their rigidity; rigid piles need none."""
    beams = []
    for i, b in enumerate(model.beams):
        sent = {
            "label": f"B{i}_",
            "points": [_at(b.start), _at(b.end)],
            "flexural_rigidity": {"value": b.rigidity, "unit": "kN_m2"},
            "line_loads": [
                {
                    "kind": s.kind,
                    "load": {"value": s.start, "unit": "kN_per_m"},
                    "load_at_end": {"value": s.end, "unit": "kN_per_m"},
                    "from": _m(s.a),
                    "to": _m(min(s.b, b.length)),
                }
                for s in b.spreads
            ],
        }
        if model.torsion:
            sent["torsional_rigidity"] = {"value": b.torsion, "unit": "kN_m2"}
        beams.append(sent)
    positions = []
    for i, (b, s, k) in enumerate(model.piles):
        pile = {"label": f"P{i}_", "at": _at(model.beams[b].at(s))}
        if k is not None:
            pile["stiffness"] = {"value": k, "unit": "kN_per_m"}
        positions.append(pile)
    listed = [
        {
            "name": name,
            "factors": [
                {"kind": k, "factor": f} for k, f in zip(KINDS, factors, strict=True) if f != 0.0
            ],
        }
        for name, factors in COMBINATIONS
    ]
    out = {
        "design_basis": {"allowable_stress": {"combinations": {"own": {"list": listed}}}},
        "beams": beams,
        "point_loads": [
            {"kind": f.kind, "at": _at(model.beams[f.beam].at(f.s)), "load": {"value": f.load, "unit": "kN"}}
            for f in model.forces
        ],
        "piles": {"given": {"positions": positions}},
        "reaction_detail": "all",
    }
    if model.torsion:
        out["beam_torsion"] = "included"
    return out
