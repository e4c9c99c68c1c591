"""Ways to make a request one that cannot be answered; which code follows is not said here."""

from units import base, quantity


def _shallow_profile(draw, request):
    """The profile ends within the zone of the lowest helix, or above it."""
    layers = request["soil"]["layers"]
    deepest = max(base(h["depth"]) for h in request["pile"]["helices"])
    depth = deepest + (0.02 if draw.chance(0.6) else -0.05)
    kept = [layer for layer in layers if base(layer["top"]) < depth - 0.01]
    kept[-1]["bottom"] = quantity(round(depth, 4), "m")
    request["soil"]["layers"] = kept


def _rock(draw, request):
    """A layer becomes rock."""
    draw.pick(request["soil"]["layers"])["soil"] = {"rock": {}}


def _width_of_terzaghi(draw, request):
    request["methods"] = {
        **request.get("methods", {}),
        "drained_bearing": "terzaghi_1943",
        "width_term": "include",
    }


def _adhesion_on_square(draw, request):
    request["pile"]["shaft"] = {"square": {"side": draw.quantity("size", 0.045)}}
    request["methods"] = {**request.get("methods", {}), "shaft_adhesion": {"alpha": {}}}


def _coincide(draw, request):
    helices = request["pile"]["helices"]
    helices.append({"diameter": helices[0]["diameter"], "depth": helices[0]["depth"]})


def _narrow(draw, request):
    draw.pick(request["pile"]["helices"])["diameter"] = quantity(120, "mm")
    square = {"square": {"side": quantity(90, "mm")}}
    round_shaft = {"round": {"outside_diameter": quantity(120, "mm")}}
    request["pile"]["shaft"] = draw.pick((square, round_shaft))


def _gap(draw, request):
    layer = draw.pick(request["soil"]["layers"])
    layer["top"] = quantity(base(layer["top"]) + 0.05, "m")


def _plain(layer):
    """Without what goes with a dry unit weight."""
    for name in ("dry_unit_weight", "water_content_ratio", "specific_gravity_ratio"):
        layer.pop(name, None)


def _heavy_water(draw, request):
    layer = draw.pick(request["soil"]["layers"])
    _plain(layer)
    layer["unit_weight"] = quantity(15.5, "kN_per_m3")
    layer["saturated_unit_weight"] = quantity(26.0, "kN_per_m3")


def _lighter_saturated(draw, request):
    layer = draw.pick(request["soil"]["layers"])
    _plain(layer)
    layer["unit_weight"] = quantity(18.0, "kN_per_m3")
    layer["saturated_unit_weight"] = quantity(17.5, "kN_per_m3")


def _factor_twice(draw, request):
    request["design_basis"] = {
        "allowable_stress": {"tension_safety_factor": 2.5, "uplift_clause": "helical"}
    }


WAYS = (
    (_shallow_profile, 0.35),
    (_rock, 0.2),
    (_width_of_terzaghi, 0.07),
    (_adhesion_on_square, 0.07),
    (_coincide, 0.06),
    (_narrow, 0.06),
    (_gap, 0.07),
    (_heavy_water, 0.04),
    (_lighter_saturated, 0.04),
    (_factor_twice, 0.04),
)


def spoil(draw, request):
    """Changes the request in one of the ways, seldom in two."""
    draw.weighted(WAYS)(draw, request)
    if draw.chance(0.15):
        draw.weighted(WAYS)(draw, request)
