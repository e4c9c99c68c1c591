"""The cylinder of soil between the helices in credit, gap by gap and layer by layer."""

import math

import factors


def _shear_stress(pile, part, tension, ratio):
    """(K where there is one, mean shear stress) of one layer of a gap."""
    layer = part.layer
    if not layer.credited:
        return None, 0.0
    if layer.su is not None:
        return None, layer.su
    stress = pile.ground.mean_stress(part.top, part.bottom)
    at_rest = not tension or pile.methods["cylinder_lateral_stress"] == "at_rest"
    if at_rest:
        friction = factors.at_rest_friction(layer.phi)
        return friction / factors.tan(layer.phi), stress * friction
    lateral = factors.lateral_uplift(layer.phi, ratio)
    return lateral, stress * lateral * factors.tan(layer.phi)


def _gap(pile, upper, lower, tension, ratio):
    diameter = (upper.diameter + lower.diameter) / 2.0
    rows = []
    for part in pile.ground.parts(upper.depth, lower.depth):
        lateral, stress = _shear_stress(pile, part, tension, ratio)
        row = {
            "layer": part.layer.label,
            "top": part.top,
            "bottom": part.bottom,
            "mean_shear_stress": stress,
            "shear": math.pi * diameter * part.height * stress,
        }
        if lateral is not None:
            row["lateral_stress_ratio"] = lateral
        rows.append(row)
    length = lower.depth - upper.depth
    return {
        "upper": upper.label,
        "lower": lower.label,
        "length": length,
        "spacing_ratio": length / lower.diameter,
        "mean_diameter": diameter,
        "shear": sum(row["shear"] for row in rows),
        "parts": rows,
    }


def cylindrical_shear(pile, credited, tension):
    """End helix plus shear; `credited` are (helix, its bearing) from the top down."""
    helices = [helix for helix, _ in credited]
    ratio = pile.embedment(helices[0]) / helices[0].diameter
    gaps = [
        _gap(pile, upper, lower, tension, ratio)
        for upper, lower in zip(helices, helices[1:])
    ]
    end, bearing = credited[0] if tension else credited[-1]
    shear = sum(gap["shear"] for gap in gaps)
    return {
        "total": bearing["resistance"] + shear,
        "end_helix": end.label,
        "end_bearing": bearing["resistance"],
        "shear": shear,
        "gaps": gaps,
    }
