"""The log of `installation-record`: torque and advance of its rows, which of them count, windows.

From the texts of the columns of a log and of the method `log_readings`. What is made of it
is in record.py.
"""

import math

from units import FACTORS, FOOT, base

THREE_FEET = 3.0 * FOOT
# A reading above so many times its neighbours has risen.
RISE = 1.5
# So many readings at least make a rise at the end that has held.
RISE_READINGS = 2
# Two readings that enclose more than one spike lie so far apart at most, or the averaging length.
SPIKE_LENGTH = 1.0
# The first reading stands back to the surface, or to the base of the hole, over so much at most.
FIRST_REACH = 0.65
EDGE = 1e-9


def reaches(there, asked):
    """Whether a figure is at least another one, on its nine printed digits."""
    return asked <= there or (there > 0.0 and float(f"{asked / there:.9g}") <= 1.0)


class Row:
    """A row of the log in base units."""

    def __init__(self, columns, cells):
        self.sent = {
            column["name"]: cell * FACTORS[column["unit"]]
            for column, cell in zip(columns, cells, strict=True)
            if cell is not None
        }
        self.depth = self.sent["depth"]
        self.torque = self.sent.get("torque")
        self.speed = self.sent.get("rotation_speed")
        self.advance = self.sent.get("advance_per_turn")
        self.standing = "no_torque"


class Reading:
    """A torque in fresh ground and the penetration that it stands for, from `top` down."""

    def __init__(self, row, ground):
        self.row, self.ground = row, ground
        self.depth, self.torque = row.depth, row.torque
        self.top = row.depth

    @property
    def length(self):
        return self.depth - self.top


def difference(drive, sent):
    """Pressure that turns the pile: inlet less return line less no load."""
    working = drive.get("working_pressures") or {}
    lost = {name: base(working[name]) for name in ("return_line", "no_load") if name in working}
    lost["return_line"] = sent.get("return_pressure", lost.get("return_line", 0.0))
    return sent["inlet_pressure"] - sum(lost.values())


def motor_torque(drive, sent):
    """Torque of the drive head at the pressures of a row, in its gear."""
    fast = sent.get("gear", 1.0) == 2.0
    volume = base(drive["fast_displacement" if fast else "displacement"])
    turning = difference(drive, sent) * volume * drive.get("gear_ratio", 1.0)
    return turning * drive["mechanical_efficiency_ratio"] / (2.0 * math.pi)


def _rows(request):
    columns = request["log"]["columns"]
    rows = [Row(columns, cells) for cells in request["log"]["rows"]]
    before = None
    for row in rows:
        if "inlet_pressure" in row.sent:
            row.torque = motor_torque(request["drive"], row.sent)
        turns = row.sent.get("turns")
        # turns have an advance where the tip did not go up in them
        if turns and before is not None and row.depth >= before:
            row.advance = (row.depth - before) / turns
        before = row.depth
    return rows


class Log:
    """Rows as they stand, readings that count, windows at their end."""

    def __init__(self, request, largest):
        self.rows = _rows(request)
        self.tip = self.rows[-1].depth
        self.diameters = 3.0 * largest
        self.length = max(THREE_FEET, self.diameters)
        history = request.get("history") or {}
        holes = (history.get(name) for name in ("pre_drilled_depth", "disturbed_depth"))
        self.hole = max([0.0, *(base(depth) for depth in holes if depth)])
        self.fresh = self._fresh()
        self.spikes = self._spikes()
        self.rise = self._rise()
        self.counted = self._counted()

    def _fresh(self):
        """Readings below the greatest depth that any tip or drill reached before them."""
        found, reached = [], self.hole
        for row in self.rows:
            if row.torque is not None:
                row.standing = "counts" if row.depth > reached else "not_fresh"
            if row.standing == "counts":
                found.append(Reading(row, self.hole))
            reached = max(reached, row.depth)
        return found

    def _spikes(self):
        """Numbers of the fresh readings that rose and fell again."""
        readings, found = self.fresh, set()
        far = max(self.length, SPIKE_LENGTH) + EDGE
        for first in range(1, len(readings)):
            before = readings[first - 1]
            for last in range(first, len(readings) - 1):
                if readings[last].torque <= RISE * before.torque:
                    break
                run, behind = range(first, last + 1), readings[last + 1]
                short = first == last or behind.depth - before.depth <= far
                if short and all(readings[n].torque > RISE * behind.torque for n in run):
                    found |= set(run)
        return found

    def _rise(self):
        """A rise at the end that has not held: (number of its first reading, asked, there)."""
        left = [n for n in range(len(self.fresh)) if n not in self.spikes]
        for place in range(1, len(left)):
            before, run = self.fresh[left[place - 1]], left[place:]
            if any(self.fresh[n].torque <= RISE * before.torque for n in run):
                continue
            there = self.fresh[left[-1]].depth - before.depth
            if not reaches(there, self.length):
                return left[place], self.length, there
            if len(run) < RISE_READINGS:
                return left[place], float(RISE_READINGS), float(len(run))
        return None

    def _counted(self):
        """Readings that count; a spike is as if it had not been read."""
        counted = []
        for number, reading in enumerate(self.fresh):
            if number in self.spikes:
                reading.row.standing = "spike"
            elif self.rise and number >= self.rise[0]:
                reading.row.standing = "unconfirmed"
            else:
                if counted:
                    reading.top = counted[-1].depth
                elif reading.depth - reading.ground <= FIRST_REACH + EDGE:
                    reading.top = reading.ground
                counted.append(reading)
        return counted

    @property
    def top(self):
        return self.counted[0].top if self.counted else None

    @property
    def end(self):
        return self.counted[-1].depth if self.counted else None

    @property
    def penetration(self):
        return self.end - self.top if self.counted else 0.0

    @property
    def window_from(self):
        """Upper end of the window over the averaging length, a depth of the tip."""
        return max(self.end - self.length, self.top)

    def window(self):
        """Readings that stand for some of the window, and the last one."""
        last = self.counted[-1]
        return [r for r in self.counted if r is last or r.depth > self.window_from + EDGE]

    def mean(self, low, high):
        """Mean torque by depth between two depths, or None where the readings do not reach."""
        if not self.counted or high > self.end + EDGE or low < self.top - EDGE:
            return None
        total = 0.0
        for reading in self.counted:
            part = min(reading.depth, high) - max(reading.top, low)
            total += reading.torque * max(part, 0.0)
        return total / (high - low)

    def last_mean(self, length):
        """Mean over so much of the end."""
        if not self.counted or not reaches(self.penetration, length):
            return None
        return self.mean(max(self.end - length, self.top), self.end)

    def by_definition(self):
        """Torque by each definition that the log is long enough for."""
        if not self.counted:
            return {}
        long, short = self.last_mean(self.length), self.last_mean(self.diameters)
        found = {
            "lower_of_two_windows": None if long is None else min(long, short),
            "mean_over_3_diameters": short,
            "mean_over_3_ft": self.last_mean(THREE_FEET),
            "last_three_readings": None,
            "least_in_window": None if long is None else min(r.torque for r in self.window()),
            "final_reading": self.counted[-1].torque,
        }
        # a first reading far below the surface stands for nothing
        lasting = [r.torque for r in self.counted if r.length > 0.0]
        if len(lasting) >= 3:
            found["last_three_readings"] = sum(lasting[-3:]) / 3.0
        return {name: torque for name, torque in found.items() if torque is not None}

    def held(self, least):
        """Penetration at the end over which no reading is below a torque."""
        length = 0.0
        for reading in reversed(self.counted):
            if not reaches(reading.torque, least):
                break
            length += reading.length
        return length
