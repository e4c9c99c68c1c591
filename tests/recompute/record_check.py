"""Recomputes `installation-record`: random logs and the examples of the document.

Compares verdict, the codes that decided it, every check, torques, standings, advance, capacity
and refusals; fails too where a rule, a choice or an event is hardly among the requests, and
where moving a figure of an answer by 1e-5 goes unnoticed.
"""

import copy
import json
from collections import Counter
from pathlib import Path

import record_cases
from compare import Comparison
from record_logs import EVENTS
from record_verdict import TAKEN, expected
from selftest import MOVED, paths

FOLDER = Path(__file__).resolve().parents[2] / "openapi" / "examples" / "installation-record"
LEAST_EXAMPLES = 35
LEAST_ANSWERED = 320
MOST_SHOWN = 40
NIL = 1e-12
# Each rule must have passed and failed so often, each choice and event be answered so often.
LEAST_TIMES = 3
LEAST_CHOICES = 6

# What can come of each rule; where it cannot pass or fail it leaves open or is not there.
OUTCOMES = {
    "record_torque": ("pass", "fail", "not_evaluated"),
    "record_least_torque": ("pass", "fail"),
    "record_plateau": ("pass", "fail"),
    "record_rise_held": ("fail",),
    "record_torque_falling": ("pass", "fail"),
    "record_row_spacing": ("pass", "not_evaluated"),
    "record_shaft_torque": ("pass", "fail", "not_evaluated"),
    "record_advance": ("pass", "fail", "not_evaluated"),
    "record_advance_in_window": ("pass", "fail"),
    "record_tip_depth": ("pass", "fail", "not_evaluated"),
    "record_greatest_depth": ("pass", "fail"),
    "record_refusal_short": ("fail",),
    "record_left_deepest": ("fail",),
    "record_obstruction": ("fail",),
    "record_spun_out": ("fail",),
    "record_helix_below_frost": ("pass", "fail", "not_evaluated"),
    "record_helix_below_fill": ("pass", "fail"),
    "record_helix_below_active_zone": ("pass", "fail"),
    "record_tension_depth": ("pass", "fail"),
    "record_tension_top_torque": ("pass", "fail", "not_evaluated"),
    "record_calibration": ("pass", "not_evaluated"),
    "record_inclination": ("pass", "fail", "not_evaluated"),
    "record_position_along": ("pass", "fail", "not_evaluated"),
    "record_position_off_line": ("pass", "fail", "not_evaluated"),
    "record_rotation_speed": ("pass", "warn"),
    "record_reused_pile": ("not_evaluated",),
    "record_ground": ("not_evaluated",),
    "record_retorque": ("pass", "fail"),
}
WARNINGS = (
    "record_spikes_left_out",
    "record_backed_out",
    "record_inspect_after",
    "record_gauge_band",
    "record_tension_factor_in_doubt",
)
LAYOUT_TOLD = ("as_designed", "once_proven", "once_deeper", "by_torque", "nothing")
CHOICES = (
    *(f"verdict {name}" for name in ("accept", "provisional", "reject", "continue")),
    *(f"layout told {name}" for name in LAYOUT_TOLD),
    *(f"standing {name}" for name in ("counts", "spike", "unconfirmed", "not_fresh", "no_torque")),
    *(f"effective {name}" for name in record_cases.DEFINITIONS),
    "effective left out",
    *(f"factor {name}" for name in record_cases.CHOICES),
    *(f"stop {name}" for name in record_cases.STOPS),
    *(f"target {name}" for name in ("stated", "from_demand", "left out")),
    *(f"basis {name}" for name in ("allowable_stress", "limit_states")),
    *(f"load {name}" for name in ("compression", "tension")),
    *(f"ground {name}" for name in ("profile", "report", "no_report", "left out")),
    *(f"column {name}" for name in ("torque", "inlet_pressure", "return_pressure", "gear")),
    *(f"column {name}" for name in ("turns", "advance_per_turn", "rotation_speed", "crowd")),
    *(f"limit {name}" for name in ("shaft_torque", "least_advance_ratio", "least_torque_ratio")),
    *(f"limit {name}" for name in ("row_spacing", "rotation_speed", "left out")),
    *(f"history {name}" for name in ("pre_drilled_depth", "disturbed_depth", "inspected_since")),
    *(f"units {name}" for name in ("si", "us_customary", "None")),
    *(f"warning {name}" for name in WARNINGS),
    *EVENTS,
)
REFUSALS = (
    "log_torque_twice",
    "log_gear_unknown",
    "log_pressure_negative",
    "log_advance_twice",
    "log_no_turns",
    "log_no_torque",
    "log_note_without_row",
    "record_helix_twice",
    "record_field_twice",
    "record_depths_crossed",
    "site_factor_band_reversed",
    "basis_mixed",
    "missing_member",
    "below_minimum",
    "above_maximum",
    "list_too_short",
    "text_length",
)
# Members of an answer that nothing here says anything of.
NOT_RECOMPUTED = {
    "result.label",
    "result.tags",
    "result.ground",
    "result.completeness",
    "result.next_steps",
    "result.next_request",
    "result.relocation.detail",
    "result.relocation.event.stopped_short.why",
    "result.required.source",
    "result.effective.source",
    "result.torque_factor.effective_diameter",
    "result.torque_factor.acceptance_criteria",
    "result.torque_factor.own_reference",
    "result.torque_factor.test_count",
    *(
        f"result.torque_factor.{side}.{member}"
        for side in ("compression", "tension", "tension_reduced")
        for member in ("range", "source", "factor_low", "factor_high")
    ),
    *(f"result.design_basis.{side}.source" for side in ("compression", "tension")),
}


