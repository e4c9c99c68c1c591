"""Which requests cannot be answered, and with what codes the service has to say so.

From the texts of the codes in the service's catalogue of problems; no numbers here. What the
soil about a helix is, is asked only of layers and helices that have no fault of their own.
"""

from pile import Pile
from units import base

TOLERANCE = 1e-9


def _layer_faults(soil):
    weight = base(soil["water_unit_weight"]) if "water_unit_weight" in soil else 9.81
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
        if "saturated_unit_weight" not in layer:
            continue
        more = base(layer["saturated_unit_weight"]) - base(layer["unit_weight"])
        if more < 0.0:
            yield "layer_saturated_lighter"
        if more > weight:
            yield "layer_saturated_too_heavy"


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


def _choice_faults(pile, request):
    chosen = (pile.methods["drained_bearing"], pile.methods["width_term"])
    if chosen == ("terzaghi_1943", "include"):
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
    found = set(_layer_faults(request["soil"])) | set(_plate_faults(pile))
    if not found:
        found = set(_zone_faults(pile, "compression" in directions))
    return found | set(_choice_faults(pile, request))
