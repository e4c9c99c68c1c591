"""Capacities over depth: every point of a curve against the recomputation and a one-depth answer.

The pile is moved as a whole, its helices as far apart as sent.
"""

from compare import Comparison
from expected import directions, expected
from pile import Pile
from refusals import hazard_faults, predicted
from units import FACTORS, base, quantity

CURVES = 40
DEPTHS = 7
# Depths at which hazardous ground is looked for between the ends of a curve.
LOOKED_AT = 400
# Columns of a curve with the members of a one-depth answer that they must equal.
COLUMNS = (
    ("ultimate", ("ultimate",)),
    ("individual", ("individual_bearing", "total")),
    ("cylinder", ("cylindrical_shear", "total")),
    ("punching", ("ultimate_by_punching",)),
    ("capacity", ("design", "capacity")),
)


def _moved(request, step):
    """The request with its helices deeper by a step."""
    helices = [
        {**plate, "depth": quantity(base(plate["depth"]) + step, "m")}
        for plate in request["pile"]["helices"]
    ]
    return {**request, "pile": {**request["pile"], "helices": helices}}


def _range(request):
    """(first, last) step of a curve within which the pile can be calculated, or None."""
    depths = [base(plate["depth"]) for plate in request["pile"]["helices"]]
    up = 0.11 - min(depths)
    for share in (1.0, 0.7, 0.5, 0.3, 0.1):
        down = share * 3.0
        if not predicted(_moved(request, down), directions(request)):
            return up, down
    return None


def _curve(request):
    """(request of the curve, its one-depth requests), or None."""
    found = _range(request)
    if not found:
        return None
    lowest = max(base(plate["depth"]) for plate in request["pile"]["helices"])
    steps = [found[0] + (found[1] - found[0]) * n / (DEPTHS - 1) for n in range(DEPTHS)]
    asked = {
        "from": quantity(lowest + steps[0], "m"),
        "to": quantity(lowest + steps[-1], "m"),
        "depth_count": DEPTHS,
        "points": True,
    }
    return {**request, "depth_curve": asked}, [_moved(request, step) for step in steps]


def _meets_hazard(curve):
    """Whether the pile meets hazardous ground anywhere in the range of a curve."""
    if not any("hazards" in layer for layer in curve["soil"]["layers"]):
        return False
    lowest = max(base(plate["depth"]) for plate in curve["pile"]["helices"])
    first, last = (base(curve["depth_curve"][end]) - lowest for end in ("from", "to"))
    for n in range(LOOKED_AT + 1):
        pile = Pile(_moved(curve, first + (last - first) * n / LOOKED_AT))
        if any(hazard_faults(pile, directions(curve))):
            return True
    return False


def _table(points):
    """Rows as dictionaries, in base units."""
    names = [(column["name"], FACTORS.get(column["unit"])) for column in points["columns"]]
    return [
        {name: value * factor for (name, factor), value in zip(names, row) if factor}
        for row in points["rows"]
    ]


def _member(side, path):
    for name in path:
        side = side.get(name)
        if side is None:
            return None
    return base(side) if isinstance(side, dict) else side


def _point(comparison, where, kind, row, result, names):
    """One point against a result of one depth."""
    for name in names:
        side = result[name]
        for column, path in COLUMNS:
            want = _member(side, path)
            if want is None and column == "cylinder":
                want = _member(side, ("individual_bearing", "total"))
            if want is None and column == "punching" and name == "compression":
                want = _member(side, ("ultimate",))
            if want is None:
                continue
            comparison.node(f"{kind}.{name}_{column}", where, row.get(f"{name}_{column}"), want)


def _depth_of(rows, ultimates, ultimate, end):
    """The depth named, if its ultimate is the same in print; else the first that has it."""
    at = [row["depth"] for row, u in zip(rows, ultimates) if abs(u - ultimate) <= 1e-8 * u]
    return next((d for d in at if abs(d - base(end["depth"])) < 1e-6), at[0])


def _ends(comparison, where, curve, rows, names):
    """The summary: first least and first greatest of the points."""
    for name in names:
        ultimates = [row[f"{name}_ultimate"] for row in rows]
        for end, pick in (("least", min), ("greatest", max)):
            at = ultimates.index(pick(ultimates))
            comparison.node(f"summary.{name}.{end}", where, curve[name][end], {
                "ultimate": ultimates[at],
                "depth": _depth_of(rows, ultimates, ultimates[at], curve[name][end]),
            })


def judge_curves(service, items):
    """Asks curves of the first requests that have one; returns faults."""
    found = []
    for item in items:
        if len(found) < CURVES and not predicted(item["request"], directions(item["request"])):
            curve = _curve(item["request"])
            if curve:
                found.append((item["id"], *curve))
    curves = [{"id": where, "request": curve} for where, curve, _ in found]
    singles = [
        {"id": f"{where}-{n}", "request": single}
        for where, _, requests in found
        for n, single in enumerate(requests)
    ]
    asked = service.post("/v1/helix-capacity/batch", {"items": curves})["items"]
    answered = iter(service.post("/v1/helix-capacity/batch", {"items": singles})["items"])
    comparison, refused = Comparison(), 0
    for (where, curve, requests), reply in zip(found, asked, strict=True):
        said = {e["code"] for e in reply.get("problem", {}).get("errors", [])}
        want = {"helix_in_hazard"} if _meets_hazard(curve) else set()
        refused += len(want)
        if said != want:
            comparison.faults.append(f"curve of {where} refused for {said}, should be for {want}")
        if said or want:
            [next(answered) for _ in requests]
            continue
        names, curve = directions(curve), reply["answer"]["result"]["depth_curve"]
        rows = _table(curve["points"])
        _ends(comparison, where, curve, rows, names)
        for row, single in zip(rows, requests, strict=True):
            one = next(answered)
            at = f"{where} at {row['depth']:.4f} m"
            if "answer" not in one:
                comparison.faults.append(f"{at}: refused by itself, not in the curve")
                continue
            _point(comparison, at, "one-depth answer", row, one["answer"]["result"], names)
            _point(comparison, at, "recomputation", row, expected(single)[1], names)
    print(f"{len(found)} curves of {DEPTHS} depths, {refused} of them refused for hazards; largest")
    print("relative difference of each column:")
    for path, (difference, where) in sorted(comparison.largest.items()):
        print(f"  {difference:.1e}  {path} ({comparison.counted[path]}; {where})")
    if len(found) < CURVES:
        comparison.faults.append(f"only {len(found)} curves were asked")
    return comparison.faults
