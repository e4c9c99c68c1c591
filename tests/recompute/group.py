"""A group of piles: its piles together against the block of soil between them."""

import math

import factors
from design import design_capacity
from pile import Helix
from plan import Plan

# Breadths below the base of a block within which soil is looked at.
LOOK = 2.0
UNBORNE = ("fill", "organic", "frozen")


def _shear_stress(pile, part):
    """Mean shear stress on the side of a block in one layer."""
    layer = part.layer
    if layer.kind in UNBORNE or layer.hazardous or layer.kind == "rock":
        return 0.0
    if layer.su is not None:
        return layer.su
    stress = pile.ground.mean_stress(part.top, part.bottom)
    return stress * factors.at_rest_friction(layer.phi)


def _sides(pile, plan, top, bottom):
    """The sides from the top down; nothing above the depth of credit."""
    rows = []
    cut = min(max(pile.credit_depth, top), bottom)
    for part in pile.ground.parts(top, cut) + pile.ground.parts(cut, bottom):
        stress = _shear_stress(pile, part) if part.bottom > pile.credit_depth else 0.0
        rows.append(
            {
                "layer": part.layer.label,
                "top": part.top,
                "bottom": part.bottom,
                "mean_shear_stress": stress,
                "shear": stress * part.height * plan.perimeter,
            }
        )
    return rows


def _base_bearing(pile, plan, layer, base_depth):
    """What a layer takes of the load of a base, spread down to it by one across for two down."""
    top = max(layer.top, base_depth)
    deeper = top - base_depth
    breadth, length = plan.breadth + deeper, plan.length + deeper
    if layer.kind in UNBORNE or layer.hazardous:
        return 0.0
    if layer.su is not None:
        shape = 5.0 * (1.0 + 0.2 * breadth / length)
        bearing = layer.su * shape * (1.0 + 0.2 * min(top / breadth, 2.5))
    else:
        phi = pile.bearing_angle(layer.phi)
        nq = pile.plain_nq(layer.phi, 0.0)
        bearing = pile.limited_stress(Helix("", breadth, top)) * nq
        bearing += pile.bearing_cohesion(layer.cohesion) * pile.plain_nc(phi)
    return bearing * breadth * length / (plan.breadth * plan.length)


def _compression_block(pile, plan, credited, full_depth):
    """The block pushed down, or None where the soil is not known to one breadth below."""
    base_depth = credited[-1].depth
    rock = any(layer.kind == "rock" for layer in pile.ground.layers)
    if pile.ground.bottom < base_depth + plan.breadth and not rock:
        return None
    least = None
    for layer in pile.ground.layers:
        if layer.bottom <= base_depth:
            continue
        if layer.kind == "rock" or layer.top >= base_depth + LOOK * plan.breadth:
            break
        bearing = _base_bearing(pile, plan, layer, base_depth)
        if least is None or bearing < least[0]:
            least = (bearing, layer.label)
    sides = _sides(pile, plan, 0.0 if full_depth else credited[0].depth, base_depth)
    shear = sum((side["shear"] for side in sides), 0.0)
    base = least[0] * plan.area
    return {
        "base_depth": base_depth,
        "bearing": least[0],
        "bearing_layer": least[1],
        "base": base,
        "shear": shear,
        "sides": sides,
        "total": base + shear,
    }


def _leaning_weight(pile, plan, depth):
    """Effective weight within sides that lean out by 1 for 4 up, exact in each piece."""
    cuts = {0.0, depth, *pile.ground.water.cuts(0.0, depth)}
    cuts.update(layer.bottom for layer in pile.ground.layers if layer.bottom < depth)
    cuts = sorted(cuts)

    def area(z):
        out = (depth - z) / 4.0
        return plan.area + plan.perimeter * out + 4.0 * out * out

    total = 0.0
    for a, b in zip(cuts, cuts[1:]):
        weight = pile.ground.stress(b) - pile.ground.stress(a)
        total += weight * (area(a) + 4.0 * area(0.5 * (a + b)) + area(b)) / 6.0
    return total


