"""The plan of a group: its centres, the block about them, and when the block counts."""

import math

from units import base, is_quantity

NEAR = 3.0


def _hull(points):
    """Corners of the convex outline, in order (a line gives its two ends)."""
    points = sorted(set(points))

    def half(row):
        found = []
        for x, y in row:
            while len(found) >= 2:
                (ax, ay), (bx, by) = found[-2:]
                if (bx - ax) * (y - ay) - (by - ay) * (x - ax) > 1e-12:
                    break
                found.pop()
            found.append((x, y))
        return found[:-1]

    return half(points) + half(points[::-1])


def _centres(sent):
    """Centres of the piles, m."""
    ((kind, members),) = sent.items()
    if kind == "positions":
        return [(base(p["x"]), base(p["y"])) for p in members["piles"]]
    rows, columns = members["row_count"], members["column_count"]
    step_y = base(members["row_spacing"]) if rows > 1 else 0.0
    step_x = base(members["column_spacing"]) if columns > 1 else 0.0
    return [(step_x * column, step_y * row) for row in range(rows) for column in range(columns)]


def _widths(hull):
    """(least width, extent across it) of an outline."""
    found = []
    for (ax, ay), (bx, by) in zip(hull, hull[1:] + hull[:1]):
        length = math.hypot(bx - ax, by - ay)
        ux, uy = (bx - ax) / length, (by - ay) / length
        along = [x * ux + y * uy for x, y in hull]
        across = [y * ux - x * uy for x, y in hull]
        found.append((max(across) - min(across), max(along) - min(along)))
    return min(found)


class Plan:
    """A plan with the diameter of the largest helix about every centre."""

    def __init__(self, asked, diameter):
        self.asked, self.diameter = asked, diameter
        centres = _centres(asked["plan"])
        self.count = len(centres)
        self.spacing = min(
            math.dist(a, b) for n, a in enumerate(centres) for b in centres[n + 1 :]
        )
        hull = _hull(centres)
        edges = list(zip(hull, hull[1:] + hull[:1]))
        outline = sum(math.dist(a, b) for a, b in edges)
        inside = 0.5 * abs(sum(ax * by - bx * ay for (ax, ay), (bx, by) in edges))
        width, extent = _widths(hull)
        self.breadth, self.length = width + diameter, extent + diameter
        self.area = inside + outline * diameter / 2.0 + diameter**2
        self.perimeter = outline + 4.0 * diameter
        self.efficiency = asked.get("efficiency_factor")
        # on the limit they stand apart
        self.close = self.spacing / diameter < NEAR - 1e-9
        if self.efficiency is None and not self.close:
            self.efficiency = 1.0

    @property
    def uplift_block(self):
        """How the block in tension is taken, with what was sent of it."""
        chosen = self.asked.get("uplift_block", "straight_sides")
        if isinstance(chosen, str):
            return chosen, {}
        members = chosen["given"]
        return "given", {n: base(v) for n, v in members.items() if is_quantity(v)}

    def eurocode_spacing(self, pile, credited):
        """Root of the largest diameter times the depth below the lowest soil without credit."""
        lowest = max(credited, key=lambda helix: helix.depth)
        return math.sqrt(self.diameter * pile.embedment(lowest))

    def counts(self, basis, pile, credited):
        """Whether the block in tension counts."""
        if self.close:
            return True
        allowable = (basis or {}).get("allowable_stress") or {}
        if allowable.get("uplift_clause") == "new_york_city":
            return True
        if "eurocode_7" in (basis or {}) and credited:
            return self.spacing <= self.eurocode_spacing(pile, credited)
        return False
