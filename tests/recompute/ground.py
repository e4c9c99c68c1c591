"""The ground of a request: layers, effective stress, and what a stretch of depth meets.

No bearing and no pile. Everything in kN, m, kPa; depth down from final grade.
"""

from dataclasses import dataclass
from typing import Optional

from units import base

WATER_UNIT_WEIGHT = 9.81
UNCREDITED = ("fill", "organic")


@dataclass(frozen=True)
class Layer:
    """One layer with the strength it was sent with."""

    label: str
    top: float
    bottom: float
    moist: float
    saturated: float
    kind: str
    su: Optional[float] = None
    phi: Optional[float] = None

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


class Ground:
    """Layers from the surface down, with the water table."""

    def __init__(self, soil):
        self.layers = []
        for number, sent in enumerate(soil["layers"], start=1):
            ((kind, strength),) = sent["soil"].items()
            moist = base(sent["unit_weight"])
            self.layers.append(
                Layer(
                    label=sent.get("label", f"L{number}"),
                    top=base(sent["top"]),
                    bottom=base(sent["bottom"]),
                    moist=moist,
                    saturated=base(sent["saturated_unit_weight"])
                    if "saturated_unit_weight" in sent
                    else moist,
                    kind=kind,
                    su=base(strength["undrained_strength"])
                    if kind in ("clay", "silt")
                    else None,
                    phi=base(strength["friction_angle"]) if kind == "sand" else None,
                )
            )
        self.water = base(soil["water_depth"]) if "water_depth" in soil else None
        self.water_weight = (
            base(soil["water_unit_weight"])
            if "water_unit_weight" in soil
            else WATER_UNIT_WEIGHT
        )

    @property
    def bottom(self):
        return self.layers[-1].bottom

    def stress(self, depth):
        """Vertical effective stress: gamma dz above the water, (gamma_sat - gamma_w) dz below."""
        total = 0.0
        for layer in self.layers:
            top, bottom = layer.top, min(layer.bottom, depth)
            if bottom <= top:
                break
            dry = bottom if self.water is None else min(max(self.water, top), bottom)
            total += layer.moist * (dry - top)
            total += (layer.saturated - self.water_weight) * (bottom - dry)
        return total

    def mean_stress(self, top, bottom):
        """Mean vertical effective stress over a stretch, exact for a stress linear by pieces."""
        cuts = {top, bottom}
        cuts.update(l.bottom for l in self.layers if top < l.bottom < bottom)
        if self.water is not None and top < self.water < bottom:
            cuts.add(self.water)
        cuts = sorted(cuts)
        area = sum(
            0.5 * (self.stress(a) + self.stress(b)) * (b - a)
            for a, b in zip(cuts, cuts[1:])
        )
        return area / (bottom - top)

    def mean_effective_weight(self, top, bottom):
        """Mean effective unit weight over a stretch."""
        return (self.stress(bottom) - self.stress(top)) / (bottom - top)

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
