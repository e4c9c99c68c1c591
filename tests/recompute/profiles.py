"""Random requests of `helix-capacity`, the same on every run. What they should give is not here.

Every draw comes from `random.Random(SEED).random()`, whose sequence Python guarantees. Values
are rounded to a few digits and sent in units drawn one by one.
"""

import random

import soils
from bases import draw_basis
from options import draw_methods
from plans import draw_group
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
    "torque": ("kN_m", "kN_m", "ft_lbf", "ft_lbf", "N_m", "kip_ft", "in_lbf", "kip_in"),
    "pressure": ("MPa", "psi", "psi", "bar", "kPa"),
    "factor": ("per_m", "per_ft"),
    "displacement": ("cm3_per_rev", "in3_per_rev"),
    "speed": ("rpm", "rpm", "rev_per_s"),
    "time": ("h", "day", "min"),
    "pure": ("1",),
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
    # with a cut the soil is given from existing grade, the pile from final grade
    change, cut = soils.grade_change(draw)
    bottoms = soils.boundaries(draw, count, (near[0] + cut, near[1] + cut), bottom + cut)
    soil = {"layers": soils.layers(draw, style, bottoms, plates[0][0] + cut)}
    if rocky:
        soils.rock_below(draw, soil["layers"], lowest + cut + 0.3)
    soils.water(draw, soil, [depth + cut for depth, _ in plates], bottom + cut, cut)
    if change:
        soil["grade_change"] = change
    soils.place_tests(draw, soil)
    if draw.chance(0.08):
        hazard = draw.pick(("boulders", "collapsible", "sensitive", "liquefiable", "permafrost"))
        clear = [l for l in soil["layers"] if base(l["bottom"]) < near[0] + cut - plates[0][1]]
        draw.pick(clear or soil["layers"])["hazards"] = [hazard]
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
    group = draw_group(draw, request)
    if group:
        request["group"] = group
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
