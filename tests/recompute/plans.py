"""Random groups of piles about a pile."""

from units import base


def _array(draw, spacing):
    rows, columns = draw.whole(1, 6), draw.whole(2, 8)
    members = {"row_count": rows, "column_count": columns}
    if rows > 1:
        members["row_spacing"] = draw.quantity("length", spacing * draw.between(1.0, 1.5))
    members["column_spacing"] = draw.quantity("length", spacing * draw.between(1.0, 1.5))
    return {"array": members}


def _positions(draw, spacing):
    """Piles about a grid, none nearer than the spacing."""
    piles = []
    for row in range(draw.whole(1, 3)):
        for column in range(draw.whole(2, 4)):
            x = spacing * (1.4 * column + draw.between(0.0, 0.35))
            y = spacing * (1.4 * row + draw.between(0.0, 0.35))
            piles.append({"x": draw.quantity("length", x), "y": draw.quantity("length", y)})
    return {"positions": {"piles": piles}}


def draw_group(draw, request):
    """A group of the pile of a request, or None."""
    if draw.chance(0.6):
        return None
    largest = max(base(plate["diameter"]) for plate in request["pile"]["helices"])
    spacing = largest * (draw.between(1.05, 1.6) if draw.chance(0.4) else draw.between(1.6, 4.5))
    plan = _array(draw, spacing) if draw.chance(0.6) else _positions(draw, spacing)
    group = {"plan": plan}
    if draw.chance(0.3):
        group["efficiency_factor"] = round(draw.between(0.5, 1.0), 2)
    if draw.chance(0.5):
        group["shear_height"] = draw.pick(("between_helices", "full_depth"))
    block = draw.pick((None, "straight_sides", "leaning_sides", "leaning_sides", "given"))
    sands = all(set(layer["soil"]) <= {"sand", "gravel"} for layer in request["soil"]["layers"])
    if block == "given":
        group["uplift_block"] = {
            "given": {
                "effective_weight": draw.quantity("force", draw.between(20.0, 2000.0)),
                "ultimate_shear": draw.quantity("force", draw.between(20.0, 2000.0)),
            }
        }
    elif block == "straight_sides" or (block and sands):
        group["uplift_block"] = block
    return group
