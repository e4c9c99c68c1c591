"""Random requests of `helix-capacity`, the same on every run. What they should give is not here.

Every draw comes from `random.Random(SEED).random()`, whose sequence Python guarantees. Values
are rounded to a few digits and sent in units drawn one by one.
"""

import random

from bases import draw_basis
from options import draw_methods
from spoil import spoil
from units import FACTORS, base, quantity

SEED = 20260131
COUNT = 480
# Share of requests that are made unanswerable on purpose.
SPOILED = 0.08

STYLES = (("sand", 0.30), ("mixed", 0.38), ("clay", 0.12), ("any", 0.20))
UNITS = {
    "length": ("m", "m", "ft", "ft", "cm", "in"),
    "size": ("mm", "mm", "in", "in", "cm"),
    "stress": ("kPa", "kPa", "psf", "psf", "ksf", "psi", "MPa"),
    "weight": ("kN_per_m3", "kN_per_m3", "pcf", "pcf", "N_per_m3"),
    "angle": ("deg", "deg", "deg", "rad"),
    "force": ("kN", "kip", "lbf", "N"),
}


class Draw:
    """Draws of all kinds from one stream of numbers between 0 and 1."""

    def __init__(self, seed):
        self._stream = random.Random(seed)

    def chance(self, share):
        return self._stream.random() < share

    def between(self, low, high):
        return low + (high - low) * self._stream.random()

    def whole(self, low, high):
        return low + int((high - low + 1) * self._stream.random())

    def pick(self, items):
        return items[self.whole(0, len(items) - 1)]

    def weighted(self, pairs):
        rest = self._stream.random() * sum(weight for _, weight in pairs)
        for item, weight in pairs:
            rest -= weight
            if rest < 0.0:
                return item
        return pairs[-1][0]

    def quantity(self, kind, value, digits=5):
        """A value given in base units, sent in a drawn unit with few digits."""
        unit = self.pick(UNITS[kind])
        return quantity(float(f"{value / FACTORS[unit]:.{digits}g}"), unit)


def _shaft(draw):
    if draw.chance(0.3):
        return {"square": {"side": draw.quantity("size", draw.between(0.038, 0.057))}}
    return {"round": {"outside_diameter": draw.quantity("size", draw.between(0.048, 0.14))}}


def _diameters(draw, count):
    """From the top down: equal, tapered or in no order."""
    top = draw.between(0.2, 0.45)
    shape = draw.weighted((("tapered", 0.45), ("equal", 0.4), ("any", 0.15)))
    if shape == "equal":
        return [top] * count
    if shape == "any":
        return [draw.between(0.2, 0.5) for _ in range(count)]
    step = draw.between(0.02, 0.06)
    return [max(top - step * n, 0.16) for n in range(count)]


def _depths(draw, diameters):
    """Depths of the plates, shallow in about a third, spaced 1 to 4 diameters."""
    if draw.chance(0.38):
        depth = diameters[0] * draw.between(1.0, 4.5)
    else:
        depth = diameters[0] * draw.between(5.0, 24.0)
    depths = [depth]
    close = draw.chance(0.5)
    for diameter in diameters[1:]:
        depth += diameter * (draw.between(1.0, 2.0) if close else draw.between(2.0, 4.0))
        depths.append(depth)
    return depths


def _pile(draw):
    count = draw.weighted(((1, 0.14), (2, 0.26), (3, 0.27), (4, 0.19), (5, 0.14)))
    diameters = _diameters(draw, count)
    plates = []
    for number, depth in enumerate(_depths(draw, diameters), start=1):
        plate = {
            "diameter": draw.quantity("size", diameters[number - 1]),
            "depth": draw.quantity("length", depth),
        }
        if draw.chance(0.3):
            plate["label"] = f"helix {number}"
        plates.append(plate)
    if draw.chance(0.2):
        plates.reverse()
    return {"shaft": _shaft(draw), "helices": plates}


def _boundaries(draw, count, near, bottom):
    """Bottoms of the layers, many of them about the helices."""
    found = []
    for _ in range(count - 1):
        low, high = near if draw.chance(0.65) else (0.2, bottom - 0.2)
        depth = draw.between(low, high)
        if 0.15 < depth < bottom - 0.15 and all(abs(depth - other) > 0.12 for other in found):
            found.append(depth)
    return sorted(found) + [bottom]


