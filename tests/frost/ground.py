"""What the judges need to know of a layer, and 20 fixed grounds with their winters, each as a
request of `frost-depth` and as layers in SI.

Soil properties are calculated here from the equations that the service's methods
`soil_conductivity_kersten` and `soil_heat` state; nothing is taken from the engine.
"""

import dataclasses
import math

FT = 0.3048
BTU = 1055.05585262
PCF = 0.45359237 * 9.80665 / FT**3  # N/m3
CONDUCTIVITY = BTU * 1.8 / (3600.0 * FT)  # Btu/(h ft F) in W/(m K)
CAPACITY = BTU * 1.8 / FT**3  # Btu/(ft3 F) in J/(m3 K)
LATENT = BTU / FT**3  # Btu/ft3 in J/m3
DAY = 86400.0


@dataclasses.dataclass(frozen=True)
class Layer:
    """SI. `thickness` None: goes on down. `latent` is released at 0 C."""

    thickness: float | None
    frozen: float  # conductivity
    unfrozen: float
    cold: float  # heat capacity frozen
    warm: float  # and unfrozen
    latent: float

    @property
    def conductivity(self):
        """Mean of both states, as the method takes it."""
        return 0.5 * (self.frozen + self.unfrozen)

    @property
    def capacity(self):
        """Mean of both states."""
        return 0.5 * (self.cold + self.warm)

    def mean(self):
        """The same with the means in both states."""
        k, c = self.conductivity, self.capacity
        return Layer(self.thickness, k, k, c, c, self.latent)


@dataclasses.dataclass(frozen=True)
class Case:
    """`above`, `below`: K over and under freezing; `layers` pairs of (request, Layer)."""

    name: str
    index: float  # C days, of the surface
    days: float
    above: float
    layers: tuple

    @property
    def below(self):
        return self.index / self.days

    @property
    def ground(self):
        return [layer for _, layer in self.layers]

    def request(self):
        """What is sent."""
        index = {"definition": "design_3_in_30", "value": {"value": self.index, "unit": "C_day"}}
        return {
            "label": self.name,
            "winter": {
                "freezing_index": {"given": index | {"reference": "invented"}},
                "mean_annual_temperature": {"value": self.above, "unit": "degC"},
                "season_length": {"value": self.days, "unit": "day"},
            },
            "surface": {"given": {"factor": 1.0, "reference": "index of the surface itself"}},
            "layers": [sent for sent, _ in self.layers],
        }


def _layer(thickness, material):
    size = {} if thickness is None else {"thickness": {"value": thickness, "unit": "m"}}
    return size | {"material": material}


def _soil(pcf, percent, texture):
    """(frozen, unfrozen, cold, warm, latent) in SI."""
    w = math.log10(percent)
    if texture == "fine":
        unfrozen = (0.9 * w - 0.2) * 10.0 ** (0.01 * pcf)
        frozen = 0.01 * 10.0 ** (0.022 * pcf) + 0.085 * 10.0 ** (0.008 * pcf) * percent
    else:
        unfrozen = (0.7 * w + 0.4) * 10.0 ** (0.01 * pcf)
        frozen = 0.076 * 10.0 ** (0.013 * pcf) + 0.032 * 10.0 ** (0.0146 * pcf) * percent
    water = percent / 100.0
    return (
        frozen / 12.0 * CONDUCTIVITY,
        unfrozen / 12.0 * CONDUCTIVITY,
        pcf * (0.17 + 0.5 * water) * CAPACITY,
        pcf * (0.17 + 1.0 * water) * CAPACITY,
        144.0 * pcf * water * LATENT,
    )


def soil(thickness, pcf, percent, texture):
    """Soil that the service finds the properties of."""
    weight = {"value": pcf, "unit": "pcf"}
    material = {"texture": texture, "dry_unit_weight": weight, "water_content_ratio": percent / 100.0}
    return _layer(thickness, {"soil": material}), Layer(thickness, *_soil(pcf, percent, texture))


def fine(thickness, pcf, percent):
    return soil(thickness, pcf, percent, "fine")


def coarse(thickness, pcf, percent):
    return soil(thickness, pcf, percent, "coarse")


