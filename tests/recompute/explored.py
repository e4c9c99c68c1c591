"""Random ways to the strength of a layer: sent, or from a test, the stress history, an index."""

RELATIONS = (
    "peck_hanson_thornburn_wolff",
    "kulhawy_mayne_1990",
    "hatanaka_uchida_1996",
    "shioi_fukui_1982_roads",
    "shioi_fukui_1982_buildings",
)
CONE_RELATIONS = ("kulhawy_mayne_1990", "robertson_campanella_1983")


def _corrections(draw, members):
    """What is sent with a raw count."""
    for name, low, high in (
        ("energy_ratio", 0.4, 0.9),
        ("borehole_factor", 1.0, 1.2),
        ("rod_factor", 0.75, 1.0),
        ("sampler_factor", 0.8, 1.3),
    ):
        if draw.chance(0.5):
            members[name] = round(draw.between(low, high), 2)


def _angle_of_count(draw):
    relation = draw.pick((None, *RELATIONS))
    normalised = relation in (None, "peck_hanson_thornburn_wolff", "hatanaka_uchida_1996")
    form = draw.pick(("raw", "n60", "n1_60") if normalised else ("raw", "n60"))
    members = {"blow_count": float(draw.whole(4, 50)), "form": form}
    if relation:
        members["correlation"] = relation
    if form == "raw":
        _corrections(draw, members)
    if normalised and form != "n1_60" and draw.chance(0.3):
        members["overburden_cap_factor"] = round(draw.between(1.2, 2.0), 2)
    return members


def _strength_of_count(draw):
    members = {
        "blow_count": float(draw.whole(3, 40)),
        "form": draw.pick(("raw", "n60")),
        "plasticity_index_ratio": round(draw.between(0.15, 0.6), 3),
    }
    if members["form"] == "raw":
        _corrections(draw, members)
    return members


def _reading(draw, low, high):
    """Readings of a cone, kPa."""
    resistance = draw.between(low, high)
    if draw.chance(0.5):
        reading = {"total_resistance": draw.quantity("stress", resistance)}
    else:
        reading = {
            "cone_resistance": draw.quantity("stress", resistance),
            "pore_pressure": draw.quantity("stress", draw.between(5.0, 0.3 * low)),
            "area_ratio": round(draw.between(0.5, 0.9), 2),
        }
    if draw.chance(0.4):
        reading["sleeve_friction"] = draw.quantity("stress", resistance * draw.between(0.004, 0.05))
    return reading


def _angle_of_cone(draw):
    members = {"reading": _reading(draw, 2500.0, 15000.0)}
    relation = draw.pick((None, *CONE_RELATIONS))
    if relation:
        members["correlation"] = relation
    return members


def _strength_of_cone(draw):
    members = {"reading": _reading(draw, 500.0, 2500.0)}
    if draw.chance(0.5):
        members["cone_factor"] = round(draw.between(10.0, 20.0), 1)
    return members


def _angle_of_density(draw):
    members = {
        "relative_density_ratio": round(draw.between(0.25, 0.95), 2),
        "critical_friction_angle": draw.quantity("angle", draw.between(28.0, 36.0)),
    }
    if draw.chance(0.4):
        members["mean_stress"] = draw.quantity("stress", draw.between(160.0, 2000.0))
    return members


def _history(draw):
    members = {"overconsolidation_ratio": round(draw.between(2.0, 12.0), 1)}
    if draw.chance(0.5):
        members["strength_ratio"] = round(draw.between(0.18, 0.35), 2)
    if draw.chance(0.5):
        members["exponent_factor"] = round(draw.between(0.6, 1.0), 2)
    return members


def _index(draw):
    members = {
        "plasticity_index_ratio": round(draw.between(0.1, 0.8), 2),
        "overconsolidation_ratio": round(draw.between(2.0, 12.0), 1),
    }
    if draw.chance(0.5):
        members["exponent_factor"] = round(draw.between(0.6, 1.0), 2)
    return members


def undrained_way(draw):
    """Strength of clay or silt."""
    if draw.chance(0.65):
        strength = draw.weighted(((60.0, 0.6), (150.0, 0.3), (450.0, 0.1)))
        strength *= draw.between(0.1, 1.0)
        return {"undrained_strength": draw.quantity("stress", strength)}
    ways = (
        ("from_spt", _strength_of_count),
        ("from_cpt", _strength_of_cone),
        ("from_stress_history", _history),
        ("from_index", _index),
    )
    name, way = draw.pick(ways)
    return {name: way(draw)}


def drained_way(draw, kind):
    """Strength of sand or gravel, for gravel not from a penetration test."""
    if draw.chance(0.65):
        phi = draw.between(15.5, 26.0) if draw.chance(0.15) else draw.between(26.0, 44.9)
        found = {"friction_angle": draw.quantity("angle", phi)}
    else:
        ways = [("from_index", _angle_of_density)]
        if kind == "sand":
            ways += [("from_spt", _angle_of_count), ("from_cpt", _angle_of_cone)]
        name, way = draw.pick(ways)
        found = {name: way(draw)}
    if draw.chance(0.15):
        found["cohesion"] = draw.quantity("stress", draw.between(1.0, 30.0))
    return found
