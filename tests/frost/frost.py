"""The frost depths of `frost-depth` against two own solutions of heat conduction with freezing.

Usage: frost.py BINARY. The judges are proven first: against Neumann's solution, by finer grids,
and by each other. Then 20 fixed grounds (one kind, layered, insulated, under snow) go through
`BINARY calc frost-depth`. Fails where the median difference of the frost depth is above 3 % or the
worst above 8 %, by the method that is taken when none is asked for and by `heat_conduction`, or
where the published layered form would have passed as well.
"""

import json
import statistics
import subprocess
import sys

import enthalpy
import neumann
import tracking
from ground import CASES, DAY

MEDIAN, WORST = 3.0, 8.0  # % of the frost depth
EXACT = 0.1  # %, judge against Neumann
AGREE = 0.3  # %, judge against judge; with properties apart against Neumann
FEWEST_LAYERED = 10


def percent(value, of):
    return 100.0 * (value / of - 1.0)


def proven():
    """Faults of the judges on ground of one kind, where the truth is known."""
    faults = []
    for case in (c for c in CASES if len(c.layers) == 1):
        winter, own = (case.above, case.below, case.days * DAY), case.ground
        mean = [layer.mean() for layer in own]
        exact, apart = neumann.depth(mean[0], *winter), neumann.depth(own[0], *winter)
        grids = [tracking.solve(own, *winter, size, round(4.0 / size))[0] for size in (0.08, 0.04, 0.02)]
        errors = [percent(x, exact) for x in grids]
        one = percent(tracking.depth(own, *winter), exact)
        two = percent(enthalpy.solve(mean, *winter, 1.3 * exact)[0], exact)
        sizes = (0.04, 0.02, 0.01)
        apart = [percent(enthalpy.solve(own, *winter, 1.3 * apart, s, round(4.8 / s))[0], apart) for s in sizes]
        print(
            f"  {case.name:32} exact {exact:6.4f} m  followed front, nodes of 8, 4, 2 cm"
            + "".join(f" {e:+6.2f}" for e in errors)
            + f" %, extrapolated {one:+6.3f} %; enthalpy {two:+6.3f} %, properties apart, cells of 4, 2, 1 cm"
            + "".join(f" {e:+6.2f}" for e in apart)
            + " %"
        )
        if max(abs(one), abs(two)) > EXACT or abs(apart[-1]) > AGREE:
            faults.append(f"{case.name}: a judge is off Neumann's solution")
        if not 0.35 < errors[2] / errors[1] < 0.65 or not 0.35 < errors[1] / errors[0] < 0.65:
            faults.append(f"{case.name}: the error does not halve with the grid")
    return faults


def ask(binary, request):
    """The computed frost of the answer."""
    done = subprocess.run(
        [binary, "calc", "frost-depth", "-"], input=json.dumps(request).encode(), capture_output=True, check=False
    )
    if done.returncode != 0:
        raise SystemExit(f"{request['label']}: calc ended with {done.returncode}: {done.stdout.decode()}")
    return json.loads(done.stdout)["result"]["frost"]


def metres(quantity):
    return quantity["value"] * {"m": 1.0, "ft": 0.3048, "mm": 0.001, "in": 0.0254}[quantity["unit"]]


def compared(binary):
    """({series: [differences in %]}, faults), and the table."""
    series, faults = {}, []
    print("\n  depth by the followed front, m, and differences from it in %")
    print(f"  {'ground':32} {'depth':>7} {'enthalpy':>9} {'service':>9} {'conduct.':>9} {'published':>9} {'apart':>7}")
    for case in CASES:
        winter, own = (case.above, case.below, case.days * DAY), case.ground
        truth = tracking.depth(own, *winter)
        other, _ = enthalpy.solve([layer.mean() for layer in own], *winter, 1.3 * truth)
        apart, _ = enthalpy.solve(own, *winter, 1.6 * truth)
        frost = ask(binary, case.request())
        by = {d["method"]: metres(d["depth"]) for d in frost["depths"] if "depth" in d}
        row = {
            "enthalpy": other,
            "service": metres(frost["depth"]),
            "heat_conduction": by["heat_conduction"],
            "published": by.get("modified_berggren"),
            "apart": apart,
        }
        want = "modified_berggren" if len(own) == 1 else "heat_conduction"
        if frost["method"] != want:
            faults.append(f"{case.name}: taken by {frost['method']}")
        row = {name: None if x is None else percent(x, truth) for name, x in row.items()}
        for name, x in row.items():
            if x is not None and (name != "published" or len(own) > 1):
                series.setdefault(name, []).append(abs(x))
        shown = [" " * 8 + "-" if x is None else f"{x:+9.2f}" for x in row.values()]
        print(f"  {case.name:32} {truth:7.4f} " + " ".join(shown))
    return series, faults


def main(binary):
    faults = proven()
    series, more = compared(binary)
    faults += more
    print()
    for name, values in series.items():
        middle, worst = statistics.median(values), max(values)
        print(f"  {name:16} {len(values):3} cases, median {middle:6.2f} %, worst {worst:6.2f} %")
    if max(series["enthalpy"]) > AGREE:
        faults.append("the judges do not agree")
    for name in ("service", "heat_conduction"):
        if statistics.median(series[name]) > MEDIAN or max(series[name]) > WORST:
            faults.append(f"{name} is too far from heat conduction with freezing")
    published = series.get("published", [])
    if len(published) < FEWEST_LAYERED or max(published) <= WORST:
        faults.append("the published layered form would pass too: these cases cannot fail")
    for fault in faults:
        print("FAULT", fault)
    service = series["service"]
    print(
        f"frost: {len(service)} grounds, frost depth median {statistics.median(service):.2f} %, worst"
        f" {max(service):.2f} % from heat conduction with freezing, {len(faults)} faults"
    )
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
