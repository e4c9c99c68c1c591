"""The pile of a request with its ground and its choice of methods. What it bears is not here."""

import math
from dataclasses import dataclass

import factors
from ground import Ground, Part
from units import base

DEFAULTS = {
    "undrained_bearing": "skempton_1951",
    "drained_bearing": "vesic_1973",
    "shape_depth_factors": "none",
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

    def plain_nq(self, phi, ratio):
        """N_q at a depth of so many diameters, without factors of footings."""
        family, members = self.option("drained_bearing")
        if family == "own":
            return members["bearing_factor"]
        return factors.nq(family, self.bearing_angle(phi), ratio)

    def plain_nc(self, phi):
        """N_c = (N_q - 1) cot phi, of Prandtl where N_q is the caller's own; phi as it bears."""
        family, _ = self.option("drained_bearing")
        nq = factors.nq("vesic_1973" if family == "own" else family, phi, 0.0)
        return (nq - 1.0) / factors.tan(phi)

    def bearing_cohesion(self, cohesion):
        """Cohesion in the bearing of sand and gravel."""
        return 2.0 / 3.0 * cohesion if self.methods["local_shear"] == "two_thirds" else cohesion

    def limited_stress(self, helix):
        """Effective stress in the N_q term."""
        stress = self.ground.stress(helix.depth)
        diameters = STRESS_DEPTHS.get(self.methods["stress_limit"])
        if diameters is None:
            return stress
        return min(stress, self.ground.stress(min(diameters * helix.diameter, helix.depth)))
