"""Faults put into requests of `installation-record`, each with where and for what it is refused.

The faults of a log are pointed at by row and column; those drawn together are all to be named.
"""

from units import FACTORS, quantity


def _column(log, name, unit):
    """Number of a column, made where it is not there."""
    for number, column in enumerate(log["columns"]):
        if column["name"] == name:
            return number
    log["columns"].append({"name": name, "unit": unit})
    for row in log["rows"]:
        row.append(None)
    return len(log["columns"]) - 1


def _at(row, column):
    return f"/log/rows/{row}/{column}"


def _row(draw, request):
    """A row that no other fault was put into."""
    spoiled = request.setdefault("_rows", set())
    free = [n for n in range(len(request["log"]["rows"])) if n not in spoiled]
    row = draw.pick(free)
    spoiled.add(row)
    return row


def _torque_twice(draw, request):
    log, row = request["log"], _row(draw, request)
    torque, inlet = _column(log, "torque", "kN_m"), _column(log, "inlet_pressure", "MPa")
    log["rows"][row][torque], log["rows"][row][inlet] = 1.5, 20.0
    request.setdefault("drive", {"displacement": quantity(900, "cm3_per_rev")}).setdefault(
        "mechanical_efficiency_ratio", 0.9
    )
    return {(_at(row, inlet), "log_torque_twice")}


def _return_alone(draw, request):
    log, row = request["log"], _row(draw, request)
    inlet, back = _column(log, "inlet_pressure", "MPa"), _column(log, "return_pressure", "MPa")
    gear = _column(log, "gear", "1")
    log["rows"][row][inlet], log["rows"][row][back], log["rows"][row][gear] = None, 1.0, None
    return {(_at(row, back), "log_inlet_missing")}


def _gear_unknown(draw, request):
    log, row = request["log"], _row(draw, request)
    inlet, gear = _column(log, "inlet_pressure", "MPa"), _column(log, "gear", "1")
    torque = _column(log, "torque", "kN_m")
    log["rows"][row][inlet], log["rows"][row][gear], log["rows"][row][torque] = 20.0, 1.5, None
    request.setdefault("drive", {"displacement": quantity(900, "cm3_per_rev")}).setdefault(
        "mechanical_efficiency_ratio", 0.9
    )
    return {(_at(row, gear), "log_gear_unknown")}


def _pressure_negative(draw, request):
    log, row = request["log"], _row(draw, request)
    names = ("inlet_pressure", "return_pressure", "gear", "torque")
    units = ("MPa", "MPa", "1", "kN_m")
    inlet, back, gear, torque = (_column(log, *pair) for pair in zip(names, units))
    log["rows"][row][gear] = log["rows"][row][torque] = None
    # 1 of any unit of pressure, and more in the return line than in any of them
    log["rows"][row][inlet] = 1.0
    log["rows"][row][back] = round(90000.0 / FACTORS[log["columns"][back]["unit"]], 3)
    request.setdefault("drive", {"displacement": quantity(900, "cm3_per_rev")}).setdefault(
        "mechanical_efficiency_ratio", 0.9
    )
    return {(_at(row, inlet), "log_pressure_negative")}


def _advance_twice(draw, request):
    log, row = request["log"], _row(draw, request)
    turns, advance = _column(log, "turns", "1"), _column(log, "advance_per_turn", "mm")
    log["rows"][row][turns], log["rows"][row][advance] = 5.0, 0.02
    return {(_at(row, advance), "log_advance_twice")}


def _no_turns(draw, request):
    log = request["log"]
    row = _row(draw, request)
    depth, turns = _column(log, "depth", "m"), _column(log, "turns", "1")
    advance = _column(log, "advance_per_turn", "mm")
    if row == 0 or log["rows"][row][depth] <= log["rows"][row - 1][depth]:
        return set()
    log["rows"][row][turns], log["rows"][row][advance] = 0.0, None
    return {(_at(row, turns), "log_no_turns")}


def _note_without_row(draw, request):
    count = len(request["log"]["rows"])
    request["notes"] = [{"row": 0, "text": "clay on the tip"}, {"row": count, "text": "rain"}]
    return {("/notes/1/row", "log_note_without_row")}


