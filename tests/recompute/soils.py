"""Random layers of soil with their weights and water; every kind of the service is among them."""

from explored import drained_way, undrained_way
from ground import Water
from units import base, quantity


def boundaries(draw, count, near, bottom):
    """Bottoms of the layers, many of them about the helices."""
    found = []
    for _ in range(count - 1):
        low, high = near if draw.chance(0.65) else (0.2, bottom - 0.2)
        depth = draw.between(low, high)
        if 0.15 < depth < bottom - 0.15 and all(abs(depth - other) > 0.12 for other in found):
            found.append(depth)
    return sorted(found) + [bottom]


def _kind(draw, style, first, shallow):
    """Kind of soil of a layer; soil without credit mostly at the surface."""
    if first and draw.chance(0.25 if shallow else 0.03):
        return draw.weighted((("fill", 0.4), ("organic", 0.3), ("frozen", 0.3)))
    if not first and draw.chance(0.02):
        return draw.pick(("fill", "organic"))
    coarse = "gravel" if draw.chance(0.15) else "sand"
    if style == "sand":
        return coarse
    if style == "clay":
        return draw.pick(("clay", "silt"))
    return draw.weighted(((coarse, 0.5), ("clay", 0.35), ("silt", 0.15)))


def _fill(draw):
    """Fill without credit, or engineered fill."""
    if draw.chance(0.6):
        return {"fill": {}}
    kind = draw.pick(("clay", "sand", "gravel"))
    way = undrained_way(draw) if kind == "clay" else drained_way(draw, kind)
    return {"fill": {"engineered": {"record": "placed in lifts", kind: way}}}


def _soil(draw, kind):
    if kind in ("clay", "silt"):
        return {kind: undrained_way(draw)}
    if kind in ("sand", "gravel"):
        return {kind: drained_way(draw, kind)}
    return _fill(draw) if kind == "fill" else {kind: {}}


def _weights(draw, layer):
    """Unit weights, as such or from the dry soil."""
    if draw.chance(0.15):
        dry = draw.between(13.0, 16.0)
        layer["dry_unit_weight"] = draw.quantity("weight", dry)
        # less water than fills the pores between grains of 2.6 to 2.75
        layer["water_content_ratio"] = round(draw.between(0.03, 0.15), 3)
        if draw.chance(0.7):
            layer["specific_gravity_ratio"] = round(draw.between(2.6, 2.75), 2)
        else:
            layer["saturated_unit_weight"] = draw.quantity("weight", draw.between(18.5, 20.0))
        return
    moist = draw.between(14.0, 19.5)
    layer["unit_weight"] = draw.quantity("weight", moist)
    if draw.chance(0.75):
        layer["saturated_unit_weight"] = draw.quantity("weight", moist + draw.between(0.1, 3.0))


def layers(draw, style, bottoms, top_helix):
    """Layers from the surface to the last of the bottoms."""
    found, top = [], quantity(0, draw.pick(("m", "ft")))
    for number, depth in enumerate(bottoms):
        bottom = draw.quantity("length", depth)
        kind = _kind(draw, style, number == 0, depth < 0.8 * top_helix)
        layer = {"top": top, "bottom": bottom, "soil": _soil(draw, kind)}
        _weights(draw, layer)
        if draw.chance(0.3):
            layer["label"] = f"{kind} {number + 1}"
        found.append(layer)
        top = bottom
    return found


def _pressures(draw, first, bottom):
    """Pore pressures from a depth down: rising less or more than at rest, at times perched."""
    points = [(first, 0.0)]
    if draw.chance(0.4):
        # perched water: up, back to zero, dry for a while
        for share, pressure in ((0.25, 2.0), (0.5, 0.0), (0.75, 0.0)):
            points.append((first + share * (bottom - first), pressure))
    depth, pressure = points[-1]
    for _ in range(draw.whole(1, 2)):
        step = draw.between(0.5, 2.0)
        depth += step
        pressure += step * draw.between(3.0, 11.5)
        points.append((depth, pressure))
    rows = []
    for depth, pressure in points:
        sent = draw.quantity("stress", pressure) if pressure else quantity(0, "kPa")
        rows.append({"depth": draw.quantity("length", depth, 6), "pressure": sent})
    return rows


def water(draw, soil, depths, bottom, grade):
    """A water table or a profile of pressure, in many cases between the helices; or none."""
    place = draw.weighted((("within", 0.45), ("above", 0.2), ("below", 0.1), ("none", 0.25)))
    if place == "none":
        return
    if place == "within" and len(depths) > 1:
        depth = draw.between(depths[0], depths[-1])
    elif place == "below":
        depth = draw.between(depths[-1], bottom)
    else:
        depth = draw.between(grade + 0.01, depths[0])
    if draw.chance(0.3):
        soil["pore_pressures"] = _pressures(draw, max(depth, grade + 0.3), bottom)
    else:
        soil["water_depth"] = draw.quantity("length", depth)
    if draw.chance(0.15):
        soil["water_unit_weight"] = draw.quantity("weight", draw.between(9.75, 10.3))


def _ways(layer):
    """The ways to a strength that a layer was sent with, engineered fill included."""
    for members in layer["soil"].values():
        placed = [m for m in members.get("engineered", {}).values() if isinstance(m, dict)]
        for way in placed or [members]:
            yield from ((name, way[name]) for name in way if name.startswith("from_"))


def place_tests(draw, soil):
    """Depths of some tests within their layers, and silty sand where they are below water."""
    pressure = Water(soil).pressure
    for layer in soil["layers"]:
        top, bottom = base(layer["top"]), base(layer["bottom"])
        for name, members in _ways(layer):
            depth = 0.5 * (top + bottom)
            if draw.chance(0.35):
                word = "test_depth" if name in ("from_spt", "from_cpt") else "reference_depth"
                depth = draw.between(top + 0.1 * (bottom - top), bottom - 0.1 * (bottom - top))
                members[word] = draw.quantity("length", depth)
            sand_count = name == "from_spt" and "plasticity_index_ratio" not in members
            if sand_count and members["form"] != "n1_60" and pressure(depth) > 0.5:
                if draw.chance(0.5):
                    members["silty_below_water"] = True


def grade_change(draw):
    """(change of grade or None, depth of a cut)."""
    if draw.chance(0.85):
        return None, 0.0
    if draw.chance(0.5):
        depth = draw.between(0.05, 1.5)
        return {"cut": {"depth": draw.quantity("length", depth)}}, depth
    members = {
        "height": draw.quantity("length", draw.between(0.05, 1.5)),
        "unit_weight": draw.quantity("weight", draw.between(15.0, 21.0)),
    }
    return {"raise": members}, 0.0


def rock_below(draw, found, depth):
    """Rock from a depth below all that bears, in place of the end of the last layer."""
    last = found[-1]
    rock = {**last, "top": draw.quantity("length", depth), "soil": {"rock": {}}}
    if base(last["top"]) < base(rock["top"]) - 0.1 < base(last["bottom"]) - 0.2:
        last["bottom"] = rock["top"]
        found.append(rock)
