"""What follows from the rules of `installation-record`: warnings, verdict, capacity, the answer.

From the texts of the method `log_acceptance`, of the indicator and of the answer.
"""

import record_torque
from record import TENSION_DIAMETERS, Judge, utilisation
from record_log import reaches

# Failures that driving deeper can mend.
DEEPER = {
    "record_torque",
    "record_least_torque",
    "record_plateau",
    "record_rise_held",
    "record_torque_falling",
    "record_advance",
    "record_advance_in_window",
    "record_tip_depth",
    "record_left_deepest",
    "record_helix_below_frost",
    "record_helix_below_fill",
    "record_helix_below_active_zone",
    "record_tension_depth",
    "record_tension_top_torque",
    "record_helix_ground",
    "record_retorque",
}
# Failures, and proofs that are missing, for which a torque may not be turned into capacity.
WITHHELD = {
    "record_obstruction",
    "record_spun_out",
    "record_left_deepest",
    "record_ground_capacity",
    "record_shaft_torque",
    "record_rise_held",
    "record_plateau",
    "record_least_torque",
    "record_advance",
    "record_advance_in_window",
    "record_refusal_short",
    "record_helix_below_fill",
    "record_tension_depth",
    "record_helix_ground",
    "record_calibration",
}
# Of these also where they could not be judged.
UNPROVEN_WITHHOLDS = {"record_advance", "record_calibration", "record_ground_capacity"}
# Failures that the capacity by torque says already.
SHORT = {"record_torque", "record_tension_top_torque"}
# What a layout may count on where the pile is not rejected.
COUNTS = {
    "accept": "as_designed",
    "provisional": "once_proven",
    "not_asked": "once_proven",
    "continue": "once_deeper",
}
# Rules that are looked up in the answer and not recomputed.
TAKEN = (
    "record_helix_ground",
    "record_torque_explained",
    "record_ground_capacity",
    "torque_other_ultimates",
    "record_complete",
)


def _turns(judge, name, there, limit, at_least):
    """Whether a rule comes out otherwise within the accuracy of the indicator."""
    accuracy = (judge.request.get("indicator") or {}).get("accuracy_ratio")
    if accuracy is None or judge.checks.get(name, {}).get("status") not in ("pass", "fail"):
        return False
    ends = [there * (1.0 - accuracy), there * (1.0 + accuracy)]
    passes = {utilisation(*((limit, t) if at_least else (t, limit)))[1] for t in ends}
    return len(passes) == 2


def warn(judge):
    """Warnings that are recomputed."""
    log = judge.log
    if any(row.standing == "spike" for row in log.rows):
        judge.warnings.add("record_spikes_left_out")
    back = any(b.depth < a.depth for a, b in zip(log.rows, log.rows[1:]))
    over = judge.checks["record_shaft_torque"]["status"] == "fail"
    if back:
        judge.warnings.add("record_backed_out")
    if back or over:
        judge.warnings.add("record_inspect_after")
    doubts = []
    torque = judge.effective["torque"] if judge.effective else None
    asked = judge.required["torque"] if judge.required else None
    if _turns(judge, "record_torque", torque, asked, True):
        doubts.append("record_gauge_band")
    for name in ("record_least_torque", "record_tension_top_torque", "record_retorque"):
        check = judge.checks.get(name, {})
        if _turns(judge, name, check.get("capacity"), check.get("demand"), True):
            doubts.append("record_gauge_band")
    limit = judge.limit("shaft_torque", None)
    if _turns(judge, "record_shaft_torque", judge.strain, limit, False):
        doubts.append("record_gauge_band")
    reduced = (judge.required or {}).get("by_reduced_factor")
    if reduced is not None and judge.checks["record_torque"]["status"] == "pass":
        if not reaches(torque, reduced):
            doubts.append("record_tension_factor_in_doubt")
    judge.warnings |= set(doubts)
    return doubts


def verdict(judge, doubts):
    """(verdict, codes that decided it)."""
    failed = [name for name, check in judge.checks.items() if check["status"] == "fail"]
    if failed:
        greatest = judge.depth("maximum_tip_depth")
        bottom = greatest is not None and reaches(judge.log.tip, greatest)
        deeper = set(failed) <= DEEPER and not judge.stopped() and not bottom
        return "continue" if deeper else "reject", failed
    open_ = [n for n, check in judge.checks.items() if check["status"] == "not_evaluated"]
    if open_ or doubts:
        return "provisional", open_ + doubts
    return "accept", []