class Strict(Comparison):
    """A comparison that takes no member of an answer that was not expected."""

    # answers that take a row on the upper end of the window for one in it

    def number(self, path, where, got, want):
        """A length that is nil but for the last bit is nil."""
        super().number(path, where, 0.0 if abs(got) < NIL else got, want)

    def _members(self, path, where, got, want):
        super()._members(path, where, got, want)
        for name in (got.keys() if isinstance(got, dict) else set()) - want.keys():
            below = f"{path}.{name}" if path else name
            if below not in NOT_RECOMPUTED:
                self.faults.append(f"{where} {below}: answered {got[name]!r}, not recomputed")


def _comparable(answer):
    """The parts of an answer that are compared, lists of codes sorted."""
    checks = {}
    for check in answer["checks"]:
        members = ("status", "relation", "demand", "capacity", "utilisation_ratio")
        row = {name: check[name] for name in members if name in check}
        if "demand" not in row:
            row.pop("relation")
        assert check["id"] not in checks, f"{check['id']} stands twice"
        checks[check["id"]] = row
    result = dict(answer["result"])
    if "capacity" in result:
        withheld = sorted(result["capacity"]["withheld_for"])
        result["capacity"] = {**result["capacity"], "withheld_for": withheld}
    if "relocation" in result:
        told = result["relocation"]
        result["relocation"] = {**told, "withheld_for": sorted(told["withheld_for"])}
    return {
        "verdict": answer["verdict"],
        "verdict_reasons": sorted(reason["code"] for reason in answer["verdict_reasons"]),
        "result": result,
        "checks": checks,
        "warnings": sorted({w["code"] for w in answer["warnings"]} & set(WARNINGS)),
    }


def _wanted(request, got):
    """The recomputation; the ground is as answered, and the verdict is found with it."""
    taken = {name: got["checks"][name] for name in TAKEN if name in got["checks"]}
    return expected(request, taken)


def _used(request, got):
    """The choices, standings and outcomes of one answered request."""
    found = {f"verdict {got['verdict']}"}
    found |= {f"standing {row['standing']}" for row in got["result"]["rows"]}
    if "relocation" in got["result"]:
        found.add(f"layout told {got['result']['relocation']['counts']}")
    found.add(f"effective {request.get('effective_torque', 'left out')}")
    found |= {f"factor {name}" for name in request.get("torque_factor", {})}
    found.add(f"stop {request.get('stop')}")
    target = request.get("target") or {"left out": {}}
    found |= {f"target {name}" for name in target}
    demand = target.get("from_demand") or {}
    found |= {f"basis {name}" for name in demand.get("design_basis", {})}
    found |= {f"load {name}" for name in demand.get("demand", {})}
    found |= {f"ground {name}" for name in request.get("ground", {"left out": {}})}
    found |= {f"column {column['name']}" for column in request["log"]["columns"]}
    found |= {f"limit {name}" for name in request.get("limits") or {"left out": {}}}
    found |= {f"history {name}" for name in request.get("history", {})}
    found.add(f"units {request.get('output_units')}")
    found |= {f"warning {name}" for name in got["warnings"]}
    found |= {f"{name}: {check['status']}" for name, check in got["checks"].items()}
    return found


def _judge_one(comparison, item, reply, faults):
    """Compares one reply; returns (answer, recomputation), or None where it was refused."""
    where = item["id"]
    errors = reply.get("problem", {}).get("errors", [])
    said = {(error["pointer"], error["code"]) for error in errors}
    if said != faults:
        comparison.faults.append(
            f"{where}: refused for {sorted(said)}, should be for {sorted(faults)}"
        )
    if "problem" in reply or faults:
        return None
    got = _comparable(reply["answer"])
    want = _wanted(item["request"], got)
    comparison.node("", where, got, want)
    return got, want


