"""Bearing of one soil on a helix, by its own law: (law, factor, bearing), and N_c of cohesion."""

import factors
from general import deep_clay


def _undrained_nc(pile, ratio):
    chosen, members = pile.option("undrained_bearing")
    if chosen == "fixed_nine":
        return 9.0
    if chosen == "cavity_expansion":
        return factors.cavity_nc(members["reduced_rigidity_ratio"])
    return factors.skempton_nc(ratio)


def _nq(pile, helix, layer):
    ratio = helix.depth / helix.diameter
    return pile.plain_nq(layer.phi, ratio)


def cohesion_factor(pile, helix, layer):
    """N_c = (N_q - 1) cot phi, with the factors of a circle where they are asked for."""
    phi = pile.bearing_angle(layer.phi)
    family, _ = pile.option("drained_bearing")
    ratio = helix.depth / helix.diameter
    plain = pile.plain_nc(phi)
    if pile.methods["shape_depth_factors"] == "none":
        return plain
    return plain * factors.circle_cohesion(family, phi, plain, ratio)


def compression_bearing(pile, helix, layer):
    """(law, factor, bearing) of one soil below a helix."""
    if layer.su is not None:
        factor = _undrained_nc(pile, helix.depth / helix.diameter)
        bearing = deep_clay(layer.su) if factor == 9.0 else layer.su * factor
        return "undrained_bearing", factor, bearing
    factor = _nq(pile, helix, layer)
    if pile.methods["shape_depth_factors"] == "published":
        family, _ = pile.option("drained_bearing")
        ratio = helix.depth / helix.diameter
        factor *= factors.circle_overburden(family, pile.bearing_angle(layer.phi), ratio)
    bearing = pile.limited_stress(helix) * factor
    if layer.cohesion > 0.0:
        bearing += pile.bearing_cohesion(layer.cohesion) * cohesion_factor(pile, helix, layer)
    if pile.methods["width_term"] == "include":
        ngamma = factors.NGAMMA[pile.option("drained_bearing")[0]](pile.bearing_angle(layer.phi))
        weight = pile.ground.mean_effective_weight(helix.depth, helix.depth + helix.diameter)
        bearing += 0.5 * weight * helix.diameter * ngamma * 0.6
    return "drained_bearing", factor, bearing


def _uplift_clay(pile, helix, layer, ratio):
    growth = factors.breakout_clay(ratio)
    shallow = growth * layer.su + pile.ground.stress(helix.depth)
    share = pile.methods["clay_tension_factor"]
    deep = share * deep_clay(layer.su)
    if shallow <= deep:
        return "undrained_breakout", growth, shallow
    return "undrained_bearing", share * 9.0, deep


def _uplift_sand(pile, helix, layer, ratio):
    chosen, members = pile.option("uplift_sand")
    growth = factors.breakout_sand(layer.phi, ratio)
    shallow = growth * pile.ground.stress(helix.depth)
    factor = _nq(pile, helix, layer)
    if chosen == "nq_tension":
        factor *= members.get("tension_factor", 0.7)
    deep = factor * pile.limited_stress(helix)
    held = chosen == "nq_tension" and ratio >= factors.critical_sand(layer.phi)
    if shallow <= deep and not held:
        return "drained_breakout", growth, shallow
    return "drained_bearing", factor, deep


def soil_bearing(pile, helix, layer, tension):
    if not tension:
        return compression_bearing(pile, helix, layer)
    ratio = pile.embedment(helix) / helix.diameter
    if layer.su is not None:
        return _uplift_clay(pile, helix, layer, ratio)
    return _uplift_sand(pile, helix, layer, ratio)