def _helix_twice(draw, request):
    helices = request["pile"]["helices"]
    helices.append(dict(helices[0]))
    return {(f"/pile/helices/{len(helices) - 1}/above_tip", "record_helix_twice")}


def _depths_crossed(draw, request):
    request["depths"] |= {
        "minimum_tip_depth": quantity(4.0, "m"),
        "maximum_tip_depth": quantity(round(draw.between(1.0, 3.9), 2), "m"),
    }
    return {("/depths/maximum_tip_depth", "record_depths_crossed")}


def _field_twice(draw, request):
    fields = ["equipment", "pile_dimensions", "equipment"]
    request["record_profile"] = {"own": {"fields": fields, "reference": "list of the caller"}}
    return {("/record_profile/own/fields/2", "record_field_twice")}


def _drive_missing(draw, request):
    names = {column["name"] for column in request["log"]["columns"]}
    if "inlet_pressure" not in names:
        return set()
    del request["drive"]
    return {("", "missing_member")}


def _factor_missing(draw, request):
    if "from_demand" not in request.get("target", {}):
        return set()
    del request["torque_factor"]
    return {("", "missing_member")}


def _basis_mixed(draw, request):
    target = request.get("target", {}).get("from_demand")
    if not target:
        return set()
    level = target["demand"]["level"]
    target["demand"]["level"] = "factored" if level == "allowable" else "allowable"
    return {("/target/from_demand/demand/level", "basis_mixed")}


def _no_torque(draw, request):
    log = request["log"]
    for number, column in enumerate(log["columns"]):
        if column["name"] in ("torque", "inlet_pressure", "return_pressure", "gear"):
            for row in log["rows"]:
                row[number] = None
    return {("/log", "log_no_torque")}


def _site_band_reversed(draw, request):
    band = {"factor": quantity(30, "per_m"), "factor_low": quantity(31, "per_m")}
    sides = {"compression": band, "tension": {"factor": quantity(28, "per_m")}}
    request["torque_factor"] = {"site_tests": {**sides, "test_count": 1, "reference": "a test"}}
    return {("/torque_factor/site_tests/compression/factor_low", "site_factor_band_reversed")}


# Found before any of the others is looked for; each stands alone.


def _below_minimum(draw, request):
    log = request["log"]
    row, depth = draw.whole(0, len(log["rows"]) - 1), _column(log, "depth", "m")
    log["rows"][row][depth] = -0.1
    return {(_at(row, depth), "below_minimum")}


def _pitch_above_maximum(draw, request):
    request["pile"]["helix_pitch"] = quantity(0.6, "m")
    return {("/pile/helix_pitch", "above_maximum")}


def _no_helix(draw, request):
    request["pile"]["helices"] = []
    return {("/pile/helices", "list_too_short")}


def _row_too_short(draw, request):
    rows = request["log"]["rows"]
    row = draw.whole(0, len(rows) - 1)
    rows[row].pop()
    return {(f"/log/rows/{row}", "list_too_short")}


def _no_date(draw, request):
    request["indicator"] = {"calibrated_on": "2026-02-30"}
    return {("/indicator/calibrated_on", "text_length")}


ROWS = (
    _torque_twice,
    _return_alone,
    _gear_unknown,
    _pressure_negative,
    _advance_twice,
    _no_turns,
)
OTHERS = (_note_without_row, _helix_twice, _depths_crossed, _field_twice)
SINGLE = (_drive_missing, _factor_missing, _basis_mixed, _no_torque, _site_band_reversed)
EARLIER = (_below_minimum, _pitch_above_maximum, _no_helix, _row_too_short, _no_date)


def spoil(draw, request):
    """Puts faults in; returns their pointers and codes."""
    kind = draw.weighted((("rows", 0.4), ("single", 0.35), ("earlier", 0.25)))
    if kind == "earlier":
        return draw.pick(EARLIER)(draw, request)
    found = set()
    while kind == "single" and not found:
        found = draw.pick(SINGLE)(draw, request)
    if kind == "rows":
        for _ in range(min(draw.whole(1, 3), len(request["log"]["rows"]) // 2)):
            found |= draw.pick(ROWS)(draw, request)
    for fault in OTHERS:
        if draw.chance(0.25):
            found |= fault(draw, request)
    request.pop("_rows", None)
    return found