def _uplift_block(pile, plan, credited, chosen, members):
    """The block pulled up, or None."""
    if chosen == "given":
        weight, shear = members["effective_weight"], members["ultimate_shear"]
        return {
            "from_request": True,
            "effective_weight": weight,
            "shear": shear,
            "total": weight + shear,
        }
    if not credited:
        return None
    depth = credited[-1].depth
    if chosen == "leaning_sides":
        weight, sides = _leaning_weight(pile, plan, depth), []
        volume = plan.area * depth + plan.perimeter * depth**2 / 8.0 + depth**3 / 12.0
    else:
        weight, volume = plan.area * pile.ground.stress(depth), plan.area * depth
        sides = _sides(pile, plan, 0.0, depth)
    shear = sum((side["shear"] for side in sides), 0.0)
    found = {
        "from_request": False,
        "base_depth": depth,
        "volume": volume,
        "effective_weight": weight,
        "shear": shear,
        "total": weight + shear,
    }
    return {**found, "sides": sides} if sides else found


def _credited(pile, side):
    rows = zip(pile.helices, side["individual_bearing"]["helices"])
    return [helix for helix, row in rows if "no_credit" not in row]


def _lesser(piles, block):
    if block is not None and block < piles:
        return block, "block"
    return piles, "piles"


def _block_capacity(basis, block, tension, factor):
    """Capacity of the block on a basis other than EN 1997-1."""
    ((kind, members),) = basis.items()
    if kind == "allowable_stress" and tension:
        if members.get("uplift_clause") == "new_york_city":
            divisor = 2.0 if members.get("proof") == "load_test" else 2.5
            return block["total"] / divisor
        return 2.0 / 3.0 * (block["effective_weight"] + block["shear"])
    return block["total"] * factor


def _design(basis, side, name, number, block, counts):
    """Capacity of the group, or None, as where the block in compression is not known."""
    if (name == "compression" or counts) and "eurocode_7" in basis:
        return None
    if name == "compression" and block is None:
        return None
    ultimate = side.get("ultimate_by_punching", side["ultimate"])
    one = design_capacity(basis, ultimate, name)
    if one is None:
        return None
    # the factor of the pile
    factor = design_capacity(basis, 1e-6, name)["capacity"] / 1e-6
    piles = number * one["capacity"]
    found = {"kind": one["kind"], "piles": piles}
    capacity = None
    if block is not None and counts:
        capacity = _block_capacity(basis, block, name == "tension", factor)
        found["block"] = capacity
    found["capacity"], found["governing"] = _lesser(piles, capacity)
    return found


def _direction(request, pile, plan, side, name):
    asked, basis = request["group"], request.get("design_basis")
    number = plan.count * (plan.efficiency or 1.0)
    ultimate = side.get("ultimate_by_punching", side["ultimate"])
    credited, piles = _credited(pile, side), number * ultimate
    found, counts = {"piles": piles}, True
    if name == "compression":
        full_depth = asked.get("shear_height") == "full_depth"
        block = _compression_block(pile, plan, credited, full_depth) if credited else None
    else:
        block = _uplift_block(pile, plan, credited, *plan.uplift_block)
        counts = plan.counts(basis, pile, credited)
        found["block_counts"] = counts
    if block is not None:
        found["block"] = block
    least = block["total"] if block is not None and counts else None
    found["ultimate"], found["governing"] = _lesser(piles, least)
    design = _design(basis, side, name, number, block, counts) if basis else None
    if design:
        found["design"] = design
    return found


def group_findings(request, pile, sides):
    """The group of a request; `sides` are the directions of one pile."""
    plan = Plan(request["group"], max(helix.diameter for helix in pile.helices))
    found = {
        "pile_count": float(plan.count),
        "least_spacing": plan.spacing,
        "spacing_ratio": plan.spacing / plan.diameter,
        "block_plan": {
            "breadth": plan.breadth,
            "length": plan.length,
            "area": plan.area,
            "perimeter": plan.perimeter,
        },
    }
    if plan.efficiency is not None:
        sent = "efficiency_factor" in request["group"]
        found["efficiency"] = {"efficiency_factor": plan.efficiency, "from_request": sent}
    # by the direction in which the block is lifted, where that is asked
    credited = _credited(pile, sides.get("tension") or sides["compression"])
    if credited:
        found["eurocode_block_spacing"] = plan.eurocode_spacing(pile, credited)
    for name, side in sides.items():
        found[name] = _direction(request, pile, plan, side, name)
    return found
