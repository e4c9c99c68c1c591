"""What the service must answer to a request, as far as it is recomputed."""

from capacity import resistance
from design import design_capacity, factors_in_force, ultimates
from group import group_findings
from pile import Pile
from units import base, is_quantity

DIRECTIONS = {
    None: ("compression", "tension"),
    "both": ("compression", "tension"),
    "compression": ("compression",),
    "tension": ("tension",),
}


def directions(request):
    """Directions of load that are asked."""
    return DIRECTIONS[request.get("directions")]


def _plain(node):
    """A part of a request with numbers in place of quantities."""
    if is_quantity(node):
        return base(node)
    if isinstance(node, dict):
        return {name: _plain(value) for name, value in node.items()}
    return float(node) if isinstance(node, (int, float)) else node


def _choices(pile):
    """Every choice of method in force, defaults filled in."""
    chosen = _plain({"no_credit_above": 0.0, **pile.methods})
    for name, member, default in (
        ("uplift_sand", "tension_factor", 0.7),
        ("shaft_adhesion", "ignored_depth", 1.5),
    ):
        if isinstance(chosen[name], dict):
            for members in chosen[name].values():
                members.setdefault(member, default)
    return chosen


def expected(request):
    """(pile, the parts of the result that are recomputed)."""
    pile, basis = Pile(request), request.get("design_basis")
    found = {}
    for name in directions(request):
        side = resistance(pile, name == "tension")
        design = design_capacity(basis, side["ultimate"], name) if basis else None
        if design:
            side["design"] = design
        found[name] = side
    found["factors"] = factors_in_force(basis, directions(request))
    found["ultimates"] = []
    if "compression" in found:
        found["ultimates"] = ultimates(basis, found["compression"]["ultimate"])
    found["methods"] = _choices(pile)
    if "group" in request:
        sides = {name: found[name] for name in directions(request)}
        found["group"] = group_findings(request, pile, sides)
    if pile.ground.derived:
        found["derived_strengths"] = pile.ground.derived
    return pile, found