def given(thickness, frozen, unfrozen, cold, warm, latent):
    """A layer with all of its properties sent."""
    material = {
        "frozen_conductivity": {"value": frozen, "unit": "W_per_m_K"},
        "unfrozen_conductivity": {"value": unfrozen, "unit": "W_per_m_K"},
        "heat_capacity": {"value": 0.5e-6 * (cold + warm), "unit": "MJ_per_m3_K"},
        "latent_heat": {"value": 1e-6 * latent, "unit": "MJ_per_m3"},
        "reference": "invented",
    }
    return _layer(thickness, {"given": material}), Layer(thickness, frozen, unfrozen, cold, warm, latent)


def concrete(thickness):
    """With the conductivity and heat capacity that the service takes when none is sent."""
    k, c = 1.0 * CONDUCTIVITY, 28.0 * CAPACITY
    return _layer(thickness, {"concrete": {}}), Layer(thickness, k, k, c, c, 0.0)


def board(thickness, k=0.035):
    """A board of insulation: it only resists."""
    material = {"conductivity": {"value": k, "unit": "W_per_m_K"}}
    return _layer(thickness, {"insulation": material}), Layer(thickness, k, k, 0.0, 0.0, 0.0)


def snow(thickness, k, c):
    material = {
        "conductivity": {"value": k, "unit": "W_per_m_K"},
        "heat_capacity": {"value": 1e-6 * c, "unit": "MJ_per_m3_K"},
        "reference": "invented",
    }
    return _layer(thickness, {"snow": material}), Layer(thickness, k, k, c, c, 0.0)


PEAT = (0.3, 1.6, 0.5, 2.0e6, 3.6e6, 2.4e8)

CASES = [
    Case("silt", 1388.9, 160, 2.9, (fine(None, 100, 15),)),
    Case("wet clay", 800, 120, 6.0, (fine(None, 90, 28),)),
    Case("silt, cold place", 1800, 170, 2.0, (fine(None, 95, 22),)),
    Case("gravel", 1000, 130, 5.0, (coarse(None, 130, 5),)),
    Case("sand, mild place", 600, 110, 8.0, (coarse(None, 110, 10),)),
    Case("gravel fill 0.6 m on silt", 1000, 130, 5.0, (coarse(0.6, 125, 5), fine(None, 100, 20))),
    Case("sand fill 1.2 m on clay", 1200, 140, 4.0, (coarse(1.2, 115, 8), fine(None, 92, 27))),
    Case("slab, gravel, silt", 1200, 140, 4.0, (concrete(0.15), coarse(0.3, 135, 4), fine(None, 100, 15))),
    Case("slab, thick base, silt", 1388.9, 160, 2.9, (concrete(0.1524), coarse(0.6096, 135, 5), fine(None, 100, 15))),
    Case("dry sand 0.6 m on wet silt", 1000, 130, 5.0, (coarse(0.6, 105, 2), fine(None, 95, 25))),
    Case("dry gravel 1.5 m on wet silt", 1500, 150, 4.0, (coarse(1.5, 130, 2), fine(None, 95, 25))),
    Case("wet silt 0.5 m on dry gravel", 1200, 140, 4.0, (fine(0.5, 90, 28), coarse(None, 130, 3))),
    Case("peat 0.3 m on sand", 1200, 140, 4.0, (given(*PEAT), coarse(None, 110, 10))),
    Case(
        "four layers",
        1600,
        150,
        3.5,
        (coarse(0.25, 120, 6), fine(0.4, 85, 30), coarse(0.5, 118, 9), fine(None, 105, 18)),
    ),
    Case("board 25 mm on silt", 1000, 130, 5.0, (board(0.025), fine(None, 100, 18))),
    Case("board 50 mm on silt", 1500, 150, 4.0, (board(0.05), fine(None, 100, 18))),
    Case("board 100 mm on gravel", 1500, 150, 3.0, (board(0.1, 0.033), coarse(None, 130, 5))),
    Case(
        "slab, board 50 mm, gravel, silt",
        1500,
        150,
        4.0,
        (concrete(0.1), board(0.05), coarse(0.3, 130, 4), fine(None, 100, 18)),
    ),
    Case("gravel, board 50 mm, silt", 1500, 150, 4.0, (coarse(0.3, 130, 4), board(0.05), fine(None, 100, 18))),
    Case("snow 0.3 m on silt", 1200, 150, 3.0, (snow(0.3, 0.25, 5.0e5), fine(None, 100, 18))),
]
