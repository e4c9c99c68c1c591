"""Capacity on the design basis: safety factors and resistance factors with their clauses."""

from units import base

# Safety factor in tension by clause: by analysis, by load test.
UPLIFT = {
    "general": (3.0, 2.0),
    "general_wind_seismic": (2.0, 1.5),
    "helical": (2.0, 2.0),
    "new_york_city": (3.0, 2.0),
}
# Resistance factor in tension or not: by analysis, by static load test.
RESISTANCE = {False: (0.4, 0.6), True: (0.3, 0.4)}
OTHER_ULTIMATES = ("torque_correlation", "load_test", "shaft", "couplings", "helix_plates")


def _factor(basis, tension):
    """(name, factor, whether it was sent)."""
    ((kind, members),) = basis.items()
    allowable = kind == "allowable_stress"
    tested = int(members.get("proof") == "load_test")
    side = "tension" if tension else "compression"
    name = f"{side}_safety_factor" if allowable else f"{side}_resistance_factor"
    if name in members:
        return name, float(members[name]), True
    if not allowable:
        return name, RESISTANCE[tension][tested], False
    if tension:
        return name, UPLIFT[members.get("uplift_clause", "general")][tested], False
    return name, 2.0, False


def factors_in_force(basis, directions):
    """The factors of a basis in the directions asked, as the answer lists them."""
    if not basis:
        return []
    rows = []
    for direction in directions:
        name, factor, sent = _factor(basis, direction == "tension")
        rows.append({"id": name, "used_factor": factor, "from_request": sent})
    return rows


def _others(basis):
    """Other ultimate compression loads that were sent."""
    sent = ((basis or {}).get("allowable_stress") or {}).get("other_ultimates") or {}
    return {name: base(load) for name, load in sent.items()}


def ultimates(basis, soil):
    """The ultimate compression loads of which the least counts, `soil` being the bearing."""
    loads = {"soil_bearing": soil, **{name: None for name in OTHER_ULTIMATES}, **_others(basis)}
    known = [load for load in loads.values() if load is not None]
    rows = []
    for name, load in loads.items():
        row = {"item": name, "considered": load is not None, "governing": False}
        if load is not None:
            row["ultimate"] = load
            row["governing"] = load == min(known)
        rows.append(row)
    return rows


def design_capacity(basis, ultimate, tension):
    """The capacity that may be used, from the ultimate resistance of the soil."""
    _, factor, _ = _factor(basis, tension)
    if "limit_states" in basis:
        return {"kind": "factored", "from_ultimate": ultimate, "capacity": factor * ultimate}
    if not tension:
        ultimate = min([ultimate, *_others(basis).values()])
    return {"kind": "allowable", "from_ultimate": ultimate, "capacity": ultimate / factor}
