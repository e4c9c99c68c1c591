"""The strength of a layer, sent or found from a test, the stress history or an index.

Each way gives the strength (kPa or degrees) and the record the answer shows of it.
"""

import math

from general import (
    cone_strength,
    kulhawy_cone_angle,
    kulhawy_count_angle,
    overburden,
    peck_angle,
    prandtl_nq,
    salgado,
)
from units import base

LEAST_ANGLE, GREATEST_ANGLE = 5.0, 45.0
LEAST_STRENGTH, GREATEST_STRENGTH = 1.0, 1000.0
GREATEST_COUNT, GREATEST_CLAY_COUNT = 60.0, 100.0
LEAST_MEAN_STRESS = 150.0
NORMALISED = ("peck_hanson_thornburn_wolff", "hatanaka_uchida_1996")

class StrengthFault(Exception):
    """A strength that cannot be found, by the code of the refusal."""


COUNT_ANGLES = {
    "peck_hanson_thornburn_wolff": lambda count, stress: peck_angle(count),
    "kulhawy_mayne_1990": kulhawy_count_angle,
    "hatanaka_uchida_1996": lambda count, stress: math.sqrt(15.4 * count) + 20.0,
    "shioi_fukui_1982_roads": lambda count, stress: math.sqrt(15.0 * count) + 15.0,
    "shioi_fukui_1982_buildings": lambda count, stress: 0.3 * count + 27.0,
}


def cohesion(way):
    """Effective cohesion, where there is any."""
    return base(way["cohesion"]) if "cohesion" in way else 0.0


def _depth(layer, members, name):
    """Depth of a test, or the middle of the layer."""
    return base(members[name]) if name in members else 0.5 * (layer.top + layer.bottom)


def _n60(sent, record):
    """N_60 of a blow count that is not (N_1)_60, with the corrections in the record."""
    if sent["form"] != "raw":
        return sent["blow_count"]
    count = sent["blow_count"]
    for name, default in (
        ("energy_ratio", 0.6),
        ("borehole_factor", 1.0),
        ("rod_factor", 1.0),
        ("sampler_factor", 1.0),
    ):
        record[name] = float(sent.get(name, default))
        count *= record[name] / (0.6 if name == "energy_ratio" else 1.0)
    return count


def _sand_count(sent, stress, record):
    """The count a relation for sand is used with."""
    if sent["form"] == "n1_60":
        count = sent["blow_count"]
        record["n1_60_count"] = float(count)
        return count
    count = _n60(sent, record)
    record["n60_count"] = float(count)
    if sent.get("silty_below_water"):
        count = 15.0 + 0.5 * (count - 15.0) if count > 15.0 else count
        record["silty_sand_count"] = float(count)
    if sent.get("correlation", NORMALISED[0]) in NORMALISED:
        factor = min(overburden(stress), sent.get("overburden_cap_factor", 1.7))
        count *= factor
        record["overburden_factor"] = factor
        record["n1_60_count"] = count
    return count


def _angle_of_count(sent, stress, total):
    relation = sent.get("correlation", NORMALISED[0])
    record = {"blow_count": float(sent["blow_count"]), "form": sent["form"]}
    count = min(_sand_count(sent, stress, record), GREATEST_COUNT)
    record["used_count"] = float(count)
    return COUNT_ANGLES[relation](count, stress), f"friction_spt_{relation}", "penetration", record


def _strength_of_count(sent, stress, total):
    record = {"blow_count": float(sent["blow_count"]), "form": sent["form"]}
    count = _n60(sent, record)
    record["n60_count"] = float(count)
    count = min(count, GREATEST_CLAY_COUNT)
    plasticity = sent["plasticity_index_ratio"]
    alpha, su = salgado(plasticity, count)
    record.update(
        used_count=float(count), plasticity_index_ratio=float(plasticity), strength_factor=alpha
    )
    return su, "undrained_spt_salgado_2008", "penetration", record


def _cone(reading, overburden_stress, record):
    """q_t, with the readings in the record."""
    if "total_resistance" in reading:
        total = base(reading["total_resistance"])
    else:
        measured, pressure = base(reading["cone_resistance"]), base(reading["pore_pressure"])
        ratio = float(reading["area_ratio"])
        total = measured + pressure * (1.0 - ratio)
        record.update(cone_resistance=measured, pore_pressure=pressure, area_ratio=ratio)
    if total <= overburden_stress:
        raise StrengthFault("cone_below_overburden")
    record["total_resistance"] = total
    if "sleeve_friction" in reading:
        record["sleeve_friction"] = base(reading["sleeve_friction"])
    return total


def behaviour_index(resistance, friction, total, stress):
    """I_c of Robertson and Wride 1998 with the exponent of Zhang, by bisection.

    The correction for overburden has no upper limit here, as in the service.
    """
    net = resistance - total
    ratio = 100.0 * friction / net

    def index(guess):
        exponent = min(1.0, 0.381 * guess + 0.05 * stress / 100.0 - 0.15)
        normalised = net / 100.0 * (100.0 / stress) ** exponent
        return math.hypot(3.47 - math.log10(normalised), math.log10(ratio) + 1.22)

    low, high = 0.0, 10.0
    for _ in range(200):
        middle = 0.5 * (low + high)
        if middle < index(middle):
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)


