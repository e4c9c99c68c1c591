"""Resistance of a pile in one direction, as the service answers it, from a request.

Written from the published methods and from what the service says of its own: `GET /v1/methods`
and the descriptions in the document. The result has the shape of the answer, with plain
numbers in kN, m and kPa in place of quantities.
"""

import factors
from adhesion import shaft_adhesion
from bearing import cohesion_factor, soil_bearing
from cylinder import cylindrical_shear
from punching import punching_limit, ultimate_by_punching


def _zone_bearing(pile, helix, tension, credited):
    rows = []
    for part in pile.zone_parts(helix, tension):
        layer, law, factor, bearing = part.layer, "no_credit", 0.0, 0.0
        above = part.bottom <= pile.credit_depth and part.height > 0.0
        if credited and layer.credited and not above:
            law, factor, bearing = soil_bearing(pile, helix, layer, tension)
        row = {
            "layer": layer.label,
            "top": part.top,
            "bottom": part.bottom,
            "law": law,
            "bearing_factor": factor,
            "bearing": bearing,
        }
        if layer.su is not None:
            row["undrained_strength"] = layer.su
        if layer.cohesion > 0.0 and factor > 0.0 and not tension:
            row["cohesion_bearing_factor"] = cohesion_factor(pile, helix, layer)
        rows.append(row)
    return rows


def _together(pile, rows):
    """Bearing of the zone."""
    if pile.methods["bearing_zone_rule"] == "weakest":
        return min(row["bearing"] for row in rows)
    height = sum(row["bottom"] - row["top"] for row in rows)
    if height == 0.0:
        return rows[0]["bearing"]
    return sum(row["bearing"] * (row["bottom"] - row["top"]) for row in rows) / height


def _stress_limits(pile, helix, rows):
    """Effective stress at 10 and 20 diameters, where in sand and deeper than that."""
    labels = {row["layer"] for row in rows}
    sand = any(layer.phi is not None for layer in pile.ground.layers if layer.label in labels)
    limits = {}
    for name, diameters in (("loose", 10.0), ("dense", 20.0)):
        if sand and helix.depth > diameters * helix.diameter:
            limits[name] = pile.ground.stress(diameters * helix.diameter)
    return limits


def helix_bearing(pile, helix, tension):
    """One helix for itself."""
    reason = pile.no_credit(helix, tension)
    rows = _zone_bearing(pile, helix, tension, reason is None)
    bearing = 0.0 if reason else _together(pile, rows)
    area = pile.area(helix, tension)
    found = {
        "label": helix.label,
        "diameter": helix.diameter,
        "depth": helix.depth,
        "depth_ratio": helix.depth / helix.diameter,
        "area": area,
        "effective_stress": pile.ground.stress(helix.depth),
        "bearing": bearing,
        "resistance": area * bearing,
        "zone": rows,
    }
    if reason:
        found["no_credit"] = reason
    elif not tension:
        limit = punching_limit(pile, helix, bearing)
        if limit:
            found["punching"] = limit
    limits = _stress_limits(pile, helix, rows)
    if limits:
        found["stress_limits"] = limits
    return found


def embedment(pile, helix):
    """Shallow or deep, by the soil above the top helix in credit."""
    height = pile.embedment(helix)
    ratio = height / helix.diameter
    layer = pile.ground.touching(helix.depth, below=False)
    if layer.su is not None:
        critical = factors.critical_clay(pile.methods["clay_critical_embedment"], layer.su)
    else:
        critical = factors.critical_sand(layer.phi)
    return {
        "helix": helix.label,
        "embedment": height,
        "embedment_ratio": ratio,
        "critical_ratio": critical,
        "mode": "deep" if ratio >= critical else "shallow",
    }


def resistance(pile, tension):
    """All of one direction, without the design capacity."""
    bearings = [helix_bearing(pile, helix, tension) for helix in pile.helices]
    total = sum(b["resistance"] for b in bearings)
    found = {
        "direction": "tension" if tension else "compression",
        "individual_bearing": {"total": total, "helices": bearings},
    }
    credited = [
        (helix, b) for helix, b in zip(pile.helices, bearings) if "no_credit" not in b
    ]
    least, mode = total, "individual_bearing"
    if len(credited) >= 2:
        cylinder = cylindrical_shear(pile, credited, tension)
        found["cylindrical_shear"] = cylinder
        if cylinder["total"] < total:
            least, mode = cylinder["total"], "cylindrical_shear"
    if tension and credited:
        found["embedment"] = embedment(pile, credited[0][0])
    found["shaft_adhesion"] = shaft_adhesion(pile)
    found["governing_mode"] = mode
    found["ultimate"] = least + found["shaft_adhesion"]
    held = None if tension else ultimate_by_punching(found, bearings)
    if held is not None:
        found["ultimate_by_punching"] = held
    return found
