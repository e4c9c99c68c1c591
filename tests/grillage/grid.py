"""An own grillage, dense: one deflection a node, rotations a node or a node and direction, cubic beams.

Written from the differential equation of a beam, EI w'''' = q, and GJ t' = T; nothing is shared
with the service. Deflection down; a rotation is a vector in the plan, and a beam of direction
(c, s) tilts along itself by the part across it.
"""

import math

import numpy as np

from models import COMBINATIONS, KINDS

NEAR = 1e-6


def _stations(model):
    """Places along every beam where something is: ends, piles, meetings, forces, load steps."""
    out = []
    for b, beam in enumerate(model.beams):
        places = {0.0, beam.length}
        places |= {s for i, s, _ in model.piles if i == b}
        places |= {s for meet in model.meets for i, s in meet if i == b}
        places |= {f.s for f in model.forces if f.beam == b}
        for spread in beam.spreads:
            places |= {spread.a, min(spread.b, beam.length)}
        ordered = []
        for s in sorted(places):
            if not ordered or s - ordered[-1] > NEAR:
                ordered.append(s)
        out.append(ordered)
    return out


class Grid:
    """A model as equations. `solve` gives reactions, and the piles' movements, by combination."""

    def __init__(self, model):
        self.model = model
        self.stations = _stations(model)
        self.node = {}
        points = []
        for b, places in enumerate(self.stations):
            for i, s in enumerate(places):
                at = model.beams[b].at(s)
                for n, p in enumerate(points):
                    if math.dist(p, at) < 1e-5:
                        self.node[b, i] = n
                        break
                else:
                    self.node[b, i] = len(points)
                    points.append(at)
        self.nodes = len(points)
        self.unknowns = {}
        for n in range(self.nodes):
            self._unknown("w", n)
        for b, places in enumerate(self.stations):
            for i in range(len(places)):
                for name in ("x", "y") if model.torsion else (f"beam {b}",):
                    self._unknown(name, self.node[b, i])

    def _unknown(self, name, node):
        return self.unknowns.setdefault((name, node), len(self.unknowns))

    def station(self, b, s):
        """The station of a beam at a place."""
        places = self.stations[b]
        return min(range(len(places)), key=lambda j: abs(places[j] - s))

    def over(self, b, i):
        """Loads that act over the part of a beam after a station."""
        first, last = self.stations[b][i], self.stations[b][i + 1]
        spreads = self.model.beams[b].spreads
        return [s for s in spreads if first >= s.a - NEAR and last <= s.b + NEAR]

    def _tilt(self, b, i):
        """Slope of beam b at its station i, and its twist, as sums over unknowns."""
        n = self.node[b, i]
        if not self.model.torsion:
            return {self.unknowns[f"beam {b}", n]: 1.0}, {}
        beam = self.model.beams[b]
        c, s = ((q - p) / beam.length for p, q in zip(beam.start, beam.end, strict=True))
        x, y = self.unknowns["x", n], self.unknowns["y", n]
        return {x: c, y: s}, {x: -s, y: c}

    def _add(self, matrix, stiffness, rows):
        for i, left in enumerate(rows):
            for j, right in enumerate(rows):
                for u, a in left.items():
                    for v, b in right.items():
                        matrix[u, v] += stiffness[i, j] * a * b

    def _span(self, b, i):
        places = self.stations[b]
        length = places[i + 1] - places[i]
        ends = []
        for j in (i, i + 1):
            ends.append({self.unknowns["w", self.node[b, j]]: 1.0})
            ends.append(self._tilt(b, j)[0])
        return length, ends

    def matrix(self):
        n = len(self.unknowns)
        k = np.zeros((n, n))
        for b, places in enumerate(self.stations):
            beam = self.model.beams[b]
            for i in range(len(places) - 1):
                length, ends = self._span(b, i)
                self._add(k, _bending(beam.rigidity, length), ends)
                if self.model.torsion:
                    g = beam.torsion / length * np.array([[1.0, -1.0], [-1.0, 1.0]])
                    self._add(k, g, [self._tilt(b, i)[1], self._tilt(b, i + 1)[1]])
        return k

    def _loads(self):
        """Right sides by kind."""
        out = {kind: np.zeros(len(self.unknowns)) for kind in KINDS}
        for f in self.model.forces:
            node = self.node[f.beam, self.station(f.beam, f.s)]
            out[f.kind][self.unknowns["w", node]] += f.load
        for b, places in enumerate(self.stations):
            for i in range(len(places) - 1):
                length, ends = self._span(b, i)
                for spread in self.over(b, i):
                    fixed = _fixed(spread.at(places[i]), spread.at(places[i + 1]), length)
                    for row, value in zip(ends, fixed, strict=True):
                        for u, a in row.items():
                            out[spread.kind][u] += value * a
        return out

    def solve(self, springs):
        """By combination: reactions of the piles, and their settlements on springs."""
        k = self.matrix()
        loads = self._loads()
        held = []
        for b, s, stiffness in self.model.piles:
            u = self.unknowns["w", self.node[b, self.station(b, s)]]
            held.append(u)
            if springs:
                k[u, u] += stiffness
        free = [u for u in range(len(k)) if springs or u not in held]
        out = {}
        for name, factors in COMBINATIONS:
            p = sum(f * loads[kind] for kind, f in zip(KINDS, factors, strict=True))
            w = np.zeros(len(k))
            w[free] = np.linalg.solve(k[np.ix_(free, free)], p[free])
            if springs:
                reactions = [s * w[u] for u, (_, _, s) in zip(held, self.model.piles, strict=True)]
            else:
                rest = p - k @ w
                reactions = [rest[u] for u in held]
            out[name] = (reactions, w)
        return out

    def extremes(self, w, name):
        """Greatest sagging and hogging moment and shear of every beam in a combination."""
        factors = dict(zip(KINDS, dict(COMBINATIONS)[name], strict=True))
        out = []
        for b, places in enumerate(self.stations):
            parts = [self._part(b, i, w, factors) for i in range(len(places) - 1)]
            out.append(tuple(max(p[j] for p in parts) for j in range(3)))
        return out

    def _part(self, b, i, w, factors):
        """The same for the part after a station: the moment is a cubic, its slope the shear."""
        length, ends = self._span(b, i)
        d = np.array([sum(a * w[u] for u, a in row.items()) for row in ends])
        spreads = self.over(b, i)
        q0 = sum(factors[s.kind] * s.at(self.stations[b][i]) for s in spreads)
        q1 = sum(factors[s.kind] * s.at(self.stations[b][i + 1]) for s in spreads)
        f = _bending(self.model.beams[b].rigidity, length) @ d - np.array(_fixed(q0, q1, length))
        rate = (q1 - q0) / length
        # f acts on the beam downwards and like a slope
        shear = np.polynomial.Polynomial([-f[0], -q0, -rate / 2])
        moment = shear.integ(k=[f[1]])
        stops = [0.0, length, *_inside(shear, length)]
        values = [moment(x) for x in stops]
        shears = [abs(shear(x)) for x in (0.0, length, *_inside(shear.deriv(), length))]
        return max(0.0, *values), max(0.0, *(-v for v in values)), max(shears)


def _bending(rigidity, l):
    """Stiffness of w'''' = 0 for deflection and slope at both ends."""
    a = rigidity / l**3
    return a * np.array(
        [
            [12.0, 6 * l, -12.0, 6 * l],
            [6 * l, 4 * l * l, -6 * l, 2 * l * l],
            [-12.0, -6 * l, 12.0, -6 * l],
            [6 * l, 2 * l * l, -6 * l, 4 * l * l],
        ]
    )


def _fixed(q0, q1, l):
    """Work-equivalent end forces of a load from q0 to q1: integrals of the cubic shapes with it."""
    return (
        l * (7 * q0 + 3 * q1) / 20,
        l * l * (3 * q0 + 2 * q1) / 60,
        l * (3 * q0 + 7 * q1) / 20,
        -l * l * (2 * q0 + 3 * q1) / 60,
    )


def _inside(polynomial, length):
    """Places within a part where a polynomial is nothing."""
    if not np.any(polynomial.coef):
        return []
    roots = polynomial.trim(1e-14 * np.max(np.abs(polynomial.coef))).roots()
    return [r.real for r in roots if abs(r.imag) < 1e-9 and 0.0 < r.real < length]
