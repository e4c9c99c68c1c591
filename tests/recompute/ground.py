"""The ground of a request: layers, water, stress, and what a stretch of depth meets.

No bearing and no pile. Everything in kN, m, kPa; depth down from final grade.
"""

from dataclasses import dataclass, replace
from typing import Optional

from strengths import StrengthFault, cohesion, strength
from units import base

WATER_UNIT_WEIGHT = 9.81
# A cut leaves no layer thinner than this, m.
LEAST_LAYER = 2e-6
UNCREDITED = ("fill", "organic", "frozen")


@dataclass(frozen=True)
class Layer:
    """One layer with its strength, sent or found."""

    label: str
    top: float
    bottom: float
    moist: float
    saturated: float
    kind: str
    su: Optional[float] = None
    phi: Optional[float] = None
    cohesion: float = 0.0
    hazardous: bool = False

    @property
    def credited(self):
        return self.kind not in UNCREDITED


@dataclass(frozen=True)
class Part:
    """What a stretch of depth takes of one layer."""

    layer: Layer
    top: float
    bottom: float

    @property
    def height(self):
        return self.bottom - self.top


class Water:
    """Pore pressure over depth: straight lines between points, as at rest below the last."""

    def __init__(self, soil):
        sent = soil.get("water_unit_weight")
        self.weight = base(sent) if sent else WATER_UNIT_WEIGHT
        if "pore_pressures" in soil:
            self.points = [(base(p["depth"]), base(p["pressure"])) for p in soil["pore_pressures"]]
        else:
            self.points = [(base(soil["water_depth"]), 0.0)] if "water_depth" in soil else []

    def pressure(self, depth):
        """Pore pressure at a depth."""
        if not self.points or depth <= self.points[0][0]:
            return 0.0
        for (top, first), (bottom, last) in zip(self.points, self.points[1:]):
            if depth <= bottom:
                return first + (depth - top) / (bottom - top) * (last - first)
        top, first = self.points[-1]
        return first + self.weight * (depth - top)

    def cuts(self, top, bottom):
        """Depths strictly between two at which the line of pressure breaks."""
        return [depth for depth, _ in self.points if top < depth < bottom]


def _weights(sent, water):
    """(moist, saturated) unit weight of a layer."""
    if "dry_unit_weight" in sent:
        dry = base(sent["dry_unit_weight"])
        moist = dry * (1.0 + sent["water_content_ratio"])
    else:
        moist = base(sent["unit_weight"])
    if "specific_gravity_ratio" in sent:
        return moist, dry * (1.0 - 1.0 / sent["specific_gravity_ratio"]) + water.weight
    if "saturated_unit_weight" in sent:
        return moist, base(sent["saturated_unit_weight"])
    return moist, moist


def _kind(soil):
    """(kind that counts, way to its strength): engineered fill is what it was placed as."""
    ((kind, members),) = soil.items()
    placed = members.get("engineered") if kind == "fill" else None
    if not placed:
        return kind, members
    return next((k, placed[k]) for k in ("clay", "sand", "gravel") if k in placed)


class Ground:
    """Layers from the surface down, with their water and strengths."""

    def __init__(self, soil):
        self.water = Water(soil)
        self.layers, self.derived, self.faults = [], [], set()
        ways = []
        for number, sent in enumerate(soil["layers"], start=1):
            kind, way = _kind(sent["soil"])
            moist, saturated = _weights(sent, self.water)
            label = sent.get("label", f"L{number}")
            layer = Layer(
                *(label, base(sent["top"]), base(sent["bottom"]), moist, saturated, kind),
                hazardous=bool(sent.get("hazards")),
            )
            self.layers.append(layer)
            ways.append(way)
        # a strength found from a test needs the stress, and that all layers
        self.layers = [self._strong(layer, way) for layer, way in zip(self.layers, ways)]
        if "grade_change" in soil:
            self._regrade(soil["grade_change"])

    def _regrade(self, change):
        """Depths from final grade after a cut or below new fill; strengths are kept."""
        new = []
        if "raise" in change:
            shift = base(change["raise"]["height"])
            weight = base(change["raise"]["unit_weight"])
            if shift > LEAST_LAYER:
                new.append(Layer("new fill", 0.0, shift, weight, weight, "fill"))
        else:
            shift = -base(change["cut"]["depth"])
        for layer in self.layers:
            top, bottom = max(layer.top + shift, 0.0), layer.bottom + shift
            if bottom > LEAST_LAYER:
                new.append(replace(layer, top=top, bottom=bottom))
        self.layers = new
        self.water.points = [(depth + shift, pressure) for depth, pressure in self.water.points]

    def _strong(self, layer, way):
        try:
            found = strength(self, layer, way)
        except StrengthFault as fault:
            self.faults.add(str(fault))
            found = None
        if found is None:
            return layer
        value, record = found
        if record:
            self.derived.append(record)
        undrained = layer.kind in ("clay", "silt")
        return replace(
            layer,
            su=value if undrained else None,
            phi=None if undrained else value,
            cohesion=cohesion(way),
        )

    @property
    def bottom(self):
        return self.layers[-1].bottom

    def total_stress(self, depth):
        """Vertical total stress: saturated wherever the pore pressure is above zero."""
        total = 0.0
        for layer in self.layers:
            top, bottom = layer.top, min(layer.bottom, depth)
            if bottom <= top:
                break
            cuts = [top, *self.water.cuts(top, bottom), bottom]
            for a, b in zip(cuts, cuts[1:]):
                wet = self.water.pressure(0.5 * (a + b)) > 0.0
                total += (layer.saturated if wet else layer.moist) * (b - a)
        return total

    def stress(self, depth):
        """Vertical effective stress."""
        return self.total_stress(depth) - self.water.pressure(depth)

    def mean_stress(self, top, bottom):
        """Mean vertical effective stress over a stretch, exact for a stress linear by pieces."""
        cuts = {top, bottom, *self.water.cuts(top, bottom)}
        cuts.update(l.bottom for l in self.layers if top < l.bottom < bottom)
        cuts = sorted(cuts)
        area = sum(
            0.5 * (self.stress(a) + self.stress(b)) * (b - a)
            for a, b in zip(cuts, cuts[1:])
        )
        return area / (bottom - top)

    def mean_effective_weight(self, top, bottom):
        """Mean effective unit weight over a stretch; nothing is counted below the profile."""
        known = min(bottom, self.bottom)
        return (self.stress(known) - self.stress(top)) / (bottom - top)

    def parts(self, top, bottom):
        """The layers between two depths, from the top down."""
        found = []
        for layer in self.layers:
            a, b = max(layer.top, top), min(layer.bottom, bottom)
            if b > a:
                found.append(Part(layer, a, b))
        return found

    def touching(self, depth, below):
        """The layer in touch with a plate at a depth, on its lower or upper side."""
        for layer in self.layers:
            if below and layer.top <= depth < layer.bottom:
                return layer
            if not below and layer.top < depth <= layer.bottom:
                return layer
        return None
