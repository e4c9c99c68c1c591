"""Random requests of `installation-record`, the same on every run. What they should give is
not here; their logs are made in record_logs.py.
"""

import copy
from datetime import date, timedelta

from profiles import Draw
from record_logs import EVENTS, Course, draw_drive, draw_log
from record_spoil import spoil
from units import INCH, base, quantity

SEED = 20260605
COUNT = 420
# Share of requests that are made unanswerable on purpose.
SPOILED = 0.18
# Share of requests in which all is sent and little goes wrong.
SOUND = 0.55
# Loads on sound piles, times their own, and of how many requests these are taken.
MORE_LOAD = (1.15, 1.3, 1.45, 1.6, 1.8)
SHORT_FROM = 250

DEFINITIONS = (
    "lower_of_two_windows",
    "mean_over_3_diameters",
    "mean_over_3_ft",
    "last_three_readings",
    "least_in_window",
    "final_reading",
)
CHOICES = (
    "listed_shaft",
    "effective_diameter",
    "livneh_2008",
    "hoyt_clemence_1989",
    "perko_2009",
    "own",
    "site_tests",
)
STOPS = ("target_reached", "obstruction", "drive_stalled", "spin_out", "still_turning")


def _inches(value):
    return quantity(value, "in")


def _shaft(draw, choice):
    """A shaft that the choice of torque factor holds for."""
    if choice == "livneh_2008":
        return {"square": {"side": draw.quantity("size", draw.between(0.0382, 0.0444))}}
    if choice == "hoyt_clemence_1989":
        return draw.pick(
            (
                {"square": {"side": draw.quantity("size", draw.between(0.0382, 0.0507))}},
                {"round": {"outside_diameter": draw.quantity("size", draw.between(0.061, 0.088))}},
                {"round": {"outside_diameter": quantity(89.0, "mm")}},
                {"round": {"outside_diameter": quantity(219.0, "mm")}},
            )
        )
    if choice == "listed_shaft" or draw.chance(0.3):
        shape, size = draw.pick(
            (("square", 1.5), ("square", 1.75), ("round", 2.875), ("round", 3.0), ("round", 3.5))
        )
        name = "side" if shape == "square" else "outside_diameter"
        return {shape: {name: _inches(size)}}
    if draw.chance(0.4):
        side = draw.between(1.55, 2.9) * INCH
        members = {"side": draw.quantity("size", side)}
        if draw.chance(0.4):
            members["diagonal"] = draw.quantity("size", side * draw.between(1.25, 1.4))
        return {"square": members}
    return {"round": {"outside_diameter": draw.quantity("size", draw.between(0.0605, 0.114))}}


def _factor(draw, choice, basis_directions):
    """The choice of a torque factor with its members."""
    if choice == "own":
        members = {
            side: draw.quantity("factor", draw.between(15.0, 40.0))
            for side in ("compression", "tension")
            if side in basis_directions or draw.chance(0.6)
        }
        if not members:
            members["compression"] = draw.quantity("factor", 30.0)
        return {"own": {**members, "reference": "tests of the caller"}}
    if choice == "site_tests":
        members = {}
        for side in ("compression", "tension"):
            if side in basis_directions or draw.chance(0.6) or side == "compression":
                members[side] = {"factor": draw.quantity("factor", draw.between(15.0, 40.0))}
        return {"site_tests": {**members, "test_count": 2, "reference": "tests of the site"}}
    return {choice: {}}


