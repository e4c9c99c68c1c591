"""Random choices of method; every option of the service is among them."""

DRAINED = ("vesic_1973", "meyerhof_1963", "hansen_1970", "terzaghi_1943")


def _drained(draw):
    if draw.chance(0.15):
        return {"own": {"bearing_factor": round(draw.between(5.0, 60.0), 2)}}
    return draw.pick(DRAINED)


def _undrained(draw):
    chosen = draw.pick(("skempton_1951", "fixed_nine", "cavity_expansion"))
    if chosen == "cavity_expansion":
        return {chosen: {"reduced_rigidity_ratio": round(draw.between(10.0, 500.0), 1)}}
    return chosen


def _uplift_sand(draw):
    if draw.chance(0.4):
        return "das_breakout"
    members = {}
    if draw.chance(0.6):
        members["tension_factor"] = round(draw.between(0.3, 1.0), 2)
    return {"nq_tension": members}


def _adhesion(draw, square):
    if square or draw.chance(0.2):
        return "none"
    members = {}
    if draw.chance(0.7):
        members["ignored_depth"] = draw.quantity("length", draw.between(0.0, 2.5))
    return {"alpha": members}


def _zone_ratio(draw):
    return draw.pick((0.0, 1.0, 1.5, 2.0, 3.0, round(draw.between(0.1, 3.0), 2)))


def draw_methods(draw, square):
    """A choice of methods, or None for the defaults."""
    if draw.chance(0.25):
        return None
    drawn = (
        ("undrained_bearing", lambda: _undrained(draw)),
        ("drained_bearing", lambda: _drained(draw)),
        ("shape_depth_factors", lambda: draw.pick(("none", "published", "published"))),
        ("width_term", lambda: draw.pick(("drop", "include", "include"))),
        ("local_shear", lambda: draw.pick(("none", "two_thirds", "two_thirds"))),
        ("stress_limit", lambda: draw.pick(("none", "usace_1991_loose", "usace_1991_dense"))),
        ("bearing_zone_ratio", lambda: _zone_ratio(draw)),
        ("bearing_zone_rule", lambda: draw.pick(("thickness_mean", "weakest", "weakest"))),
        ("helix_area", lambda: draw.pick(("net", "bottom_gross", "gross"))),
        ("uplift_sand", lambda: _uplift_sand(draw)),
        ("clay_tension_factor", lambda: round(draw.between(0.5, 1.0), 2)),
        ("clay_critical_embedment", lambda: draw.pick(("das_1980", "four_diameters"))),
        ("cylinder_lateral_stress", lambda: draw.pick(("mitsch_clemence_1985", "at_rest"))),
        ("no_credit_above", lambda: draw.quantity("length", draw.between(0.0, 2.2))),
        ("shaft_adhesion", lambda: _adhesion(draw, square)),
    )
    chosen = {name: value() for name, value in drawn if draw.chance(0.3)}
    without = ("vesic_1973", "meyerhof_1963", "hansen_1970")
    closed = chosen.get("drained_bearing", "vesic_1973") in without
    if not closed and chosen.get("width_term") == "include":
        del chosen["width_term"]
    return chosen or None
