"""Reactions, moments and shears of `pile-layout` against two second calculations, to 1e-6.

Usage: grillage.py BINARY. Sends 100 random lines and 30 random grids, half of them with torsion of the
beams, through the service in one batch. Lines and grids with torsion are calculated by a general
library (library.py), all grids by an own dense grillage (grid.py), each on rigid and, where the
piles have a stiffness, on spring supports. Fails too where a kind of model hardly occurs, or where a
figure moved by 1e-5 goes unnoticed.
"""

import copy
import pathlib
import random
import sys

sys.path.append(str(pathlib.Path(__file__).resolve().parent.parent / "recompute"))

import grid  # noqa: E402
import library  # noqa: E402
import models  # noqa: E402
from service import Service  # noqa: E402
from units import base  # noqa: E402

LINES, GRIDS, SEED, TOLERANCE = 100, 30, 1765, 1e-6
LEAST = 10  # models of each kind
KINDS = ("rigid alone", "springs", "overhang", "torsion", "released", "uplift", "free crossing")


def calculations(model):
    """(What calculates it, its answer by support and combination)."""
    supports = ["rigid", "spring"] if model.springs else ["rigid"]
    if len(model.beams) == 1 or model.torsion:
        yield "library", {s: library.solve(model, s == "spring") for s in supports}
    if len(model.beams) > 1:
        own = grid.Grid(model)
        found = {}
        for s in supports:
            solved = own.solve(s == "spring").items()
            found[s] = {name: (r, own.extremes(w, name)) for name, (r, w) in solved}
        yield "own grillage", found


def expected(found):
    """The members of the answer that a calculation gives, in kN and m: by path."""
    out = {}
    beams = []
    for support, combinations in found.items():
        for name, (reactions, extremes) in combinations.items():
            for i, r in enumerate(reactions):
                out["reaction", i, name, support] = r
            beams = beams or [(0.0, 0.0, 0.0)] * len(extremes)
            beams = [tuple(map(max, a, b)) for a, b in zip(beams, extremes, strict=True)]
    for i, values in enumerate(beams):
        for what, value in zip(("sagging", "hogging", "shear"), values, strict=True):
            out[what, i] = value
    return out


def told(result, path):
    """The same member of the answer; None where it is missing."""
    try:
        if path[0] == "reaction":
            _, i, name, support = path
            row = next(r for r in result["piles"][i]["reactions"] if r["combination"] == name)
            return row[support]
        extreme = result["beams"][path[1]][path[0]]
        return extreme["shear" if path[0] == "shear" else "moment"]
    except (KeyError, IndexError, StopIteration):
        return None


def floor(want, path):
    """Below a thousandth of the greatest of its kind a figure is compared with that."""
    kind = path[0] == "reaction"
    return 1e-3 * max(abs(v) for p, v in want.items() if (p[0] == "reaction") == kind)


def differences(result, want):
    """Paths whose figure is not what it should be."""
    out = []
    for path, value in want.items():
        have = told(result, path)
        if have is None:
            out.append(f"{path}: missing")
        elif abs(base(have) - value) > TOLERANCE * max(abs(value), floor(want, path)):
            out.append(f"{path}: {base(have)}, here {value}")
    return out


def unnoticed(result, want):
    """(Figures that can be moved by 1e-5 without a difference, figures tried)."""
    missed, tried = [], 0
    for path, value in want.items():
        if abs(value) < floor(want, path):
            continue
        moved = copy.deepcopy(result)
        told(moved, path)["value"] *= 1.0 + 1e-5
        tried += 1
        if len(differences(moved, want)) != 1:
            missed.append(f"moving {path} by 1e-5 was not noticed")
    return missed, tried


def kinds(model, result):
    """What a model is an instance of."""
    out = {"springs"} if model.springs else {"rigid alone"}
    if len(model.beams) > 1:
        out.add("torsion" if model.torsion else "released")
        placed = {(b, s) for b, s, _ in model.piles}
        if any(first not in placed for first, _ in model.meets):
            out.add("free crossing")
    elif model.piles[0][1] > 0.0 or model.piles[-1][1] < model.beams[0].length:
        out.add("overhang")
    if any(base(p["tension"]["demand"]) > 0.0 for p in result["piles"]):
        out.add("uplift")
    return out


def main(binary):
    rnd = random.Random(SEED)
    drawn = [models.line(rnd, i) for i in range(LINES)] + [models.grid(rnd, i) for i in range(GRIDS)]
    items = [{"id": m.name, "request": models.request(m)} for m in drawn]
    with Service(binary) as service:
        answered = service.post("/v1/pile-layout/batch", {"items": items})["items"]
    faults, counts, compared, tried = [], dict.fromkeys(KINDS, 0), {}, 0
    for model, item in zip(drawn, answered, strict=True):
        if "answer" not in item:
            faults.append(f"{model.name} was refused: {item['problem']['errors']}")
            continue
        result = item["answer"]["result"]
        for kind in kinds(model, result):
            counts[kind] += 1
        for by, found in calculations(model):
            want = expected(found)
            wrong = differences(result, want)
            faults += [f"{model.name} by {by} {w}" for w in wrong]
            compared[by] = compared.get(by, 0) + len(want)
            if not wrong and tried < 1_500:
                missed, moved = unnoticed(result, want)
                faults += [f"{model.name} {m}" for m in missed]
                tried += moved
    faults += [f"only {counts[k]} models with {k}" for k in KINDS if counts[k] < LEAST]
    if tried < 1_000 and not faults:
        faults.append(f"only {tried} figures were moved")
    print("  models by kind: " + ", ".join(f"{k} {n}" for k, n in sorted(counts.items())))
    for fault in faults[:20]:
        print("FAULT", fault)
    by = ", ".join(f"{n} figures by {name}" for name, n in sorted(compared.items()))
    print(
        f"grillage: {LINES} lines and {GRIDS} grids, {by} within 1e-6,"
        f" {tried} figures moved by 1e-5 noticed, {len(faults)} faults"
    )
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