def _basis(draw):
    members = {}
    if draw.chance(0.45):
        if draw.chance(0.5):
            members["proof"] = draw.pick(("analysis", "load_test"))
        if draw.chance(0.4):
            members["compression_resistance_factor"] = round(draw.between(0.3, 0.7), 2)
        if draw.chance(0.4):
            members["tension_resistance_factor"] = round(draw.between(0.2, 0.6), 2)
        return {"limit_states": members}, "factored"
    if draw.chance(0.4):
        members["compression_safety_factor"] = round(draw.between(1.5, 3.0), 2)
    if draw.chance(0.3):
        members["tension_safety_factor"] = round(draw.between(1.5, 4.0), 2)
    elif draw.chance(0.7):
        members["uplift_clause"] = draw.pick(
            ("general", "general_wind_seismic", "helical", "new_york_city")
        )
    if draw.chance(0.4):
        members["proof"] = draw.pick(("analysis", "load_test"))
    if draw.chance(0.15):
        name = draw.pick(("soil_bearing", "load_test", "shaft", "couplings", "helix_plates"))
        members["other_ultimates"] = {name: draw.quantity("force", draw.between(250.0, 900.0))}
    return {"allowable_stress": members}, "allowable"


def _from_demand(draw, torque):
    """Loads of which one needs about the torque, by a torque factor of about 30 per m."""
    basis, level = _basis(draw)
    loads = {}
    side = draw.pick(("compression", "tension", "tension", "both"))
    # about the safety factor of the basis
    about = 30.0 * torque * (0.35 if level == "factored" else 0.42)
    if side in ("compression", "both"):
        loads["compression"] = draw.quantity("force", about)
    if side in ("tension", "both"):
        loads["tension"] = draw.quantity("force", about * draw.between(0.3, 1.0))
    return {"demand": {"level": level, **loads}, "design_basis": basis}


def _target(draw, torque):
    if draw.chance(0.4):
        members = {"torque": draw.quantity("torque", torque)}
        if draw.chance(0.4):
            members["tension"] = draw.chance(0.8)
        return {"stated": members}
    return {"from_demand": _from_demand(draw, torque)}


def _pile(draw):
    helices = []
    above = draw.between(0.05, 0.2)
    for _ in range(draw.weighted(((1, 0.35), (2, 0.4), (3, 0.25)))):
        diameter = draw.between(0.2, 0.42)
        helices.append(
            {
                "diameter": draw.quantity("size", diameter),
                "above_tip": draw.quantity("length", above),
            }
        )
        above += diameter * draw.between(2.0, 3.2)
    if draw.chance(0.3):
        helices.reverse()
    return {"helices": helices}


def _depths(draw, pile, tip, sound):
    """Depths asked for, most of them met."""
    top = tip - max(base(h["above_tip"]) for h in pile["helices"])
    met = 0.9 if sound else 0.6
    depths = {}

    def about(value):
        share = draw.between(0.2, 0.97) if draw.chance(met) else draw.between(1.02, 1.6)
        return max(value, 0.1) * share

    if sound or draw.chance(0.85):
        depths["minimum_tip_depth"] = draw.quantity("length", about(tip))
    if draw.chance(0.5):
        least = base(depths["minimum_tip_depth"]) if depths else 0.0
        greatest = tip * (draw.between(1.02, 2.0) if draw.chance(met) else draw.between(0.7, 0.99))
        depths["maximum_tip_depth"] = draw.quantity("length", max(greatest, least * 1.001))
    if draw.chance(0.04):
        # at the greatest depth to the last digit
        depths["maximum_tip_depth"] = quantity(tip, "m")
        depths.pop("minimum_tip_depth", None)
    if sound or draw.chance(0.85):
        depths["frost_depth"] = draw.quantity("length", min(about(top - 0.35), 4.9))
    if draw.chance(0.2):
        depths["frost_margin"] = draw.quantity("length", draw.between(0.0, 1.0))
    for name in ("fill_depth", "active_depth"):
        if draw.chance(0.35):
            depths[name] = draw.quantity("length", min(about(top), 25.0))
    return depths


def _limits(draw, torque, last, sound):
    limits = {}
    if draw.chance(0.04):
        return limits
    if last and draw.chance(0.15):
        # the last torque is near the limit, on this side of it or on the other
        limits["shaft_torque"] = draw.quantity("torque", last / draw.between(0.92, 1.0))
    elif sound or draw.chance(0.85):
        strong = draw.between(1.2, 3.0) if sound or draw.chance(0.6) else draw.between(0.8, 1.15)
        limits["shaft_torque"] = draw.quantity("torque", torque * strong)
    if draw.chance(0.2):
        limits["least_advance_ratio"] = round(draw.between(0.6, 0.95), 3)
    if draw.chance(0.2):
        limits["least_torque_ratio"] = round(draw.between(0.5, 1.0), 3)
    if draw.chance(0.2):
        limits["row_spacing"] = draw.quantity("length", draw.between(0.25, 1.2))
    if draw.chance(0.2):
        limits["rotation_speed"] = draw.quantity("speed", draw.between(12.0, 40.0))
    return limits


