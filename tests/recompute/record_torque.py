"""Torque factor, required torque and capacity of `installation-record`.

From the texts of the choices of a torque factor and of the design basis.
"""

import math

from design import design_capacity, factors_in_force
from units import FACTORS, INCH, base

LISTED = {
    ("square", 1.5): 10.0,
    ("square", 1.75): 10.0,
    ("round", 2.875): 9.0,
    ("round", 3.0): 8.0,
    ("round", 3.5): 7.0,
}
LISTED_WITHIN = 0.0005
REDUCED = 24.0 / 33.0
# Choices whose factor in tension is the one in compression, with the reduced one beside it.
SAME = ("listed_shaft", "effective_diameter", "perko_2009")
SIDES = ("compression", "tension")


def _across(shaft):
    """(shape, side or outside diameter, effective diameter), in m."""
    ((shape, members),) = shaft.items()
    if shape == "round":
        size = base(members["outside_diameter"])
        return shape, size, size
    side = base(members["side"])
    sharp = side * math.sqrt(2.0)
    return shape, side, base(members["diagonal"]) if "diagonal" in members else sharp


def listed(shaft):
    """Factor of a listed shaft, or None."""
    shape, size, _ = _across(shaft)
    for (name, inches), factor in LISTED.items():
        if name == shape and abs(size - inches * INCH) <= LISTED_WITHIN + 1e-9:
            return factor * FACTORS["per_ft"]
    return None


def by_diameter(shaft):
    """The lower of the formula and the listed value."""
    _, _, effective = _across(shaft)
    formula = 22.285 * (effective / INCH) ** -0.9195 * FACTORS["per_ft"]
    return min(formula, listed(shaft) or formula)


def _hoyt(shaft):
    shape, size, _ = _across(shaft)
    if shape == "square" or size < 0.089 - LISTED_WITHIN:
        return 33.0
    return 23.0 if size < 0.1 else 9.8


def factors(request):
    """Torque factors by direction, and `reduced` where there is one; {} without a choice."""
    choice = request.get("torque_factor")
    if not choice:
        return {}
    ((name, members),) = choice.items()
    if name == "own":
        return {side: base(members[side]) for side in SIDES if side in members}
    if name == "site_tests":
        return {side: base(members[side]["factor"]) for side in SIDES if side in members}
    shaft = request["pile"]["shaft"]
    if name == "livneh_2008":
        return {"compression": 33.0, "tension": 24.0}
    if name == "hoyt_clemence_1989":
        return dict.fromkeys(SIDES, _hoyt(shaft))
    if name == "perko_2009":
        factor = 1433.0 * (1000.0 * _across(shaft)[2]) ** -0.92
    else:
        factor = listed(shaft) if name == "listed_shaft" else by_diameter(shaft)
    return {"compression": factor, "tension": factor, "reduced": factor * REDUCED}


def in_force(request):
    """(basis, {direction: safety or resistance factor}), where the target has them."""
    target = (request.get("target") or {}).get("from_demand")
    if not target:
        return None, {}
    basis = target["design_basis"]
    rows = factors_in_force(basis, SIDES)
    return basis, {side: row["used_factor"] for side, row in zip(SIDES, rows, strict=True)}


def basis_found(basis, used):
    """The design basis as the answer tells it."""
    ((kind, _),) = basis.items()
    name = "safety_factor" if kind == "allowable_stress" else "resistance_factor"
    return {"format": kind, **{side: {name: factor} for side, factor in used.items()}}


def required(request):
    """What was to be reached, or None without a target."""
    target = request.get("target")
    if not target:
        return None
    if "stated" in target:
        stated = target["stated"]
        return {"torque": base(stated["torque"]), "tension": bool(stated.get("tension"))}
    known, (basis, used) = factors(request), in_force(request)
    demand = target["from_demand"]["demand"]
    loads = {side: base(demand[side]) for side in SIDES if side in demand}
    for side in loads:
        # the ultimate capacity that the load needs
        factor = used[side]
        loads[side] *= factor if "allowable_stress" in basis else 1.0 / factor
    torques = {side: load / known[side] for side, load in loads.items()}
    governing = max(torques, key=torques.get)
    found = {
        "torque": torques[governing],
        "tension": loads.get("tension", 0.0) > 0.0,
        "governing": governing,
    }
    if "tension" in loads and "reduced" in known:
        found["by_reduced_factor"] = max(found["torque"], loads["tension"] / known["reduced"])
    return found


def capacity(request, torque):
    """Capacity that one torque stands for."""
    known, (basis, _) = factors(request), in_force(request)
    found = {"torque": torque}
    for side in SIDES:
        if side not in known:
            continue
        ultimate = known[side] * torque
        design = design_capacity(basis, ultimate, side) if basis else None
        found[f"{side}_ultimate"] = design["from_ultimate"] if design else ultimate
        if design:
            found[f"{side}_design"] = design["capacity"]
    return found
