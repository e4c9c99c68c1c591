"""What is taken from the general geotechnical library `groundhog` instead of being written here.

Bearing factors of sand, end bearing of clay, the API adhesion factor and relations of
penetration tests. Each is used within the range its authors validate; outside it the published
formula stands by itself, and inside it both must agree. The library also imports packages for
drawing, tables and solving; they are not needed for these calls and are not installed, empty
modules stand in for them.
"""

import math
import sys
import types


class _Blank(types.ModuleType):
    """A module from which any name can be imported and none can be used."""

    __path__ = []

    def __getattr__(self, name):
        if name.startswith("__"):
            raise AttributeError(name)
        return None


_NOT_NEEDED = (
    "jinja2",
    "matplotlib",
    "matplotlib.pyplot",
    "pandas",
    "plotly",
    "plotly.colors",
    "plotly.graph_objs",
    "scipy",
    "scipy.interpolate",
    "scipy.optimize",
)
for _name in _NOT_NEEDED:
    sys.modules.setdefault(_name, _Blank(_name))

from groundhog.deepfoundations.axialcapacity.endbearing import API_unit_end_bearing_clay
from groundhog.deepfoundations.axialcapacity.skinfriction import API_unit_shaft_friction_clay
from groundhog.shallowfoundations.capacity import (
    ngamma_frictionangle_meyerhof,
    ngamma_frictionangle_vesic,
    nq_frictionangle_sand,
)

from groundhog.siteinvestigation.insitutests.pcpt_correlations import (
    frictionangle_sand_kulhawymayne,
    undrainedshearstrength_clay_radlunne,
)
from groundhog.siteinvestigation.insitutests.spt_correlations import (
    frictionangle_spt_PHT,
    frictionangle_spt_kulhawymayne,
    overburdencorrection_spt_liaowhitman,
    undrainedshearstrength_spt_salgado,
)

# Calls answered by the library, by name; the driver requires some of each.
USED = {
    name: 0
    for name in (
        "N_q",
        "N_gamma vesic",
        "N_gamma meyerhof",
        "alpha",
        "9 s_u",
        "C_N",
        "phi of (N_1)_60",
        "phi of N_60",
        "phi of q_t",
        "s_u of N_60",
        "s_u of q_t",
    )
}
# Reference pressure, kPa.
ATMOSPHERE = 100.0


def _from_library(name, value, formula):
    """The library's value, which must be that of the published formula."""
    value = float(value)
    if not math.isclose(value, formula, rel_tol=1e-12):
        raise AssertionError(f"{name}: groundhog gives {value}, the formula {formula}")
    USED[name] += 1
    return value


def prandtl_nq(phi):
    """N_q = exp(pi tan phi) tan^2(45 + phi/2)."""
    angle = math.radians(phi)
    formula = math.exp(math.pi * math.tan(angle)) * math.tan(math.pi / 4 + angle / 2) ** 2
    if 20.0 <= phi <= 50.0:
        return _from_library("N_q", nq_frictionangle_sand(phi)["Nq [-]"], formula)
    return formula


def vesic_ngamma(phi):
    """N_gamma = 2 (N_q + 1) tan phi."""
    formula = 2.0 * (prandtl_nq(phi) + 1.0) * math.tan(math.radians(phi))
    if 20.0 <= phi <= 50.0:
        return _from_library(
            "N_gamma vesic", ngamma_frictionangle_vesic(phi)["Ngamma [-]"], formula
        )
    return formula


def meyerhof_ngamma(phi):
    """N_gamma = (N_q - 1) tan(1.4 phi)."""
    formula = (prandtl_nq(phi) - 1.0) * math.tan(math.radians(1.4 * phi))
    if 20.0 <= phi <= 50.0:
        return _from_library(
            "N_gamma meyerhof", ngamma_frictionangle_meyerhof(phi)["Ngamma [-]"], formula
        )
    return formula


def api_alpha(su, stress):
    """alpha = 0.5 psi^-0.5 for psi <= 1, else 0.5 psi^-0.25, at most 1; psi = s_u/s'_v.

    The library leaves the limit of 1 to its caller.
    """
    psi = su / stress
    formula = 0.5 * psi ** (-0.5 if psi <= 1.0 else -0.25)
    if su <= 400.0:
        found = API_unit_shaft_friction_clay(su, stress)
        formula = _from_library("alpha", found["alpha [-]"], formula)
    return min(1.0, formula)


def deep_clay(su):
    """9 s_u."""
    if su <= 400.0:
        found = API_unit_end_bearing_clay(su, N_c=9.0)
        return _from_library("9 s_u", found["q_b_plugged [kPa]"], 9.0 * su)
    return 9.0 * su


def overburden(stress):
    """C_N = sqrt(p_a/s'_v), without a limit."""
    found = overburdencorrection_spt_liaowhitman(1.0, stress, granular=True)
    return _from_library("C_N", found["CN [-]"], math.sqrt(ATMOSPHERE / stress))


def peck_angle(count):
    """27.1 + 0.3 N - 0.00054 N^2, N = (N_1)_60 up to 60."""
    formula = 27.1 + 0.3 * count - 0.00054 * count**2
    return _from_library("phi of (N_1)_60", frictionangle_spt_PHT(count)["Phi [deg]"], formula)


def kulhawy_count_angle(count, stress):
    """atan([N_60/(12.2 + 20.3 s'_v/p_a)]^0.34), N_60 up to 60."""
    ratio = count / (12.2 + 20.3 * stress / ATMOSPHERE)
    formula = math.degrees(math.atan(ratio**0.34))
    if stress > 1000.0:
        return formula
    found = frictionangle_spt_kulhawymayne(count, stress)
    return _from_library("phi of N_60", found["Phi [deg]"], formula)


def kulhawy_cone_angle(resistance, stress):
    """17.6 + 11 log10[(q_t/p_a)/sqrt(s'_v/p_a)], q_t in kPa."""
    ratio = (resistance / ATMOSPHERE) / math.sqrt(stress / ATMOSPHERE)
    formula = 17.6 + 11.0 * math.log10(ratio)
    found = frictionangle_sand_kulhawymayne(resistance / 1000.0, stress)
    return _from_library("phi of q_t", found["Phi [deg]"], formula)


# Plasticity index, alpha' of Salgado 2008.
PLASTICITY = (
    (0.15, 0.068),
    (0.20, 0.055),
    (0.25, 0.048),
    (0.30, 0.045),
    (0.40, 0.044),
    (0.60, 0.043),
)


def salgado(plasticity, count):
    """(alpha', s_u = alpha' p_a N_60), alpha' linear between the rows of plasticity index."""
    for (low, first), (high, last) in zip(PLASTICITY, PLASTICITY[1:]):
        if plasticity <= high:
            alpha = first + (plasticity - low) / (high - low) * (last - first)
            break
    found = undrainedshearstrength_spt_salgado(100.0 * plasticity, count)
    strength = alpha * ATMOSPHERE * count
    return alpha, _from_library("s_u of N_60", found["Su [kPa]"], strength)


def cone_strength(net, factor):
    """(q_t - s_v)/N_kt."""
    found = undrainedshearstrength_clay_radlunne(net / 1000.0, factor)
    return _from_library("s_u of q_t", found["Su [kPa]"], net / factor)