def _indicator(draw, sound):
    driven = date(2026, 1, 1) + timedelta(days=draw.whole(0, 300))
    indicator = {}
    if draw.chance(0.6):
        indicator["accuracy_ratio"] = round(draw.between(0.0, 0.06 if sound else 0.2), 3)
    if sound or draw.chance(0.9):
        indicator["driven_on"] = driven.isoformat()
    if sound or draw.chance(0.9):
        age = draw.whole(0, 330) if sound or draw.chance(0.6) else draw.whole(-30, 700)
        indicator["calibrated_on"] = (driven - timedelta(days=age)).isoformat()
    if draw.chance(0.2):
        indicator["valid_day_count"] = draw.whole(90, 800)
    return indicator


def _position(draw, sound):
    far = 0.07 if sound else 0.12
    position = {}
    for name in ("along", "off_line"):
        if sound or draw.chance(0.85):
            position[name] = draw.quantity("size", draw.between(0.0, far))
    if sound or draw.chance(0.85):
        position["inclination"] = draw.quantity("angle", draw.between(0.0, 0.95 if sound else 2.0))
    if draw.chance(0.2):
        position["allowed_distance"] = draw.quantity("size", draw.between(0.02, 0.15))
    if draw.chance(0.2):
        position["allowed_inclination"] = draw.quantity("angle", draw.between(0.3, 3.0))
    return position


def _history(draw, tip):
    history = {}
    if draw.chance(0.4):
        history["pre_drilled_depth"] = draw.quantity("length", tip * draw.between(0.1, 1.05))
    if draw.chance(0.3):
        history["disturbed_depth"] = draw.quantity("length", tip * draw.between(0.1, 0.9))
    for name in ("extracted_before", "over_torqued_before", "inspected_since"):
        if draw.chance(0.4):
            history[name] = draw.chance(0.7)
    return history


def _profile(draw, tip):
    """Layers down to well below the tip."""
    layers, top, tip = [], 0.0, max(tip, 1.0)
    bottoms = [tip * draw.between(0.1, 0.4), tip * draw.between(0.5, 0.9), tip + 6.0]
    for number, bottom in enumerate(bottoms):
        kind = draw.pick(("clay", "sand", "fill", "organic") if number == 0 else ("clay", "sand"))
        soil = {
            "clay": {"undrained_strength": draw.quantity("stress", draw.between(30.0, 150.0))},
            "sand": {"friction_angle": quantity(round(draw.between(28.0, 38.0), 1), "deg")},
        }.get(kind, {})
        layers.append(
            {
                "label": f"layer {number + 1}",
                "top": quantity(top, "m"),
                "bottom": quantity(bottom, "m"),
                "unit_weight": quantity(18.0, "kN_per_m3"),
                "soil": {kind: soil},
            }
        )
        top = bottom
    return {"profile": {"layers": layers}}


def _ground(draw, tip, sound):
    return draw.weighted(
        (
            (lambda: {"report": {"reference": "report of the site"}}, 0.6),
            (lambda: _profile(draw, tip), 0.25),
            (lambda: {"no_report": {}}, 0.02 if sound else 0.12),
            (lambda: None, 0.02 if sound else 0.12),
        )
    )()


def _events(draw, sound):
    few, many = ((0, 0.5), (1, 0.4), (2, 0.1)), ((0, 0.1), (1, 0.4), (2, 0.5))
    count = draw.weighted(few if sound else many)
    return {draw.pick(EVENTS) for _ in range(count)}


