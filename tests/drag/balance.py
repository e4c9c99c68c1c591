"""Friction, neutral plane and drag force by numbers alone: unit friction is summed over slices of
a fraction of a millimetre with the trapezoid rule, the neutral plane is found by halving.

Written from the texts of the methods `drag_unit_friction`, `drag_neutral_plane`, `drag_fill_base`
and `drag_cumulative_friction` as the service states them.
"""

import bisect

WATER = 9.81  # kN/m3
SLICES = 4000  # in each stretch between layer ends and the water table


class Friction:
    """Upper and lower friction summed from where the shaft first touches soil."""

    def __init__(self, pile):
        self.pile = pile
        self.top = max(pile.head, 0.0)
        self.depths, self.upper, self.lower = [self.top], [0.0], [0.0]
        self.ends = []  # (top, bottom, layer) along the shaft
        depth = 0.0
        for layer in pile.layers:
            top, bottom = max(depth, self.top), min(depth + layer.thickness, pile.toe)
            depth += layer.thickness
            if top >= bottom:
                continue
            self.ends.append((top, bottom, layer))
            cuts = [top, bottom]
            if pile.water is not None and top < pile.water < bottom:
                cuts.insert(1, pile.water)
            for a, b in zip(cuts, cuts[1:]):
                self._stretch(a, b, layer)

    def stress(self, z):
        """Vertical effective stress."""
        total, top = self.pile.surcharge, 0.0
        for layer in self.pile.layers:
            total += layer.weight * max(0.0, min(z - top, layer.thickness))
            top += layer.thickness
        if self.pile.water is not None and z > self.pile.water:
            total -= WATER * (z - self.pile.water)
        return total

    def unit(self, z, layer):
        """(upper, lower) unit friction."""
        measure = self.stress(z) if layer.strength is None else layer.strength
        both = (layer.factors[1] * measure, layer.factors[0] * measure)
        if layer.limit is not None:
            both = (min(both[0], layer.limit), min(both[1], layer.limit))
        return both

    def _stretch(self, a, b, layer):
        slices = SLICES if layer.limit is not None else 40
        upper, lower = self.upper[-1], self.lower[-1]
        before, z0 = self.unit(a, layer), a
        for i in range(1, slices + 1):
            z = b if i == slices else a + (b - a) * i / slices
            now = self.unit(z, layer)
            half = 0.5 * (z - z0) * self.pile.perimeter
            upper += half * (before[0] + now[0])
            lower += half * (before[1] + now[1])
            self.depths.append(z)
            self.upper.append(upper)
            self.lower.append(lower)
            before, z0 = now, z

    def at(self, z):
        """(upper, lower) friction down to z; a depth of nine digits may pass the toe by its last."""
        z = min(z, self.pile.toe)
        if z <= self.top:
            return 0.0, 0.0
        i = min(bisect.bisect_left(self.depths, z), len(self.depths) - 1)
        if self.depths[i] == z:
            return self.upper[i], self.lower[i]
        z0 = self.depths[i - 1]
        layer = next(l for a, b, l in self.ends if a <= z0 and z <= b)
        low, high = self.unit(z0, layer), self.unit(z, layer)
        half = 0.5 * (z - z0) * self.pile.perimeter
        return (
            self.upper[i - 1] + half * (low[0] + high[0]),
            self.lower[i - 1] + half * (low[1] + high[1]),
        )


class Table:
    """The same of a table of sums, straight between its rows."""

    def __init__(self, pile):
        self.top, self.rows, self.ends = 0.0, pile.table, []

    def at(self, z):
        """The sum down to z, in drag as in resistance."""
        for (z0, s0), (z1, s1) in zip(self.rows, self.rows[1:]):
            if z <= z1:
                s = s0 + (s1 - s0) * (z - z0) / (z1 - z0)
                return s, s
        return self.rows[-1][1], self.rows[-1][1]


def neutral_plane(pile, friction):
    """(position, depth or None): the least depth where load from above meets resistance from below."""
    whole = friction.at(pile.toe)[1]

    def excess(z):
        upper, lower = friction.at(z)
        return pile.load + upper - (pile.resistance + whole - lower)

    if excess(friction.top) > 0.0:
        return "none", None
    if excess(pile.toe) < 0.0:
        return "at_toe", pile.toe
    low, high = friction.top, pile.toe
    for _ in range(60):
        middle = 0.5 * (low + high)
        if excess(middle) >= 0.0:
            high = middle
        else:
            low = middle
    return "along_shaft", high


def expected(pile):
    """Every figure of the answer that is compared."""
    friction = Table(pile) if pile.table else Friction(pile)

    def plane(z):
        force = friction.at(z)[0]
        return {"depth": z, "drag_force": force, "maximum_load": pile.load + force}

    upper, lower = friction.at(pile.toe)
    want = {"method": pile.method, "permanent_load": pile.load}
    if pile.resistance is not None:
        position, z = neutral_plane(pile, friction)
        want["balance"] = {
            "toe_resistance": pile.resistance,
            "shaft_resistance": lower,
            "greatest_drag": upper,
            "position": position,
        }
        if z is not None:
            want["balance"]["neutral_plane"] = plane(z)
    if pile.settling is not None:
        want["fill_base"] = plane(pile.settling)
    governing = want.get("fill_base")
    if pile.method == "neutral_plane":
        governing = want["balance"].get("neutral_plane")
    if governing is not None:
        want["governing"] = governing
        if pile.steel is not None:
            load = pile.steel["load"] * pile.load + pile.steel["drag"] * governing["drag_force"]
            want["structural"] = {"load": load, "strength": pile.steel["strength"]}
            if "least" in pile.steel:
                want["structural"]["least_resistance_factor"] = load / pile.steel["least"]
    if friction.ends:
        want["layers"] = []
    for a, b, layer in friction.ends:
        (u0, l0), (u1, l1) = friction.at(a), friction.at(b)
        want["layers"].append(
            {
                "top": a,
                "bottom": b,
                "effective_stress_top": friction.stress(a),
                "effective_stress_bottom": friction.stress(b),
                "upper_factor": layer.factors[1],
                "lower_factor": layer.factors[0],
                "upper_force": u1 - u0,
                "lower_force": l1 - l0,
            }
        )
    return want, friction


def loads(pile, friction, z, plane):
    """Columns of the curve at a depth: from above, from below, in the pile."""
    upper, lower = friction.at(z)
    whole = friction.at(pile.toe)[1]
    row = {"load_from_above": pile.load + upper}
    if pile.resistance is not None:
        row["resistance_from_below"] = pile.resistance + whole - lower
    if plane is not None:
        row["load"] = row["load_from_above"]
        if z > plane:
            at, passed = friction.at(plane)
            row["load"] = max(0.0, pile.load + at - (lower - passed))
    return row