def _behaviour(record, reading, total, stress):
    if "sleeve_friction" in reading:
        record["behaviour_index_ratio"] = behaviour_index(
            record["total_resistance"], record["sleeve_friction"], total, stress
        )


def _angle_of_cone(sent, stress, total):
    relation = sent.get("correlation", "kulhawy_mayne_1990")
    record = {}
    resistance = _cone(sent["reading"], total, record)
    if relation == "kulhawy_mayne_1990":
        angle = kulhawy_cone_angle(resistance, stress)
        ratio = (resistance / 100.0) / math.sqrt(stress / 100.0)
    else:
        ratio = resistance / stress
        angle = math.degrees(math.atan((math.log10(ratio) + 0.29) / 2.68))
    record["normalised_resistance_ratio"] = ratio
    _behaviour(record, sent["reading"], total, stress)
    return angle, f"friction_cpt_{relation}", "cone", record


def _strength_of_cone(sent, stress, total):
    record = {}
    resistance = _cone(sent["reading"], total, record)
    record["cone_factor"] = float(sent.get("cone_factor", 15.0))
    _behaviour(record, sent["reading"], total, stress)
    su = cone_strength(resistance - total, record["cone_factor"])
    return su, "undrained_cpt_cone_factor", "cone", record


def _strength_of_history(sent, stress, total):
    record = {
        "strength_ratio": float(sent.get("strength_ratio", 0.22)),
        "overconsolidation_ratio": float(sent["overconsolidation_ratio"]),
        "exponent_factor": float(sent.get("exponent_factor", 0.8)),
    }
    return _grown(stress, record), "undrained_shansep", "stress_history", record


def _strength_of_index(sent, stress, total):
    plasticity = float(sent["plasticity_index_ratio"])
    record = {
        "plasticity_index_ratio": plasticity,
        "strength_ratio": 0.11 + 0.37 * plasticity,
        "overconsolidation_ratio": float(sent["overconsolidation_ratio"]),
        "exponent_factor": float(sent.get("exponent_factor", 0.8)),
    }
    return _grown(stress, record), "undrained_skempton_1957", "stress_history", record


def _grown(stress, record):
    """s'_v S OCR^m."""
    ratio = record["overconsolidation_ratio"] ** record["exponent_factor"]
    return stress * record["strength_ratio"] * ratio


def _angle_of_density(sent, stress, total):
    """phi_cv + 3 I_R, with p' sent or s'_v sqrt(N_q) of the angle found, by bisection."""
    density, critical = float(sent["relative_density_ratio"]), base(sent["critical_friction_angle"])

    def mean(angle):
        if "mean_stress" in sent:
            return base(sent["mean_stress"])
        bearing = stress * math.sqrt(prandtl_nq(min(angle, GREATEST_ANGLE)))
        return max(bearing, LEAST_MEAN_STRESS)

    def dilatancy(angle):
        return min(max(density * (10.0 - math.log(mean(angle))) - 1.0, 0.0), 4.0)

    low, high = critical, critical + 12.0
    for _ in range(200):
        middle = 0.5 * (low + high)
        if middle < critical + 3.0 * dilatancy(middle):
            low = middle
        else:
            high = middle
    angle = 0.5 * (low + high)
    record = {
        "relative_density_ratio": density,
        "critical_friction_angle": critical,
        "mean_stress": mean(angle),
        "dilatancy_ratio": dilatancy(angle),
    }
    return critical + 3.0 * dilatancy(angle), "friction_bolton_1986", "density", record


DRAINED = {
    "from_spt": (_angle_of_count, "test_depth"),
    "from_cpt": (_angle_of_cone, "test_depth"),
    "from_index": (_angle_of_density, "reference_depth"),
}
UNDRAINED = {
    "from_spt": (_strength_of_count, "test_depth"),
    "from_cpt": (_strength_of_cone, "test_depth"),
    "from_stress_history": (_strength_of_history, "reference_depth"),
    "from_index": (_strength_of_index, "reference_depth"),
}


def strength(ground, layer, way):
    """(undrained strength or friction angle, record of how it was found or None), or None."""
    undrained = layer.kind in ("clay", "silt")
    if not undrained and layer.kind not in ("sand", "gravel"):
        return None
    given = "undrained_strength" if undrained else "friction_angle"
    if given in way:
        return base(way[given]), None
    ways = UNDRAINED if undrained else DRAINED
    (name,) = [n for n in ways if n in way]
    find, depth_name = ways[name]
    depth = _depth(layer, way[name], depth_name)
    if not layer.top <= depth <= layer.bottom or depth == 0.0:
        raise StrengthFault("test_outside_layer")
    stress, total = ground.stress(depth), ground.total_stress(depth)
    if stress <= 0.0:
        raise StrengthFault("effective_stress_not_positive")
    value, correlation, kind, steps = find(way[name], stress, total)
    record = {
        "layer": layer.label,
        "correlation": correlation,
        "depth": depth,
        "total_stress": total,
        "effective_stress": stress,
        kind: steps,
    }
    if not undrained and value > GREATEST_ANGLE:
        record["friction_angle_before_limit"] = value
        value = GREATEST_ANGLE
    least, greatest = LEAST_ANGLE, GREATEST_ANGLE
    if undrained:
        least, greatest = LEAST_STRENGTH, GREATEST_STRENGTH
    if not least <= value <= greatest:
        raise StrengthFault("derived_strength_outside")
    record["undrained_strength" if undrained else "friction_angle"] = value
    return value, record
