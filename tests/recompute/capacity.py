"""Resistance of a pile in one direction, as the service answers it, from a request.

Written from the published methods and from what the service says of its own: `GET /v1/methods`
and the descriptions in the document. The result has the shape of the answer, with plain
numbers in kN, m and kPa in place of quantities.
"""

import math
from dataclasses import dataclass

import factors
from adhesion import shaft_adhesion
from cylinder import cylindrical_shear
from general import deep_clay
from ground import Ground, Part
from units import base

DEFAULTS = {
    "undrained_bearing": "skempton_1951",
    "drained_bearing": "vesic_1973",
    "width_term": "drop",
    "local_shear": "none",
    "stress_limit": "none",
    "bearing_zone_ratio": 2.0,
    "bearing_zone_rule": "thickness_mean",
    "helix_area": "net",
    "uplift_sand": "das_breakout",
    "clay_tension_factor": 1.0,
    "clay_critical_embedment": "das_1980",
    "cylinder_lateral_stress": "mitsch_clemence_1985",
    "shaft_adhesion": "none",
}
STRESS_DEPTHS = {"usace_1991_loose": 10.0, "usace_1991_dense": 20.0}


@dataclass(frozen=True)
class Helix:
    """A plate on the shaft."""

    label: str
    diameter: float
    depth: float


class Pile:
    """The pile of a request with its ground and its choice of methods."""

    def __init__(self, request):
        self.ground = Ground(request["soil"])
        self.methods = {**DEFAULTS, **(request.get("methods") or {})}
        sent = request["pile"]
        ((shape, shaft),) = sent["shaft"].items()
        self.square = shape == "square"
        self.width = base(shaft["side" if self.square else "outside_diameter"])
        plates = sorted(sent["helices"], key=lambda h: base(h["depth"]))
        self.helices = [
            Helix(h.get("label", str(n)), base(h["diameter"]), base(h["depth"]))
            for n, h in enumerate(plates, start=1)
        ]
        sent_depth = self.methods.get("no_credit_above")
        self.credit_depth = base(sent_depth) if sent_depth else 0.0

        # the widest line across the shaft
        self.across = base(shaft["diagonal"]) if "diagonal" in shaft else self.width
        if self.square and "diagonal" not in shaft:
            self.across = self.width * math.sqrt(2.0)

    @property
    def shaft_area(self):
        return self.width**2 if self.square else math.pi * self.width**2 / 4.0

    def option(self, name):
        """A choice of method and what it was sent with."""
        chosen = self.methods[name]
        if isinstance(chosen, dict):
            ((chosen, members),) = chosen.items()
            return chosen, members
        return chosen, {}

    def zone(self, helix, tension):
        """Depths between which the soil bears on the load side, cut at the surface."""
        reach = self.methods["bearing_zone_ratio"] * helix.diameter
        if tension:
            return max(helix.depth - reach, 0.0), helix.depth
        return helix.depth, helix.depth + reach

    def zone_parts(self, helix, tension):
        """The soils of the zone, cut at the depth of credit; or the soil in touch where it has
        no height."""
        top, bottom = self.zone(helix, tension)
        if bottom > top:
            cut = min(max(self.credit_depth, top), bottom)
            return self.ground.parts(top, cut) + self.ground.parts(cut, bottom)
        layer = self.ground.touching(helix.depth, below=not tension)
        return [Part(layer, helix.depth, helix.depth)] if layer else []

    def embedment(self, helix):
        """H: depth below the ground, or below the lowest soil above that has no credit."""
        floor = self.credit_depth
        for layer in self.ground.layers:
            if not layer.credited and layer.top < helix.depth:
                floor = max(floor, min(layer.bottom, helix.depth))
        return helix.depth - floor

    def area(self, helix, tension):
        """Area that bears."""
        gross = math.pi * helix.diameter**2 / 4.0
        rule = self.methods["helix_area"]
        lowest = helix is self.helices[-1]
        if rule == "gross" or (rule == "bottom_gross" and lowest and not tension):
            return gross
        return gross - self.shaft_area

    def no_credit(self, helix, tension):
        """Why a helix bears nothing, or None."""
        if helix.depth <= self.credit_depth:
            return "above_credit_depth"
        if not all(part.layer.credited for part in self.zone_parts(helix, tension)):
            return "fill_or_organic"
        return None

    def bearing_angle(self, phi):
        """Friction angle in the bearing factors."""
        return factors.local_shear(phi) if self.methods["local_shear"] == "two_thirds" else phi

    def limited_stress(self, helix):
        """Effective stress in the N_q term."""
        stress = self.ground.stress(helix.depth)
        diameters = STRESS_DEPTHS.get(self.methods["stress_limit"])
        if diameters is None:
            return stress
        return min(stress, self.ground.stress(min(diameters * helix.diameter, helix.depth)))


def _undrained_nc(pile, ratio):
    chosen, members = pile.option("undrained_bearing")
    if chosen == "fixed_nine":
        return 9.0
    if chosen == "cavity_expansion":
        return factors.cavity_nc(members["reduced_rigidity_ratio"])
    return factors.skempton_nc(ratio)


def _nq(pile, helix, layer):
    ratio = helix.depth / helix.diameter
    return factors.nq(pile.methods["drained_bearing"], pile.bearing_angle(layer.phi), ratio)


