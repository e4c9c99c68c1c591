"""Random design bases; every one of the service is among them, with all their members."""


def _allowable(draw):
    members = {}
    if draw.chance(0.3):
        members["compression_safety_factor"] = round(draw.between(1.5, 4.0), 2)
    if draw.chance(0.2):
        members["tension_safety_factor"] = round(draw.between(1.5, 4.0), 2)
    elif draw.chance(0.7):
        members["uplift_clause"] = draw.pick(
            ("general", "general_wind_seismic", "helical", "new_york_city")
        )
        if members["uplift_clause"] == "new_york_city" and draw.chance(0.5):
            members["uplift_element"] = draw.pick(("single", "group", "group"))
    if draw.chance(0.4):
        members["proof"] = draw.pick(("analysis", "load_test"))
    if draw.chance(0.3):
        names = ("torque_correlation", "load_test", "shaft", "couplings", "helix_plates")
        members["other_ultimates"] = {
            name: draw.quantity("force", draw.between(20.0, 600.0))
            for name in names
            if draw.chance(0.4)
        }
    return {"allowable_stress": members}


def _limit_states(draw):
    members = {}
    if draw.chance(0.3):
        members["compression_resistance_factor"] = round(draw.between(0.3, 0.8), 2)
    if draw.chance(0.3):
        members["tension_resistance_factor"] = round(draw.between(0.2, 0.7), 2)
    if draw.chance(0.5):
        members["proof"] = draw.pick(("analysis", "load_test"))
    return {"limit_states": members}


def _resistance(draw):
    """One tested pile or one other profile."""
    names = draw.pick((("compression",), ("tension",), ("compression", "tension")))
    return {name: draw.quantity("force", draw.between(20.0, 400.0)) for name in names}


def _eurocode_proof(draw):
    rows = [_resistance(draw) for _ in range(draw.whole(1, 12))]
    if draw.chance(0.5):
        return {"ground_tests": {"other_profiles": rows}}
    return {"load_tests": {"tests": rows}}


def _actions(draw):
    def loads(*names):
        return {name: draw.quantity("force", draw.between(1.0, 80.0)) for name in names}

    sides = {}
    if draw.chance(0.8):
        sides["compression"] = loads("permanent", "variable")
    if draw.chance(0.6) or not sides:
        sides["tension"] = loads("permanent_unfavourable", "variable", "permanent_favourable")
    return sides


def _set_factors(draw):
    ranges = (
        ("permanent_unfavourable_factor", 1.0, 1.5),
        ("permanent_favourable_factor", 0.7, 1.0),
        ("variable_factor", 1.0, 1.6),
        ("compression_resistance_factor", 1.0, 2.0),
        ("tension_resistance_factor", 1.0, 2.0),
    )
    return {
        name: round(draw.between(low, high), 2) for name, low, high in ranges if draw.chance(0.4)
    }


def _eurocode_own(draw, approach):
    members = {"combination_1": _set_factors(draw)}
    if approach == "da1":
        members["combination_2"] = _set_factors(draw)
    for name in ("correlation_mean_factor", "correlation_least_factor"):
        if draw.chance(0.3):
            members[name] = round(draw.between(1.0, 1.6), 2)
    return members


def _eurocode(draw, directions):
    approach = draw.pick(("da1", "da2"))
    members = {
        "approach": approach,
        "pile_kind": draw.pick(("driven", "bored", "continuous_flight_auger")),
    }
    if draw.chance(0.5):
        members["proof"] = _eurocode_proof(draw)
    if draw.chance(0.3):
        members["compression_resistance"] = draw.pick(("base", "total"))
    if draw.chance(0.4):
        members["model_factor"] = round(draw.between(1.0, 1.6), 2)
    if draw.chance(0.5) and directions == "both":
        members["actions"] = _actions(draw)
    if draw.chance(0.3):
        members["own_factors"] = _eurocode_own(draw, approach)
    return {"eurocode_7": members}


def _australian(draw):
    members = {
        "average_risk_rating_factor": round(draw.between(1.0, 5.0), 1),
        "redundancy": draw.pick(("low", "high")),
    }
    if draw.chance(0.2):
        members["basic_reduction_factor"] = round(draw.between(0.3, 0.8), 2)
    if draw.chance(0.5):
        members["load_testing"] = {
            "intrinsic_test_factor": round(draw.between(0.6, 0.9), 2),
            "benefit_factor": round(draw.between(0.0, 1.0), 2),
        }
    return {"australian_standard_2159": members}


def _own(draw):
    members = {"level": draw.pick(("allowable", "factored")), "reference": "report of the site"}
    for side in ("compression", "tension"):
        if side == "compression" and draw.chance(0.3):
            continue
        if draw.chance(0.5):
            members[side] = {"divisor": {"safety_factor": round(draw.between(1.0, 4.0), 2)}}
        else:
            factor = round(draw.between(0.2, 1.0), 2)
            members[side] = {"multiplier": {"resistance_factor": factor}}
    return {"own_factors": members}


def draw_basis(draw, directions):
    """A design basis, or None."""
    return draw.weighted(
        (
            (lambda: None, 0.15),
            (lambda: _allowable(draw), 0.35),
            (lambda: _limit_states(draw), 0.15),
            (lambda: _eurocode(draw, directions), 0.2),
            (lambda: _australian(draw), 0.08),
            (lambda: _own(draw), 0.07),
        )
    )()
