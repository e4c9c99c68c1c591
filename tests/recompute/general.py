"""What is taken from the general geotechnical library `groundhog` instead of being written here.

Bearing factors of sand, end bearing of clay and the API adhesion factor. Each is used within
the range its authors validate; outside it the published formula stands by itself, and inside
it both must agree. The library also imports packages for drawing and tables; they are not
needed for these calls and are not installed, empty modules stand in for them.
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

# Calls answered by the library, by name; the driver requires some of each.
USED = {"N_q": 0, "N_gamma vesic": 0, "N_gamma meyerhof": 0, "alpha": 0, "9 s_u": 0}


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
