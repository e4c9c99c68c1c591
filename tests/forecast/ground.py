"""Simulated jobs, made apart from the model of the service: a slope, waves, two kinds of ground
with their own depth and stiffness, piles driven row by row until their torque holds.

Feet and ft lbf. Standard library only; the same jobs on every machine.
"""

import math

from reading import counts, depth_met, mean

REQUIRED = 2778.0
LENGTH = 3.0
WIDE, HIGH = 46.0, 30.0
DEEPEST = 90


class Ground:
    """Where the bearing layer lies and how the torque grows in it."""

    def __init__(self, rnd):
        self.base = rnd.uniform(9, 24)
        turn, rise = rnd.uniform(0, 2 * math.pi), rnd.uniform(0, 0.2)
        self.slope = (rise * math.cos(turn), rise * math.sin(turn))
        self.waves = [
            (rnd.uniform(0, 1.2), rnd.uniform(25, 70), rnd.uniform(0, 2 * math.pi), turn)
            for turn in (rnd.uniform(0, math.pi), rnd.uniform(0, math.pi))
        ]
        # a straight border across the plan, or none
        turn = rnd.uniform(0, 2 * math.pi)
        self.border = (math.cos(turn), math.sin(turn), rnd.uniform(-14, 14))
        self.two_kinds = rnd.random() < 0.5
        self.step = rnd.uniform(-3.5, 3.5)
        self.own = rnd.uniform(0.3, 1.5)
        self.noise = rnd.uniform(0.04, 0.12)
        self.stones = rnd.uniform(0, 0.05)
        self.soft = (rnd.uniform(500, 800), rnd.uniform(900, 1300))
        self.rise = (rnd.uniform(180, 320), rnd.uniform(500, 900))

    def second(self, x, y):
        c, s, offset = self.border
        return self.two_kinds and (x - WIDE / 2) * c + (y - HIGH / 2) * s > offset

    def torques(self, rnd, x, y):
        """Every reading of a pile down to the deepest, one a foot."""
        kind = int(self.second(x, y))
        top = self.base + self.slope[0] * (x - WIDE / 2) + self.slope[1] * (y - HIGH / 2)
        for size, period, phase, turn in self.waves:
            along = x * math.cos(turn) + y * math.sin(turn)
            top += size * math.sin(2 * math.pi * along / period + phase)
        top += kind * self.step + rnd.gauss(0, self.own)
        rows = []
        for depth in range(1, DEEPEST + 1):
            torque = self.soft[kind] + self.rise[kind] * max(0.0, depth - 0.5 - top)
            torque = min(torque, 9000.0) * math.exp(rnd.gauss(0, self.noise))
            if rnd.random() < self.stones:
                torque *= rnd.uniform(1.8, 4.0)
            rows.append(float(round(torque)))
        return rows


def driven(torques, least, most):
    """Rows of a pile that goes on until its torque holds and it is deep enough, or until it runs
    out of length."""
    for end in range(4, len(torques) + 1):
        depths = [float(d) for d in range(1, end + 1)]
        rows = torques[:end]
        if end >= most:
            return depths, rows
        if end < least or mean(depths, rows, end, LENGTH) < REQUIRED:
            continue
        good = counts(depths, rows, LENGTH)
        if good[-1] and depth_met(depths, rows, REQUIRED, LENGTH)[0] == "met":
            return depths, rows
    return depths, rows


def job(rnd):
    """A request, the depth each planned pile comes to, what each log says, and its kind."""
    ground = Ground(rnd)
    columns, lines = 5, 4
    places = [
        (WIDE * (i + rnd.uniform(-0.3, 0.3)) / (columns - 1), HIGH * (j + rnd.uniform(-0.3, 0.3)) / (lines - 1))
        for i in range(columns)
        for j in range(lines)
    ]
    from_one_side = rnd.random() < 0.3
    if not from_one_side:
        rnd.shuffle(places)
    logs = rnd.randint(6, 12)
    least = rnd.choice([0, 0, round(0.8 * ground.base)])
    typical = ground.base + 10
    with_places = rnd.random() < 0.7
    all_piles = []
    for at, (x, y) in enumerate(places):
        # every fifth log: the pile ran out of length about where the others ended
        short = at < logs and rnd.random() < 0.2
        most = round(typical + rnd.uniform(-3, 4)) if short else DEEPEST
        all_piles.append(((x, y), driven(ground.torques(rnd, x, y), least, most)))
    installed, planned, truths, readings = [], [], [], []
    for at, ((x, y), (depths, rows)) in enumerate(all_piles):
        pile = {"label": f"P{at}"}
        if with_places:
            pile["position"] = {k: {"value": v, "unit": "ft"} for k, v in (("x", x), ("y", y))}
        found = depth_met(depths, rows, REQUIRED, LENGTH)
        if at < logs:
            table = {
                "columns": [{"name": "depth", "unit": "ft"}, {"name": "torque", "unit": "ft_lbf"}],
                "rows": [[d, t] for d, t in zip(depths, rows)],
            }
            installed.append(pile | {"record": {"log": {"readings": table}}})
            readings.append(found)
        else:
            planned.append(pile | {"minimum_depth": {"value": least, "unit": "ft"}})
            truths.append(max(float(least), found[1]) if found[0] == "met" else None)
    request = {
        "required_torque": {"value": REQUIRED, "unit": "ft_lbf"},
        "averaging_length": {"value": LENGTH, "unit": "ft"},
        "planned": planned,
        "installed": installed,
        "prior": "none",
        "output_units": "us_customary",
    }
    kind = {
        "places": with_places,
        "one_side": from_one_side,
        "two_kinds": ground.two_kinds,
        "least": least,
    }
    return request, truths, readings, kind
