"""Capacity on the design basis: safety, resistance and partial factors with their clauses."""

from eurocode import eurocode_design, eurocode_factors
from units import base

# Safety factor in tension by clause: by analysis, by load test.
UPLIFT = {
    "general": (3.0, 2.0),
    "general_wind_seismic": (2.0, 1.5),
    "helical": (2.0, 2.0),
    "new_york_city": (3.0, 2.0),
}
# A group analysed as one, New York City.
UPLIFT_GROUP = (2.5, 2.0)
# Resistance factor in compression and in tension: by analysis, by static load test.
RESISTANCE = {"compression": (0.4, 0.6), "tension": (0.3, 0.4)}
# AS 2159: greatest average risk rating, basic factor with low and with high redundancy.
AUSTRALIAN = (
    (1.5, 0.67, 0.76),
    (2.0, 0.61, 0.70),
    (2.5, 0.56, 0.64),
    (3.0, 0.52, 0.60),
    (3.5, 0.48, 0.56),
    (4.0, 0.45, 0.53),
    (4.5, 0.42, 0.50),
    (5.0, 0.40, 0.47),
)
OTHER_ULTIMATES = ("torque_correlation", "load_test", "shaft", "couplings", "helix_plates")


def _allowable(members, side):
    """(name, safety factor, whether it was sent)."""
    name = f"{side}_safety_factor"
    if name in members:
        return name, float(members[name]), True
    if side == "compression":
        return name, 2.0, False
    row = UPLIFT[members.get("uplift_clause", "general")]
    if members.get("uplift_element") == "group":
        row = UPLIFT_GROUP
    return name, row[members.get("proof") == "load_test"], False


def _limit_states(members, side):
    """(name, resistance factor, whether it was sent)."""
    name = f"{side}_resistance_factor"
    if name in members:
        return name, float(members[name]), True
    return name, RESISTANCE[side][members.get("proof") == "load_test"], False


def _australian(members):
    """The factors in their order, the last the one in force."""
    rating = members["average_risk_rating_factor"]
    column = 2 if members["redundancy"] == "high" else 1
    basic = next(row for row in AUSTRALIAN if rating <= row[0])[column]
    rows = [("basic_reduction_factor", members.get("basic_reduction_factor", basic))]
    testing = members.get("load_testing")
    if testing:
        test, benefit = testing["intrinsic_test_factor"], testing["benefit_factor"]
        rows += [("intrinsic_test_factor", test), ("benefit_factor", benefit)]
        # tests may prove no more than was assumed; they take nothing away
        rows.append(("reduction_factor", rows[0][1] + max(test - rows[0][1], 0.0) * benefit))
    else:
        rows.append(("reduction_factor", rows[0][1]))
    sent = {"intrinsic_test_factor", "benefit_factor", *members}
    if not testing and "basic_reduction_factor" in members:
        sent.add("reduction_factor")
    return [(name, factor, name in sent, None) for name, factor in rows]


def _own(members, side):
    """(divisor or multiplier, its factor) of the caller, or None."""
    if side not in members:
        return None
    ((how, factor),) = members[side].items()
    return how, next(iter(factor.values()))


def _rows(basis, side):
    """(name, factor, whether it was sent, combination) in force in a direction."""
    ((kind, members),) = basis.items()
    if kind == "allowable_stress":
        return [(*_allowable(members, side), None)]
    if kind == "limit_states":
        return [(*_limit_states(members, side), None)]
    if kind == "eurocode_7":
        return eurocode_factors(members, side)
    if kind == "australian_standard_2159":
        return _australian(members)
    own = _own(members, side)
    return [(*own, True, None)] if own else []


def factors_in_force(basis, directions):
    """The factors of a basis in the directions asked, as the answer lists them."""
    if not basis:
        return []
    found = []
    for side in directions:
        for name, factor, sent, combination in _rows(basis, side):
            row = {"id": name, "used_factor": float(factor), "from_request": sent}
            if "allowable_stress" not in basis and "limit_states" not in basis:
                row["direction"] = side
            if combination:
                row["combination"] = combination
            if "own_factors" in basis:
                row["own_reference"] = basis["own_factors"]["reference"]
            found.append(row)
    return found


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


def design_capacity(basis, ultimate, side):
    """The capacity that may be used, or None where the basis gives none in this direction."""
    ((kind, members),) = basis.items()
    if kind == "eurocode_7":
        return eurocode_design(members, ultimate, side)
    if kind == "allowable_stress" and side == "compression":
        ultimate = min([ultimate, *_others(basis).values()])
    rows = _rows(basis, side)
    if not rows:
        return None
    how, factor, _, _ = rows[-1]
    divides = kind == "allowable_stress" or how == "divisor"
    allowable = kind == "allowable_stress" or members.get("level") == "allowable"
    return {
        "kind": "allowable" if allowable else "factored",
        "from_ultimate": ultimate,
        "capacity": ultimate / factor if divides else ultimate * factor,
    }