def _compression(pile, helix, layer):
    """(law, factor, bearing) of one soil below a helix."""
    if layer.su is not None:
        factor = _undrained_nc(pile, helix.depth / helix.diameter)
        bearing = deep_clay(layer.su) if factor == 9.0 else layer.su * factor
        return "undrained_bearing", factor, bearing
    factor = _nq(pile, helix, layer)
    bearing = pile.limited_stress(helix) * factor
    if pile.methods["width_term"] == "include":
        ngamma = factors.NGAMMA[pile.methods["drained_bearing"]](pile.bearing_angle(layer.phi))
        weight = pile.ground.mean_effective_weight(helix.depth, helix.depth + helix.diameter)
        bearing += 0.5 * weight * helix.diameter * ngamma * 0.6
    return "drained_bearing", factor, bearing


def _uplift_clay(pile, helix, layer, ratio):
    growth = factors.breakout_clay(ratio)
    shallow = growth * layer.su + pile.ground.stress(helix.depth)
    share = pile.methods["clay_tension_factor"]
    deep = share * deep_clay(layer.su)
    if shallow <= deep:
        return "undrained_breakout", growth, shallow
    return "undrained_bearing", share * 9.0, deep


def _uplift_sand(pile, helix, layer, ratio):
    chosen, members = pile.option("uplift_sand")
    growth = factors.breakout_sand(layer.phi, ratio)
    shallow = growth * pile.ground.stress(helix.depth)
    factor = _nq(pile, helix, layer)
    if chosen == "nq_tension":
        factor *= members.get("tension_factor", 0.7)
    deep = factor * pile.limited_stress(helix)
    held = chosen == "nq_tension" and ratio >= factors.critical_sand(layer.phi)
    if shallow <= deep and not held:
        return "drained_breakout", growth, shallow
    return "drained_bearing", factor, deep


def _soil_bearing(pile, helix, layer, tension):
    if not tension:
        return _compression(pile, helix, layer)
    ratio = pile.embedment(helix) / helix.diameter
    if layer.su is not None:
        return _uplift_clay(pile, helix, layer, ratio)
    return _uplift_sand(pile, helix, layer, ratio)


def _zone_bearing(pile, helix, tension, credited):
    rows = []
    for part in pile.zone_parts(helix, tension):
        layer, law, factor, bearing = part.layer, "no_credit", 0.0, 0.0
        above = part.bottom <= pile.credit_depth and part.height > 0.0
        if credited and layer.credited and not above:
            law, factor, bearing = _soil_bearing(pile, helix, layer, tension)
        row = {
            "layer": layer.label,
            "top": part.top,
            "bottom": part.bottom,
            "law": law,
            "bearing_factor": factor,
            "bearing": bearing,
        }
        if layer.su is not None:
            row["undrained_strength"] = layer.su
        rows.append(row)
    return rows


def _together(pile, rows):
    """Bearing of the zone."""
    if pile.methods["bearing_zone_rule"] == "weakest":
        return min(row["bearing"] for row in rows)
    height = sum(row["bottom"] - row["top"] for row in rows)
    if height == 0.0:
        return rows[0]["bearing"]
    return sum(row["bearing"] * (row["bottom"] - row["top"]) for row in rows) / height


def _stress_limits(pile, helix, rows):
    """Effective stress at 10 and 20 diameters, where in sand and deeper than that."""
    labels = {row["layer"] for row in rows}
    sand = any(layer.kind == "sand" for layer in pile.ground.layers if layer.label in labels)
    limits = {}
    for name, diameters in (("loose", 10.0), ("dense", 20.0)):
        if sand and helix.depth > diameters * helix.diameter:
            limits[name] = pile.ground.stress(diameters * helix.diameter)
    return limits


def helix_bearing(pile, helix, tension):
    """One helix for itself."""
    reason = pile.no_credit(helix, tension)
    rows = _zone_bearing(pile, helix, tension, reason is None)
    bearing = 0.0 if reason else _together(pile, rows)
    area = pile.area(helix, tension)
    found = {
        "label": helix.label,
        "diameter": helix.diameter,
        "depth": helix.depth,
        "depth_ratio": helix.depth / helix.diameter,
        "area": area,
        "effective_stress": pile.ground.stress(helix.depth),
        "bearing": bearing,
        "resistance": area * bearing,
        "zone": rows,
    }
    if reason:
        found["no_credit"] = reason
    limits = _stress_limits(pile, helix, rows)
    if limits:
        found["stress_limits"] = limits
    return found


def embedment(pile, helix):
    """Shallow or deep, by the soil above the top helix in credit."""
    height = pile.embedment(helix)
    ratio = height / helix.diameter
    layer = pile.ground.touching(helix.depth, below=False)
    if layer.su is not None:
        critical = factors.critical_clay(pile.methods["clay_critical_embedment"], layer.su)
    else:
        critical = factors.critical_sand(layer.phi)
    return {
        "helix": helix.label,
        "embedment": height,
        "embedment_ratio": ratio,
        "critical_ratio": critical,
        "mode": "deep" if ratio >= critical else "shallow",
    }


def resistance(pile, tension):
    """All of one direction, without the design capacity."""
    bearings = [helix_bearing(pile, helix, tension) for helix in pile.helices]
    total = sum(b["resistance"] for b in bearings)
    found = {
        "direction": "tension" if tension else "compression",
        "individual_bearing": {"total": total, "helices": bearings},
    }
    credited = [
        (helix, b) for helix, b in zip(pile.helices, bearings) if "no_credit" not in b
    ]
    least, mode = total, "individual_bearing"
    if len(credited) >= 2:
        cylinder = cylindrical_shear(pile, credited, tension)
        found["cylindrical_shear"] = cylinder
        if cylinder["total"] < total:
            least, mode = cylinder["total"], "cylindrical_shear"
    if tension and credited:
        found["embedment"] = embedment(pile, credited[0][0])
    found["shaft_adhesion"] = shaft_adhesion(pile)
    found["governing_mode"] = mode
    found["ultimate"] = least + found["shaft_adhesion"]
    return found