def _can_fail(compared):
    """Moves each figure that is compared, in the first answer that has it; all must be noticed."""
    seen, faults = set(), []
    for where, got, want in compared:
        untouched = Strict()
        untouched.node("", where, got, want)
        if untouched.faults:
            continue
        for path in paths(want):
            kind = tuple("[]" if isinstance(step, int) else step for step in path)
            if kind in seen or kind[:2] in {("checks", name) for name in TAKEN}:
                continue
            moved = _moved(got, path)
            if moved is None:
                continue
            seen.add(kind)
            comparison = Strict()
            comparison.node("", where, moved, want)
            if not comparison.faults:
                faults.append(f"{where}: moving {path} by 1e-5 was not noticed")
    print(f"self-test: each of {len(seen)} kinds of figures and words, moved by 1e-5, is noticed")
    if len(seen) < 150:
        faults.append(f"self-test tried only {len(seen)} kinds of figures")
    return faults


def _moved(got, path):
    """A copy with one figure moved by 1e-5 or one word changed; None for a 0."""
    moved = copy.deepcopy(got)
    holder = moved
    for step in path[:-1]:
        holder = holder[step]
    value = holder[path[-1]]
    if isinstance(value, bool):
        holder[path[-1]] = not value
    elif isinstance(value, str):
        holder[path[-1]] = value + "_"
    elif isinstance(value, dict):
        if value["value"] == 0:
            return None
        value["value"] *= MOVED
    elif value == 0:
        return None
    else:
        holder[path[-1]] = value * MOVED
    return moved


def _few(used, refused, answered):
    """What is hardly among the requests."""
    for name, outcomes in OUTCOMES.items():
        for outcome in outcomes:
            count = used[f"{name}: {outcome}"]
            if count < LEAST_TIMES:
                yield f"{name} came out as {outcome} only {count} times"
    for name in CHOICES:
        if used[name] < LEAST_CHOICES:
            yield f"only {used[name]} answered with '{name}'"
    for name, count in used.items():
        rule, _, outcome = name.partition(": ")
        if outcome and rule not in TAKEN and outcome not in OUTCOMES.get(rule, ()):
            yield f"{rule} came out as {outcome} {count} times, which nothing here expects"
    if answered < LEAST_ANSWERED:
        yield f"only {answered} answered, at least {LEAST_ANSWERED}"
    for code in REFUSALS:
        if refused[code] < 2:
            yield f"only {refused[code]} refused for {code}"


def judge_random(service):
    """The random requests; returns faults."""
    items, faults, events = record_cases.requests()
    reply = service.post("/v1/installation-record/batch", {"items": items})
    comparison, used, refused, compared = Strict(), Counter(), Counter(), []
    for item, answer, wrong, befell in zip(items, reply["items"], faults, events, strict=True):
        pair = _judge_one(comparison, item, answer, wrong)
        if pair:
            compared.append((item["id"], *pair))
            used.update(_used(item["request"], pair[0]) | befell)
        else:
            refused.update(code for _, code in wrong)
    _report(comparison, used, refused, len(items), len(compared))
    found = comparison.faults[:MOST_SHOWN]
    if len(comparison.faults) > MOST_SHOWN:
        found.append(f"and {len(comparison.faults) - MOST_SHOWN} more differences")
    found += _few(used, refused, len(compared))
    return found + _can_fail(compared)


def _report(comparison, used, refused, asked, answered):
    print(f"installation-record: {asked} requests, {answered} answered, refused for:")
    print("  " + ", ".join(f"{code} {count}" for code, count in sorted(refused.items())))
    print("  " + ", ".join(f"{name}: {used[name]}" for name in CHOICES))
    for name, outcomes in OUTCOMES.items():
        print(f"  {name}: " + ", ".join(f"{used[f'{name}: {o}']} {o}" for o in outcomes))
    largest = max(comparison.largest.items(), key=lambda row: row[1][0], default=("", (0.0, "")))
    count = sum(comparison.counted.values())
    print(f"  {count} figures and words compared, largest difference {largest[1][0]:.1e}", largest)


def judge_examples(service):
    """The examples of the document; returns faults."""
    files = [f for f in sorted(FOLDER.glob("*.json")) if not f.name.endswith(".answer.json")]
    items = [{"id": f.stem, "request": json.loads(f.read_text())} for f in files]
    reply = service.post("/v1/installation-record/batch", {"items": items})
    comparison = Strict()
    for item, answer in zip(items, reply["items"], strict=True):
        _judge_one(comparison, item, answer, set())
    print(f"{len(items)} examples of installation-record, {len(comparison.faults)} differences")
    if len(items) < LEAST_EXAMPLES:
        comparison.faults.append(f"only {len(items)} examples found in {FOLDER}")
    return comparison.faults


def judge_record(service):
    """All of `installation-record`; returns faults."""
    return judge_random(service) + judge_examples(service)
