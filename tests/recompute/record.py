"""The rules of `installation-record`, each a check.

Written from the texts of the request, of the codes and of the methods `log_effective_torque`
and `log_acceptance`. Readings and windows are in record_log.py, torque factors in
record_torque.py, what follows from the checks in record_verdict.py.
"""

from datetime import date

import record_torque
from record_log import EDGE, Log, reaches
from units import FOOT, INCH, base

# Last reading over the mean of the window.
LEAST_LAST = 0.85
# From so much of its limit on the shaft is at it.
AT_LIMIT = 0.95
# Going down less than so much of its pitch in a turn, a pile goes no deeper.
NO_ADVANCE = 0.1
TENSION_DIAMETERS = 12.0


def utilisation(demand, capacity):
    """(ratio or None, whether it passes): nine printed digits decide, the limit passes."""
    if capacity > 0.0:
        ratio = max(demand / capacity, 0.0)
        return ratio, float(f"{ratio:.9g}") <= 1.0
    if demand <= 0.0 and capacity == 0.0:
        return 0.0, True
    return None, demand <= capacity


class Judge:
    """One request, its log and the checks so far."""

    def __init__(self, request):
        self.request = request
        self.limits = request.get("limits") or {}
        self.depths = request.get("depths") or {}
        helices = [(base(h["above_tip"]), base(h["diameter"])) for h in request["pile"]["helices"]]
        self.helices = sorted(helices, reverse=True)
        self.largest = max(diameter for _, diameter in helices)
        self.log = Log(request, self.largest)
        self.top_helix = self.log.tip - self.helices[0][0]
        self.required = record_torque.required(request)
        torques = [row.torque for row in self.log.rows if row.torque is not None]
        self.final, self.greatest = torques[-1], max(torques)
        again = request.get("retorque")
        self.strain = max(self.greatest, base(again["torque"]) if again else 0.0)
        self.checks, self.warnings = {}, set()
        self.effective = self._effective()
        self.advance, self.least_advance = self._advance()

    def limit(self, name, default):
        """A limit as sent, or its default."""
        sent = self.limits.get(name)
        if sent is None:
            return default
        return base(sent) if isinstance(sent, dict) else float(sent)

    def depth(self, name):
        """A depth as sent, or None."""
        sent = self.depths.get(name)
        return None if sent is None else base(sent)

    def _effective(self):
        log = self.log
        found = log.by_definition()
        definition = self.request.get("effective_torque") or "lower_of_two_windows"
        if definition not in found or log.penetration <= 0.0:
            return None
        window = log.window()
        effective = {
            "definition": definition,
            "torque": found[definition],
            "by_definition": [{"definition": k, "torque": v} for k, v in found.items()],
            "window_from": log.window_from,
            "window_to": log.end,
            "least": min(r.torque for r in window),
            "greatest": max(r.torque for r in window),
            "reading_count": len(window),
        }
        accuracy = (self.request.get("indicator") or {}).get("accuracy_ratio")
        if accuracy is not None:
            effective["torque_low"] = found[definition] * (1.0 - accuracy)
            effective["torque_high"] = found[definition] * (1.0 + accuracy)
        if self.required:
            effective["held_length"] = log.held(self.least_required())
        return effective

    def least_required(self):
        """Share of the required torque that no reading in the window may be below."""
        return self.limit("least_torque_ratio", 0.8) * self.required["torque"]

    def _advance(self):
        """Advance at the last row, and the least before it within the window."""
        rows, log = self.log.rows, self.log
        if not log.counted:
            return rows[-1].advance, None
        high = log.window_from
        near = [r.advance for r in rows[:-1] if r.advance is not None and self.below(r, high)]
        return rows[-1].advance, min(near, default=None)

    @staticmethod
    def below(row, depth):
        """Whether a row is below a depth; on it it is not."""
        return row.depth > depth + EDGE

    # one rule after the other

    def judged(self, name, relation, demand, capacity, failed="fail"):
        ratio, passes = utilisation(demand, capacity)
        check = {
            "status": "pass" if passes else failed,
            "relation": relation,
            "demand": float(demand),
            "capacity": float(capacity),
        }
        if ratio is not None:
            check["utilisation_ratio"] = ratio
        self.checks[name] = check

    def at_least(self, name, asked, there, failed="fail"):
        self.judged(name, "at_least", asked, there, failed)

    def at_most(self, name, there, limit, failed="fail"):
        self.judged(name, "at_most", there, limit, failed)

    def unjudged(self, name):
        self.checks[name] = {"status": "not_evaluated"}

    def stopped(self):
        """Whether it cannot be turned deeper as it is, the greatest depth aside."""
        if self.request.get("stop") in ("obstruction", "drive_stalled", "spin_out"):
            return True
        limit = self.limit("shaft_torque", None)
        if limit is not None:
            if not utilisation(self.strain, limit)[1]:
                return True
            if reaches(self.final, AT_LIMIT * limit):
                return True
        pitch = self.pitch()
        if pitch is None or self.advance is None:
            return False
        return not reaches(self.advance, NO_ADVANCE * pitch)

    def pitch(self):
        sent = self.request["pile"].get("helix_pitch")
        return None if sent is None else base(sent)

    def torque_rules(self):
        log = self.log
        limit = self.limit("shaft_torque", None)
        if self.request.get("stop") == "obstruction":
            self.at_most("record_obstruction", 1.0, 0.0)
        if self.request.get("stop") == "spin_out":
            self.at_most("record_spun_out", 1.0, 0.0)
        if limit is None:
            self.unjudged("record_shaft_torque")
        else:
            self.at_most("record_shaft_torque", self.strain, limit)
        if log.rise:
            self.at_least("record_rise_held", *log.rise[1:])
        self.at_least("record_plateau", log.length, log.penetration)
        steady = self.steady()
        if steady:
            near = [r for r in log.counted if self.below(r, log.window_from)]
            spacing = max(r.length for r in near)
            spacing = max(spacing, log.tip - log.fresh[-1].depth)
            limit = self.limit("row_spacing", 2.0 * FOOT)
            self.at_most("record_row_spacing", spacing, limit, "not_evaluated")
        if not self.required or not steady or not self.effective:
            self.unjudged("record_torque")
        else:
            self.at_least("record_torque", self.required["torque"], self.effective["torque"])
        if steady and self.required and self.effective:
            least = min(r.torque for r in log.window())
            self.at_least("record_least_torque", self.least_required(), least)
            mean = log.last_mean(log.length)
            self.at_least("record_torque_falling", LEAST_LAST * mean, log.counted[-1].torque)

    def steady(self):
        """Whether the readings reach over the averaging length."""
        return self.checks["record_plateau"]["status"] == "pass"

    def tension_rules(self):
        if not self.required or not self.required["tension"]:
            return
        self.at_least("record_tension_depth", TENSION_DIAMETERS * self.largest, self.top_helix)
        mean = self.log.mean(self.top_helix - self.log.length, self.top_helix)
        if mean is None:
            self.unjudged("record_tension_top_torque")
        else:
            self.at_least("record_tension_top_torque", self.required["torque"], mean)

    def turning_rules(self):
        pitch = self.pitch()
        if pitch is None or self.advance is None:
            self.unjudged("record_advance")
        least = self.limit("least_advance_ratio", 0.85)
        if pitch is not None:
            if self.advance is not None:
                self.at_least("record_advance", least * pitch, self.advance)
            if self.least_advance is not None:
                self.at_least("record_advance_in_window", least * pitch, self.least_advance)
        speeds = [row.speed for row in self.log.rows if row.speed is not None]
        if speeds:
            limit = self.limit("rotation_speed", 30.0)
            self.at_most("record_rotation_speed", max(speeds), limit, "warn")

    def depth_rules(self):
        tip, log = self.depth("minimum_tip_depth"), self.log
        if tip is None:
            self.unjudged("record_tip_depth")
        elif self.stopped() and not utilisation(tip, log.tip)[1]:
            self.at_least("record_refusal_short", tip, log.tip)
        else:
            self.at_least("record_tip_depth", tip, log.tip)
        deepest = max(row.depth for row in log.rows)
        if not reaches(log.tip, deepest):
            self.at_least("record_left_deepest", deepest, log.tip)
        greatest = self.depth("maximum_tip_depth")
        if greatest is not None:
            self.at_most("record_greatest_depth", log.tip, greatest)
        frost = self.depth("frost_depth")
        if frost is None:
            self.unjudged("record_helix_below_frost")
        else:
            margin = self.depth("frost_margin")
            asked = frost + (0.3 if margin is None else margin)
            self.at_least("record_helix_below_frost", asked, self.top_helix)
        for name, check in (
            ("fill_depth", "record_helix_below_fill"),
            ("active_depth", "record_helix_below_active_zone"),
        ):
            if self.depth(name) is not None:
                self.at_least(check, self.depth(name), self.top_helix)

    def proof_rules(self):
        indicator = self.request.get("indicator") or {}
        days = [indicator.get(name) for name in ("calibrated_on", "driven_on")]
        age = None
        if None not in days:
            calibrated, driven = map(date.fromisoformat, days)
            age = (driven - calibrated).days
        if age is None or age < 0:
            self.unjudged("record_calibration")
        else:
            valid = indicator.get("valid_day_count", 365)
            self.at_most("record_calibration", 24.0 * age, 24.0 * valid, "not_evaluated")
        position = self.request.get("position") or {}
        for name, check, allowed, default in (
            ("along", "record_position_along", "allowed_distance", 3.0 * INCH),
            ("off_line", "record_position_off_line", "allowed_distance", 3.0 * INCH),
            ("inclination", "record_inclination", "allowed_inclination", 1.0),
        ):
            if name not in position:
                self.unjudged(check)
                continue
            limit = base(position[allowed]) if allowed in position else default
            self.at_most(check, base(position[name]), limit)
        history = self.request.get("history") or {}
        used = history.get("extracted_before") or history.get("over_torqued_before")
        if used and not history.get("inspected_since"):
            self.unjudged("record_reused_pile")
        ground = self.request.get("ground") or {"no_report": {}}
        if "no_report" in ground:
            self.unjudged("record_ground")
        if "retorque" in self.request and self.required:
            torque = base(self.request["retorque"]["torque"])
            self.at_least("record_retorque", self.required["torque"], torque)
