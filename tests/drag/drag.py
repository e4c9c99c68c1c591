"""The neutral plane and the drag force of `drag-force` against an integration by numbers.

Usage: drag.py BINARY. Sends 50 random piles in layers of profiles.py, and 10 with a table of
shaft resistance, through `BINARY calc drag-force` and compares every figure with balance.py to
1e-6. Fails too where a kind of friction, ground or answer hardly occurs, or where a figure moved
by 1e-5 goes unnoticed.
"""

import copy
import json
import pathlib
import random
import subprocess
import sys

sys.path.append(str(pathlib.Path(__file__).resolve().parent.parent / "recompute"))

from balance import expected, loads  # noqa: E402
from profiles import drawn, tabled  # noqa: E402
from units import FACTORS, base, is_quantity  # noqa: E402

LAYERED, TABLES, SEED, TOLERANCE = 50, 10, 1814, 1e-6
LEAST = 5  # piles of each kind
KINDS = (
    "beta_by_soil beta alpha alpha_alone limit water surcharge fill_base square mobilised fill"
    " collapse_on_wetting drawdown limit_states allowable_stress cumulative along_shaft at_toe none"
).split() + ["head below grade", "head above grade", "balance though settling"]


def near(told, want):
    """Equal to 1e-6, of 1 m or 1 kN at least a thousandth."""
    return abs(told - want) <= TOLERANCE * max(abs(want), 1e-3)


def differences(told, want, where=""):
    """Paths at which an answer is not what it should be."""
    if isinstance(want, dict):
        if not isinstance(told, dict):
            return [f"{where}: missing"]
        return [d for k, v in want.items() for d in differences(told.get(k), v, f"{where}/{k}")]
    if isinstance(want, list):
        if not isinstance(told, list) or len(told) != len(want):
            return [f"{where}: not {len(want)} of them"]
        rows = enumerate(zip(told, want, strict=True))
        return [d for i, (t, w) in rows for d in differences(t, w, f"{where}/{i}")]
    if isinstance(want, str):
        return [] if told == want else [f"{where}: {told}, here {want}"]
    number = base(told) if is_quantity(told) else told
    if not isinstance(number, (int, float)) or not near(number, want):
        return [f"{where}: {told}, here {want}"]
    return []


def absent(told, want):
    """Parts that are answered and should not be."""
    names = ("balance", "fill_base", "governing", "structural")
    found = [f"/{n}: not expected" for n in names if n in told and n not in want]
    if "neutral_plane" in told.get("balance", {}) and "neutral_plane" not in want["balance"]:
        found.append("/balance/neutral_plane: not expected")
    return found


def curve(told, pile, friction, want):
    """Faults of the curve, and its number of rows."""
    names = [c["name"] for c in told["curve"]["columns"]]
    factors = [FACTORS[c["unit"]] for c in told["curve"]["columns"]]
    plane = want.get("governing", {}).get("depth")
    found, last = [], -1.0
    for row in told["curve"]["rows"]:
        row = {n: v * f for n, v, f in zip(names, row, factors, strict=True)}
        z = row.pop("depth")
        if z < last:
            found.append(f"/curve: {z} after {last}")
        last = z
        wanted = loads(pile, friction, z, plane)
        if set(wanted) != set(row):
            return [f"/curve: columns {names}"], 0
        found += differences(row, wanted, f"/curve at {z}")
    if not near(last, pile.toe):
        found.append(f"/curve ends at {last}, the toe is at {pile.toe}")
    return found, len(told["curve"]["rows"])


def figures(node, at=()):
    """Paths of all numbers that were compared."""
    if isinstance(node, dict):
        for name, value in node.items():
            yield from figures(value, at + (name,))
    elif isinstance(node, list):
        for i, value in enumerate(node):
            yield from figures(value, at + (i,))
    elif not isinstance(node, str):
        yield at


def unnoticed(told, want):
    """(Figures that can be moved by 1e-5 without a difference, figures tried)."""
    missed, tried = [], 0
    for path in figures(want):
        moved = copy.deepcopy(told)
        holder = moved
        for step in path[:-1]:
            holder = holder[step]
        value = holder[path[-1]]
        if is_quantity(value):
            holder, path, value = value, path + ("value",), value["value"]
        if not value:
            continue
        holder[path[-1]] = value * (1.0 + 1e-5)
        tried += 1
        if len(differences(moved, want)) != 1:
            missed.append(f"moving {path} by 1e-5 was not noticed")
    return missed, tried


def ask(binary, request):
    """The answer of the service, or what it refused."""
    done = subprocess.run(
        [binary, "calc", "drag-force", "-"], input=json.dumps(request).encode(), capture_output=True, check=False
    )
    if done.returncode not in (0, 2):
        raise SystemExit(f"calc ended with {done.returncode}: {done.stderr.decode()}")
    return done.returncode == 0, json.loads(done.stdout)


def main(binary):
    rnd = random.Random(SEED)
    piles = [drawn(rnd, i) for i in range(LAYERED)] + [tabled(rnd, i) for i in range(TABLES)]
    faults, counts, compared, rows, tried, answered = [], dict.fromkeys(KINDS, 0), 0, 0, 0, 0
    for request, pile, kinds in piles:
        ok, answer = ask(binary, request)
        if not ok:
            faults.append(f"{request['label']} was refused: {answer['errors']}")
            continue
        answered += 1
        told = answer["result"]["drag"]
        want, friction = expected(pile)
        found = differences(told, want) + absent(told, want)
        more, count = curve(told, pile, friction, want)
        if not found:
            missed, moved = unnoticed(told, want)
            found += missed
            tried += moved
        faults += [f"{request['label']}{d}" for d in found + more]
        compared += sum(1 for _ in figures(want))
        rows += count
        for kind in kinds | {want.get("balance", {}).get("position", "no toe")}:
            counts[kind] = counts.get(kind, 0) + 1
    faults += [f"only {counts[k]} piles with {k}" for k in KINDS if counts[k] < LEAST]
    if tried < 500 and not faults:
        faults.append(f"only {tried} figures were moved")
    print("  piles by kind: " + ", ".join(f"{k} {n}" for k, n in sorted(counts.items())))
    for fault in faults[:20]:
        print("FAULT", fault)
    print(
        f"drag: {answered} piles of {len(piles)}, {compared} figures and {rows} rows of curves within 1e-6,"
        f" {tried} figures moved by 1e-5 noticed, {len(faults)} faults"
    )
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
