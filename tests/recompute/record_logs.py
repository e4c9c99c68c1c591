"""Random installation logs of `installation-record`, the same on every run.

A log is made in base units: a trend of torque with what may befall it, then advance, speed and
pressures, and at the end a table in units drawn for each column.
"""

import math

from units import FACTORS, FOOT, base

# What may befall a log; each must be among the random ones.
EVENTS = (
    "stone",
    "two stones",
    "stone of about a metre",
    "rise at the end",
    "one reading at the end",
    "late rise that holds",
    "falling end",
    "weak row in the window",
    "missing rows",
    "rows without torque",
    "no torque at the end",
    "backed out",
    "backed out at the end",
    "turning on the spot",
    "spinning at the end",
    "crawling at the end",
    "slow advance",
    "short log",
)

MOST_PRESSURE = 95000.0


def _depths(draw, short):
    """Depths of the tip in m, going down."""
    step = draw.weighted(((FOOT, 0.35), (0.5, 0.2), (0.25, 0.15), (0.0, 0.3)))
    count = draw.whole(2, 5) if short else draw.whole(9, 30)
    depths, depth = [], 0.0 if draw.chance(0.7) else draw.between(0.0, 0.9)
    for _ in range(count):
        depth += step or draw.between(0.15, 0.6)
        depths.append(depth)
    return depths


def _trend(draw, depths, end):
    """Torque over depth, about steady in the last part."""
    steady = depths[-1] - draw.between(1.0, 3.0)
    start = end * draw.between(0.1, 0.5)
    found = []
    for depth in depths:
        share = min(max(depth / max(steady, 0.3), 0.0), 1.0)
        found.append((start + (end - start) * share) * draw.between(0.93, 1.07))
    return found


class Course:
    """Rows of a log while it is made: depth, torque, advance over pitch."""

    def __init__(self, draw, end, events):
        self.draw, self.events = draw, events
        self.depth = _depths(draw, "short log" in events)
        self.torque = _trend(draw, self.depth, end)
        self.ratio = [draw.between(0.86, 1.0) for _ in self.depth]
        for event in EVENTS:
            if event in events:
                getattr(self, "_" + event.replace(" ", "_"), lambda: None)()

    def _insert(self, at, rows):
        self.depth[at:at] = [depth for depth, _ in rows]
        self.torque[at:at] = [torque for _, torque in rows]
        self.ratio[at:at] = [self.draw.between(0.5, 1.0) for _ in rows]

    def _place(self, room=2):
        """A row somewhere, more often near the end."""
        last = len(self.depth) - 1 - room
        low = max(1, last - 6) if self.draw.chance(0.6) else 1
        return self.draw.whole(min(low, max(last, 1)), max(last, 1))

    def _raise(self, first, count):
        for row in range(first, min(first + count, len(self.torque))):
            self.torque[row] *= self.draw.between(1.5, 3.0)

    def _stone(self):
        self._raise(self._place(), 1)

    def _two_stones(self):
        self._raise(self._place(3), self.draw.whole(2, 5))
        self._raise(self._place(), 1)

    def _shift(self, first, more):
        self.depth[first:] = [depth + more for depth in self.depth[first:]]

    def _stone_of_about_a_metre(self):
        """Two risen rows between two others so far apart that it just is one stone, or is none."""
        first = self._place(3)
        if first + 2 < len(self.depth):
            self.torque[first : first + 2] = [self.torque[first] * f for f in (2.2, 2.4)]
            apart = self.draw.between(0.85, 1.1)
            start = self.depth[first - 1]
            self.depth[first : first + 2] = [start + apart * share for share in (0.3, 0.6)]
            self._shift(first + 2, start + apart - self.depth[first + 2])

    def _one_reading_at_the_end(self):
        self._shift(len(self.depth) - 1, self.draw.between(0.5, 1.5))
        self.torque[-1] *= self.draw.between(1.6, 2.2)

    def _rise_at_the_end(self):
        count = self.draw.whole(1, 4)
        self._raise(max(len(self.depth) - count, 0), count)

    def _late_rise_that_holds(self):
        count = self.draw.whole(4, 9)
        self._raise(max(len(self.depth) - count, 0), count)

    def _falling_end(self):
        for row in range(max(len(self.depth) - self.draw.whole(1, 3), 0), len(self.depth)):
            self.torque[row] *= self.draw.between(0.5, 0.92)

    def _weak_row_in_the_window(self):
        self.torque[max(len(self.depth) - self.draw.whole(1, 4), 0)] *= self.draw.between(0.5, 0.8)

    def _missing_rows(self):
        for _ in range(self.draw.whole(1, 3)):
            if len(self.depth) > 4:
                row = self._place(1)
                del self.depth[row], self.torque[row], self.ratio[row]

    def _rows_without_torque(self):
        for _ in range(self.draw.whole(1, 3)):
            self.torque[self._place(1)] = None

    def _no_torque_at_the_end(self):
        self.torque[-1] = None

    def _up_and_down(self, at, rise, again):
        """Rows from the one before `at` up by `rise`, and down again below it."""
        start = self.depth[at - 1]
        up = [start - rise * share for share in (0.5, 1.0)]
        down = [start - rise * share for share in ((0.6, 0.2, 0.0) if again else ())]
        self._insert(at, [(d, self.draw.between(0.3, 8.0)) for d in (*up, *down) if d >= 0.0])

    def _backed_out(self):
        at = self._place(1)
        self._up_and_down(at, min(self.draw.between(0.2, 2.0), self.depth[at - 1]), True)

    def _backed_out_at_the_end(self):
        rise = min(self.draw.between(0.1, 1.0), self.depth[-1])
        self._up_and_down(len(self.depth), rise, False)

    def _turning_on_the_spot(self):
        at = self._place(1)
        self._insert(at, [(self.depth[at - 1], self.draw.between(0.5, 9.0))])

    def _spinning_at_the_end(self):
        for row in range(max(len(self.depth) - self.draw.whole(1, 3), 0), len(self.depth)):
            self.ratio[row] = self.draw.between(0.01, 0.4)

    def _crawling_at_the_end(self):
        self.ratio[-1] = self.draw.between(0.07, 0.13)

    def _slow_advance(self):
        self.ratio[max(len(self.depth) - self.draw.whole(1, 6), 0)] = self.draw.between(0.6, 0.84)


