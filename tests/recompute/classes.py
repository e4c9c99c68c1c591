"""Kinds of profile, soil and method of which enough must be among the random requests."""

LEAST_SHARE = 0.15
NAMES = (
    "layered sand",
    "mixed",
    "water within the helices",
    "shallow uplift",
    "three or more helices",
    "cylinder governing",
)


def _reach(pile):
    """Layers from the top of the highest zone to the bottom of the lowest."""
    top = min(pile.zone(helix, True)[0] for helix in pile.helices)
    bottom = max(pile.zone(helix, False)[1] for helix in pile.helices)
    return [part.layer for part in pile.ground.parts(top, bottom)]


def classes(pile, result):
    """The kinds a profile belongs to, by its pile and by what was answered."""
    found = set()
    layers = _reach(pile)
    sands = {layer.phi for layer in layers if layer.kind == "sand"}
    clays = any(layer.su is not None for layer in layers)
    if len(sands) >= 2 and not clays:
        found.add("layered sand")
    if sands and clays:
        found.add("mixed")
    first, last = pile.helices[0].depth, pile.helices[-1].depth
    if any(first < depth < last for depth, _ in pile.ground.water.points):
        found.add("water within the helices")
    if result.get("tension", {}).get("embedment", {}).get("mode") == "shallow":
        found.add("shallow uplift")
    if len(pile.helices) >= 3:
        found.add("three or more helices")
    for name in ("compression", "tension"):
        if result.get("group", {}).get(name, {}).get("governing") == "block":
            found.add(f"block governing in {name}")
    sides = [result[name] for name in ("compression", "tension") if name in result]
    if any(side["governing_mode"] == "cylindrical_shear" for side in sides):
        found.add("cylinder governing")
    return found


# Every alternative of the request; each must be answered so many times.
LEAST_TIMES = 8
ALTERNATIVES = (
    *(f"soil {kind}" for kind in ("clay", "silt", "sand", "gravel", "fill", "organic", "rock")),
    "soil frozen",
    "soil fill engineered",
    *(f"sand {way}" for way in ("friction_angle", "from_spt", "from_cpt", "from_index")),
    *(f"clay {way}" for way in ("undrained_strength", "from_spt", "from_cpt")),
    *(f"clay {way}" for way in ("from_stress_history", "from_index")),
    *(f"{kind} cohesion" for kind in ("sand", "gravel")),
    *(f"layer {name}" for name in ("dry_unit_weight", "specific_gravity_ratio", "hazards")),
    *(f"test {name}" for name in ("test_depth", "reference_depth", "silty_below_water")),
    *(f"water {name}" for name in ("water_depth", "pore_pressures", "water_unit_weight")),
    *(f"grade {name}" for name in ("cut", "raise")),
    *(f"group of {name}" for name in ("array", "positions", "efficiency_factor")),
    *(f"group of {name}" for name in ("between_helices", "full_depth")),
    *(f"group of {name}" for name in ("straight_sides", "leaning_sides", "given")),
    *(f"block governing in {side}" for side in ("compression", "tension")),
    *(f"shaft {shape}" for shape in ("round", "square")),
    *(f"undrained_bearing {name}" for name in ("skempton_1951", "fixed_nine", "cavity_expansion")),
    *(
        f"drained_bearing {name}"
        for name in ("vesic_1973", "meyerhof_1963", "hansen_1970", "terzaghi_1943", "own")
    ),
    *(f"shape_depth_factors {name}" for name in ("none", "published")),
    *(f"width_term {name}" for name in ("drop", "include")),
    *(f"local_shear {name}" for name in ("none", "two_thirds")),
    *(f"stress_limit {name}" for name in ("none", "usace_1991_loose", "usace_1991_dense")),
    *(f"bearing_zone_rule {name}" for name in ("thickness_mean", "weakest")),
    *(f"helix_area {name}" for name in ("net", "bottom_gross", "gross")),
    *(f"uplift_sand {name}" for name in ("das_breakout", "nq_tension")),
    *(f"clay_critical_embedment {name}" for name in ("das_1980", "four_diameters")),
    *(f"cylinder_lateral_stress {name}" for name in ("mitsch_clemence_1985", "at_rest")),
    *(f"shaft_adhesion {name}" for name in ("none", "alpha")),
    *(f"{name} sent" for name in ("bearing_zone_ratio", "clay_tension_factor", "no_credit_above")),
    *(f"basis {name}" for name in ("allowable_stress", "limit_states", "eurocode_7")),
    *(f"basis {name}" for name in ("australian_standard_2159", "own_factors")),
    *(
        f"uplift_clause {name}"
        for name in ("general", "general_wind_seismic", "helical", "new_york_city")
    ),
)


def alternatives(request):
    """The alternatives a request was sent with, each once."""
    found = {f"soil {kind}" for layer in request["soil"]["layers"] for kind in layer["soil"]}
    for layer in request["soil"]["layers"]:
        found |= {f"layer {name}" for name in layer}
        for kind, members in layer["soil"].items():
            found |= {f"{kind} {name}" for name in members}
            ways = [way for name, way in members.items() if name.startswith("from_")]
            found |= {f"test {name}" for way in ways for name in way}
    found |= {f"soil {name}" for name in found if name == "fill engineered"}
    found |= {f"water {name}" for name in request["soil"]}
    group = request.get("group", {})
    words = [*group.get("plan", {}), *group, group.get("shear_height")]
    block = group.get("uplift_block")
    words += block if isinstance(block, dict) else [block]
    found |= {f"group of {word}" for word in words if word}
    found |= {f"grade {name}" for name in request["soil"].get("grade_change", {})}
    found |= {f"shaft {shape}" for shape in request["pile"]["shaft"]}
    for name, chosen in (request.get("methods") or {}).items():
        for word in chosen if isinstance(chosen, dict) else (chosen,):
            found.add(f"{name} {word}")
        found.add(f"{name} sent")
    for format_, members in (request.get("design_basis") or {}).items():
        found.add(f"basis {format_}")
        found.add(f"uplift_clause {members.get('uplift_clause')}")
    return found