def _figures(judge, torque):
    """Capacity of a torque; none in tension where the top helix is too shallow for it."""
    found = record_torque.capacity(judge.request, torque)
    asked = TENSION_DIAMETERS * judge.largest
    if utilisation(asked, max(judge.top_helix, 0.0))[1]:
        return found
    return {name: value for name, value in found.items() if not name.startswith("tension_")}


def capacity(judge):
    """Capacity that the torques stand for, and what stands against using it."""
    if not judge.request.get("torque_factor"):
        return None
    against = {
        name
        for name, check in judge.checks.items()
        if name in WITHHELD
        and (
            check["status"] == "fail"
            or (name in UNPROVEN_WITHHOLDS and check["status"] == "not_evaluated")
        )
    }
    found = {"indicative_only": bool(against), "withheld_for": sorted(against)}
    if judge.effective:
        torque = judge.effective["torque"]
        found["by_effective_torque"] = _figures(judge, torque)
    found["by_final_torque"] = _figures(judge, judge.final)
    return found


def relocation(judge, outcome, doubts, carries):
    """What the layout is told of the pile, by the text of the method `record_onward`."""
    asked = judge.request.get("relocation")
    if asked is None:
        return None
    pile = asked.get("pile") or judge.request["label"]
    if outcome != "reject":
        return {"pile": pile, "counts": COUNTS[outcome], "withheld_for": []}
    status = {name: check["status"] for name, check in judge.checks.items()}
    withheld = {n for n, s in status.items() if s == "fail"} - SHORT
    withheld |= {n for n, s in status.items() if s == "not_evaluated"}
    withheld |= set(doubts) - {"record_gauge_band"}
    withheld |= set((carries or {}).get("withheld_for", ()))
    by_torque = (carries or {}).get("by_effective_torque", {})
    event = {"pile": pile}
    if judge.log.tip >= 0.0:
        event["depth"] = judge.log.tip
    if not withheld and "compression_design" in by_torque:
        rules = ("record_tension_depth", "record_tension_top_torque")
        holds = all(status.get(name) == "pass" for name in rules)
        event["residual"] = {
            "compression": by_torque["compression_design"],
            "tension": by_torque.get("tension_design", 0.0) if holds else 0.0,
        }
    return {
        "pile": pile,
        "counts": "by_torque" if "residual" in event else "nothing",
        "withheld_for": sorted(withheld),
        "event": {"stopped_short": event},
    }


def _row(row, pitch):
    found = {"depth": row.depth, "standing": row.standing}
    if row.torque is not None:
        found["torque"] = row.torque
    if row.advance is not None and pitch is not None:
        found["advance_ratio"] = row.advance / pitch
    if row.speed is not None:
        found["rotation_speed"] = row.speed
    return found


def expected(request, taken):
    """What must be answered; `taken` are the checks of the answer that are not recomputed."""
    judge = Judge(request)
    for rules in ("torque", "tension", "turning", "depth", "proof"):
        getattr(judge, f"{rules}_rules")()
    judge.checks.update(taken)
    doubts = warn(judge)
    outcome, reasons = verdict(judge, doubts)
    pitch = judge.pitch()
    carries = capacity(judge)
    result = {
        "tip_depth": judge.log.tip,
        "helices": [
            {"diameter": diameter, "depth": judge.log.tip - above}
            for above, diameter in judge.helices
        ],
        "required": judge.required,
        "effective": judge.effective,
        "final_torque": judge.final,
        "greatest_torque": judge.greatest,
        "capacity": carries,
        "relocation": relocation(judge, outcome, doubts, carries),
        "rows": [_row(row, pitch) for row in judge.log.rows],
    }
    known = record_torque.factors(request)
    if known:
        names = {"reduced": "tension_reduced"}
        result["torque_factor"] = {
            names.get(side, side): {"factor": factor} for side, factor in known.items()
        }
    basis, used = record_torque.in_force(request)
    if basis:
        result["design_basis"] = record_torque.basis_found(basis, used)
    if judge.advance is not None and pitch is not None:
        result["advance"] = {
            "at_final_torque": judge.advance,
            "final_ratio": judge.advance / pitch,
        }
        if judge.least_advance is not None:
            result["advance"]["least_ratio_in_window"] = judge.least_advance / pitch
    return {
        "verdict": outcome,
        "verdict_reasons": sorted(reasons),
        "result": {name: value for name, value in result.items() if value is not None},
        "checks": judge.checks,
        "warnings": sorted(judge.warnings),
    }