def draw_drive(draw, end):
    """A drive head whose pressure at the torque of the end is a usual one."""
    included = draw.chance(0.4)
    gear = round(draw.between(2.0, 40.0), 1) if draw.chance(0.9) else 1.0
    total = 2.0 * math.pi * end / draw.between(6000.0, 14000.0)
    drive = {
        "displacement": draw.quantity("displacement", total / (1.0 if included else gear)),
        "mechanical_efficiency_ratio": round(draw.between(0.8, 1.0), 3),
    }
    if included:
        drive["displacement_includes_gear"] = True
    elif gear > 1.0:
        drive["gear_ratio"] = gear
    if draw.chance(0.5):
        small = base(drive["displacement"]) * draw.between(0.5, 0.85)
        drive["fast_displacement"] = draw.quantity("displacement", small)
    if draw.chance(0.6):
        working = {"inlet": draw.quantity("pressure", 20000.0)}
        for name, most in (("return_line", 1500.0), ("no_load", 1200.0)):
            if draw.chance(0.6):
                working[name] = draw.quantity("pressure", draw.between(100.0, most))
        drive["working_pressures"] = working
    return drive


def _pressures(draw, drive, torque):
    """Cells of a row whose torque was read as pressures."""
    if torque is None:
        return {}
    cells, volume = {}, base(drive["displacement"])
    if "fast_displacement" in drive and draw.chance(0.5):
        cells["gear"] = float(draw.pick((1, 2)))
        if cells["gear"] == 2.0:
            volume = base(drive["fast_displacement"])
    working = drive.get("working_pressures") or {}
    lost = {name: base(working[name]) for name in ("return_line", "no_load") if name in working}
    if draw.chance(0.4):
        lost["return_line"] = cells["return_pressure"] = draw.between(50.0, 900.0)
    turned = volume * drive.get("gear_ratio", 1.0) * drive["mechanical_efficiency_ratio"]
    inlet = 2.0 * math.pi * torque / turned + sum(lost.values())
    # more than any line bears was read on another indicator
    return {**cells, "inlet_pressure": inlet} if inlet < MOST_PRESSURE else {"torque": torque}


KINDS = {
    "depth": "length",
    "torque": "torque",
    "inlet_pressure": "pressure",
    "return_pressure": "pressure",
    "gear": "pure",
    "turns": "pure",
    "advance_per_turn": "size",
    "rotation_speed": "speed",
    "crowd": "force",
}


def _way(draw, course, row, pitch, how):
    """Cells of a row that say how far the pile went in a turn."""
    if how == "none" or (how == "some" and draw.chance(0.4)):
        return {}
    advance = course.ratio[row] * pitch
    if how == "advance":
        return {} if draw.chance(0.03) else {"advance_per_turn": advance}
    gone = course.depth[row] - (course.depth[row - 1] if row else 0.0)
    if gone > 0.0:
        return {"turns": gone / advance}
    return {"turns": float(draw.whole(1, 4))} if draw.chance(0.7) else {}


def draw_log(draw, course, pitch, drive):
    """The table of a log, and by what its torque and its advance were read."""
    how = draw.weighted((("turns", 0.42), ("advance", 0.4), ("some", 0.1), ("none", 0.08)))
    speed, crowd = draw.chance(0.5), draw.chance(0.2)
    fast = draw.chance(0.2)
    rows = []
    for number, depth in enumerate(course.depth):
        torque, cells = course.torque[number], {"depth": depth}
        if drive and not draw.chance(0.05):
            cells |= _pressures(draw, drive, torque)
        elif torque is not None:
            cells["torque"] = torque
        cells |= _way(draw, course, number, pitch, how)
        if speed and draw.chance(0.95):
            cells["rotation_speed"] = draw.between(8.0, 45.0 if fast else 29.0)
        if crowd:
            cells["crowd"] = draw.between(1.0, 40.0)
        rows.append(cells)
    names = [name for name in KINDS if any(name in cells for cells in rows)]
    units = {name: draw.quantity(KINDS[name], 1.0)["unit"] for name in names}
    table = [
        [
            float(f"{cells[name] / FACTORS[units[name]]:.7g}") if name in cells else None
            for name in names
        ]
        for cells in rows
    ]
    columns = [{"name": name, "unit": units[name]} for name in names]
    return {"columns": columns, "rows": table}, how