def _request(draw):
    sound, end = draw.chance(SOUND), draw.between(2.0, 12.0)
    events = _events(draw, sound)
    course = Course(draw, end, events)
    pitch = draw.between(0.06, 0.09)
    drive = draw_drive(draw, end) if draw.chance(0.4) else None
    log, how = draw_log(draw, course, pitch, drive)
    share = draw.between(0.5, 0.88) if sound or draw.chance(0.3) else draw.between(0.6, 1.3)
    request = {"pile": _pile(draw), "log": log, "depths": None}
    if drive:
        request["drive"] = drive
    if how != "none" or draw.chance(0.5):
        request["pile"]["helix_pitch"] = draw.quantity("size", pitch)
    if sound or draw.chance(0.9):
        request["target"] = _target(draw, end * share)
    target = request.get("target") or {}
    demand = (target.get("from_demand") or {}).get("demand") or {}
    if demand or draw.chance(0.5):
        choice = draw.pick(CHOICES)
        request["torque_factor"] = _factor(draw, choice, demand)
        if choice not in ("own", "site_tests") or draw.chance(0.5):
            request["pile"]["shaft"] = _shaft(draw, choice)
    if draw.chance(0.7):
        request["effective_torque"] = draw.pick(DEFINITIONS)
    tip = course.depth[-1]
    request["depths"] = _depths(draw, request["pile"], tip, sound)
    request["limits"] = _limits(draw, end, course.torque[-1], sound)
    if draw.chance(0.1 if sound else 0.3):
        request["history"] = _history(draw, tip)
    if draw.chance(0.15 if sound else 0.5):
        request["stop"] = draw.pick(STOPS)
    if draw.chance(0.15):
        request["retorque"] = {
            "waited": draw.quantity("time", draw.between(2.0, 200.0)),
            "torque": draw.quantity("torque", end * share * draw.between(0.7, 1.5)),
        }
    if sound or draw.chance(0.85):
        request["indicator"] = _indicator(draw, sound)
    if sound or draw.chance(0.85):
        request["position"] = _position(draw, sound)
    ground = _ground(draw, tip, sound)
    if ground:
        request["ground"] = ground
    units = draw.pick((None, "si", "us_customary"))
    if units:
        request["output_units"] = units
    if draw.chance(0.5):
        request["label"] = f"pile {draw.whole(1, 99)}"
    faults = spoil(draw, request) if draw.chance(SPOILED) else set()
    return request, faults, events


def _short(request, times):
    """The same pile with so many times the load, where it cannot go deeper."""
    short = copy.deepcopy(request)
    names = [column["name"] for column in request["log"]["columns"]]
    at = names.index("depth")
    unit = request["log"]["columns"][at]["unit"]
    # at the greatest depth allowed, which is deep enough
    for limit in ("minimum_tip_depth", "maximum_tip_depth"):
        short["depths"][limit] = quantity(request["log"]["rows"][-1][at], unit)
    demand = short["target"]["from_demand"]["demand"]
    for side in ("compression", "tension"):
        if side in demand:
            demand[side]["value"] *= times
    short["relocation"] = {"pile": "A1"}
    return short


def _torques_short(drawn):
    """Piles whose torque is short and little else: sound ones with more load."""
    for request, faults, events in drawn:
        target = request.get("target") or {}
        quiet = not faults and "stop" not in request and "history" not in request
        if quiet and "from_demand" in target and "ground" in request:
            for times in MORE_LOAD:
                yield _short(request, times), set(), events


def requests():
    """All of them: (items of a batch, the faults each must be refused for, what befell each)."""
    draw = Draw(SEED)
    drawn = [_request(draw) for _ in range(COUNT)]
    # every second one asks what the layout is told of it
    for request, _, _ in drawn[::2]:
        request["relocation"] = {"pile": "A1"}
    drawn += _torques_short(drawn[:SHORT_FROM])
    items = [{"id": f"p{n:03}", "request": row[0]} for n, row in enumerate(drawn, start=1)]
    return items, [row[1] for row in drawn], [row[2] for row in drawn]
