"""Units of the requests and answers, as factors to kN, m, kPa, kN/m3, kN m, rpm, h and degrees.

Conversions only, from their definitions (1 ft = 0.3048 m, 1 lbf = 4.4482216152605 N);
taken from no other part of this project.
"""

import math

FOOT = 0.3048
INCH = FOOT / 12.0
POUND = 0.45359237 * 9.80665 / 1000.0  # lbf in kN

FACTORS = {
    # length, m
    "m": 1.0,
    "mm": 0.001,
    "cm": 0.01,
    "ft": FOOT,
    "in": INCH,
    # area, m2
    "m2": 1.0,
    "mm2": 1e-6,
    "ft2": FOOT * FOOT,
    "in2": INCH * INCH,
    # volume, m3
    "m3": 1.0,
    "ft3": FOOT**3,
    "yd3": 27.0 * FOOT**3,
    # force, kN
    "N": 0.001,
    "kN": 1.0,
    "lbf": POUND,
    "kip": 1000.0 * POUND,
    # stress, kPa
    "Pa": 0.001,
    "kPa": 1.0,
    "MPa": 1000.0,
    "bar": 100.0,
    "psf": POUND / FOOT**2,
    "ksf": 1000.0 * POUND / FOOT**2,
    "psi": POUND / INCH**2,
    "ksi": 1000.0 * POUND / INCH**2,
    # unit weight, kN/m3
    "N_per_m3": 0.001,
    "kN_per_m3": 1.0,
    "pcf": POUND / FOOT**3,
    # angle, degrees
    "deg": 1.0,
    "rad": 180.0 / math.pi,
    # torque, kN m
    "N_m": 0.001,
    "kN_m": 1.0,
    "in_lbf": POUND * INCH,
    "ft_lbf": POUND * FOOT,
    "kip_ft": 1000.0 * POUND * FOOT,
    "kip_in": 1000.0 * POUND * INCH,
    # capacity per torque, 1/m
    "per_m": 1.0,
    "per_ft": 1.0 / FOOT,
    # volume of one turn, m3
    "cm3_per_rev": 1e-6,
    "in3_per_rev": INCH**3,
    # speed of rotation, rpm
    "rpm": 1.0,
    "rev_per_s": 60.0,
    # time, h
    "s": 1.0 / 3600.0,
    "min": 1.0 / 60.0,
    "h": 1.0,
    "day": 24.0,
    "year": 8760.0,
    # pure numbers in tables and checks
    "1": 1.0,
}


def quantity(value, unit):
    """A quantity as it goes over the wire."""
    return {"value": value, "unit": unit}


def is_quantity(node):
    """Whether a node of an answer is a value with its unit."""
    return isinstance(node, dict) and set(node) == {"value", "unit"}


def base(node):
    """Value of a quantity in the base units of this file."""
    return node["value"] * FACTORS[node["unit"]]