def _kind(draw, style, first, shallow):
    """Kind of soil of a layer; fill and organic soil mostly at the surface."""
    if first and draw.chance(0.2 if shallow else 0.02):
        return draw.pick(("fill", "organic"))
    if not first and draw.chance(0.02):
        return draw.pick(("fill", "organic"))
    if style == "sand":
        return "sand"
    if style == "clay":
        return draw.pick(("clay", "silt"))
    return draw.weighted((("sand", 0.5), ("clay", 0.35), ("silt", 0.15)))


def _soil(draw, kind):
    if kind in ("clay", "silt"):
        strength = draw.weighted(((60.0, 0.6), (150.0, 0.3), (450.0, 0.1)))
        strength *= draw.between(0.1, 1.0)
        return {kind: {"undrained_strength": draw.quantity("stress", strength)}}
    if kind == "sand":
        phi = draw.between(15.5, 26.0) if draw.chance(0.15) else draw.between(26.0, 44.9)
        return {"sand": {"friction_angle": draw.quantity("angle", phi)}}
    return {kind: {}}


def _layers(draw, style, bottoms, top_helix):
    layers, top = [], quantity(0, draw.pick(("m", "ft")))
    for number, depth in enumerate(bottoms):
        bottom = draw.quantity("length", depth)
        kind = _kind(draw, style, number == 0, depth < 0.8 * top_helix)
        moist = draw.between(14.0, 19.5)
        layer = {
            "top": top,
            "bottom": bottom,
            "unit_weight": draw.quantity("weight", moist),
            "soil": _soil(draw, kind),
        }
        if draw.chance(0.75):
            layer["saturated_unit_weight"] = draw.quantity("weight", moist + draw.between(0.1, 3.0))
        if draw.chance(0.3):
            layer["label"] = f"{kind} {number + 1}"
        layers.append(layer)
        top = bottom
    return layers


def _water(draw, soil, depths, bottom):
    """A water table, in many cases between the helices; or none."""
    place = draw.weighted((("within", 0.45), ("above", 0.2), ("below", 0.1), ("none", 0.25)))
    if place == "none":
        return
    if place == "within" and len(depths) > 1:
        depth = draw.between(depths[0], depths[-1])
    elif place == "below":
        depth = draw.between(depths[-1], bottom)
    else:
        depth = draw.between(0.0, depths[0])
    soil["water_depth"] = draw.quantity("length", depth)
    if draw.chance(0.15):
        soil["water_unit_weight"] = draw.quantity("weight", draw.between(9.75, 10.3))


def _request(draw):
    request = {"pile": _pile(draw)}
    plates = sorted((base(h["depth"]), base(h["diameter"])) for h in request["pile"]["helices"])
    methods = draw_methods(draw, "square" in request["pile"]["shaft"])
    reach = (methods or {}).get("bearing_zone_ratio", 2.0)
    lowest = max(depth + reach * diameter for depth, diameter in plates)
    # one in twenty-five may end within the zone, by chance
    bottom = lowest + (draw.between(-0.3, 0.1) if draw.chance(0.04) else draw.between(0.1, 5.0))
    bottom = max(bottom, plates[-1][0] + 0.05)
    near = (plates[0][0] - 2.0 * plates[0][1], lowest)
    style = draw.weighted(STYLES)
    rocky = draw.chance(0.06) and bottom > lowest + 0.4
    count = draw.whole(2 if style in ("sand", "mixed") else 1, 8)
    soil = {"layers": _layers(draw, style, _boundaries(draw, count, near, bottom), plates[0][0])}
    if rocky:
        # rock below all that bears
        last = soil["layers"][-1]
        rock = {**last, "top": draw.quantity("length", lowest + 0.3), "soil": {"rock": {}}}
        if base(last["top"]) < base(rock["top"]) - 0.1:
            last["bottom"] = rock["top"]
            soil["layers"].append(rock)
    _water(draw, soil, [depth for depth, _ in plates], bottom)
    request["soil"] = soil
    if methods:
        request["methods"] = methods
    direction = draw.weighted(
        ((None, 0.5), ("both", 0.38), ("compression", 0.06), ("tension", 0.06))
    )
    if direction:
        request["directions"] = direction
    basis = draw_basis(draw, direction or "both")
    if basis:
        request["design_basis"] = basis
    units = draw.pick((None, "si", "us_customary"))
    if units:
        request["output_units"] = units
    if draw.chance(SPOILED):
        spoil(draw, request)
    return request


def requests():
    """All of them, as items of a batch."""
    draw = Draw(SEED)
    return [{"id": f"r{n:03}", "request": _request(draw)} for n in range(1, COUNT + 1)]
