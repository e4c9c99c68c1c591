"""Which requests cannot be answered, and with what codes the service has to say so.

From the texts of the codes in the service's catalogue of problems; no numbers here. What the
soil about a helix is, is asked only of layers and helices that have no fault of their own.
"""

from pile import Pile
from units import base

TOLERANCE = 1e-9


def _geometry_faults(soil):
    depth = 0.0
    for layer in soil["layers"]:
        top, bottom = base(layer["top"]), base(layer["bottom"])
        if bottom <= top:
            yield "layer_inverted"
        if top > depth + TOLERANCE:
            yield "layer_gap"
        if top < depth - TOLERANCE:
            yield "layer_overlap"
        depth = bottom


def _weight_faults(ground):
    for layer in ground.layers:
        more = layer.saturated - layer.moist
        if more < 0.0:
            yield "layer_saturated_lighter"
        if more > ground.water.weight:
            yield "layer_saturated_too_heavy"


def _stress_faults(ground):
    """The pore pressure must leave some of the weight, wherever its line or the soil breaks."""
    depths = [layer.bottom for layer in ground.layers]
    depths += ground.water.cuts(0.0, ground.bottom)
    if any(ground.stress(depth) <= 0.0 for depth in depths):
        yield "effective_stress_not_positive"


def _plate_faults(pile):
    depths = [helix.depth for helix in pile.helices]
    if len(set(depths)) < len(depths):
        yield "helices_coincide"
    for helix in pile.helices:
        if helix.diameter <= pile.across:
            yield "helix_not_wider_than_shaft"
        if helix.depth > pile.ground.bottom:
            yield "helix_below_profile"


def _zone_faults(pile, compressed):
    """The soil each helix bears on; the width term takes at least one diameter of it."""
    for helix in pile.helices:
        reach = helix.depth
        if compressed:
            reach = pile.zone(helix, False)[1]
            if pile.methods["width_term"] == "include":
                reach = max(reach, helix.depth + helix.diameter)
            if reach > pile.ground.bottom + TOLERANCE or helix.depth == pile.ground.bottom:
                yield "profile_ends_in_zone"
        for layer in pile.ground.layers:
            touched = compressed and layer.top == helix.depth
            if layer.kind == "rock" and (layer.top < reach or touched):
                yield "helix_in_rock"


def hazard_faults(pile, directions):
    """Ground noted for a hazard where a helix lies in it, bears on it or straddles it."""
    first, last = pile.helices[0].depth, pile.helices[-1].depth
    if any(part.layer.hazardous for part in pile.ground.parts(first, last)):
        yield "helix_in_hazard"
    for helix in pile.helices:
        layers = [pile.ground.touching(helix.depth, below) for below in (False, True)]
        for direction in directions:
            layers += [part.layer for part in pile.zone_parts(helix, direction == "tension")]
        if any(layer and layer.hazardous for layer in layers):
            yield "helix_in_hazard"


def _group_faults(pile, request):
    """Sides that lean out hold in sand and gravel alone."""
    if (request.get("group") or {}).get("uplift_block") == "leaning_sides":
        parts = pile.ground.parts(0.0, pile.helices[-1].depth)
        if any(part.layer.phi is None for part in parts):
            yield "leaning_sides_in_other_soil"


def _choice_faults(pile, request):
    family, _ = pile.option("drained_bearing")
    if family in ("terzaghi_1943", "own") and pile.methods["width_term"] == "include":
        yield "no_closed_width_factor"
    if pile.square and pile.option("shaft_adhesion")[0] == "alpha":
        yield "adhesion_on_square_shaft"
    eurocode = (request.get("design_basis") or {}).get("eurocode_7") or {}
    tests = (eurocode.get("proof") or {}).get("load_tests", {}).get("tests")
    for side in eurocode.get("actions") or {}:
        # load that nothing was tested for
        if tests and not any(side in test for test in tests):
            yield "missing_member"
    basis = (request.get("design_basis") or {}).get("allowable_stress") or {}
    if "tension_safety_factor" in basis and "uplift_clause" in basis:
        yield "tension_factor_twice"


def predicted(request, directions):
    """Codes of all faults, each once."""
    pile = Pile(request)
    found = set(_geometry_faults(request["soil"])) | set(_weight_faults(pile.ground))
    unplaced = {"test_outside_layer"} & pile.ground.faults
    if found:
        found |= unplaced
    else:
        found = set(_stress_faults(pile.ground)) or pile.ground.faults
    found |= set(_plate_faults(pile))
    if not found:
        found = set(_zone_faults(pile, "compression" in directions))
        found |= set(hazard_faults(pile, directions))
        if "tension" in directions:
            found |= set(_group_faults(pile, request))
    return found | set(_choice_faults(pile, request))
