"""Published factors of bearing, uplift and the cylinder, one function each. No pile, no layers.

Friction angles in degrees. Tables of Meyerhof and Adams 1968 and of Mitsch and Clemence 1985
as quoted in textbooks on earth anchors.
"""

import math

from general import meyerhof_ngamma, prandtl_nq, vesic_ngamma

# Friction angle, growth m, critical ratio (H/D)_cr of a circular plate.
BREAKOUT = (
    (20.0, 0.05, 2.5),
    (25.0, 0.10, 3.0),
    (30.0, 0.15, 4.0),
    (35.0, 0.25, 5.0),
    (40.0, 0.35, 7.0),
    (45.0, 0.50, 9.0),
    (48.0, 0.60, 11.0),
)
BREAKOUT_LATERAL = 0.95
# Friction angle, growth m of the lateral stress on the cylinder.
CYLINDER = ((25.0, 0.033), (30.0, 0.075), (35.0, 0.18), (40.0, 0.25), (45.0, 0.289))


def tan(phi):
    return math.tan(math.radians(phi))


def between(rows, phi, column):
    """Linear in the friction angle between the rows, the end rows beyond them."""
    if phi <= rows[0][0]:
        return rows[0][column]
    for low, high in zip(rows, rows[1:]):
        if phi <= high[0]:
            share = (phi - low[0]) / (high[0] - low[0])
            return low[column] + share * (high[column] - low[column])
    return rows[-1][column]


def local_shear(phi):
    """atan(2/3 tan phi)."""
    return math.degrees(math.atan(2.0 / 3.0 * tan(phi)))


def terzaghi_nq(phi):
    """exp(2 (3 pi/4 - phi/2) tan phi) / (2 cos^2(45 + phi/2))."""
    angle = math.radians(phi)
    top = math.exp(2.0 * (0.75 * math.pi - angle / 2.0) * math.tan(angle))
    return top / (2.0 * math.cos(math.pi / 4.0 + angle / 2.0) ** 2)


def hansen_ngamma(phi):
    """1.5 (N_q - 1) tan phi."""
    return 1.5 * (prandtl_nq(phi) - 1.0) * tan(phi)


def meyerhof_depth(phi, ratio):
    """1 + 0.1 sqrt(K_p) z/D, held from one diameter on."""
    return 1.0 + 0.1 * math.tan(math.radians(45.0 + phi / 2.0)) * min(ratio, 1.0)


def nq(family, phi, ratio):
    """N_q of a family at a depth of so many diameters."""
    if family == "terzaghi_1943":
        return terzaghi_nq(phi)
    if family == "meyerhof_1963":
        return prandtl_nq(phi) * meyerhof_depth(phi, ratio)
    return prandtl_nq(phi)


def _hansen_depth(ratio):
    """k = D/B, from one diameter on atan(D/B)."""
    return ratio if ratio < 1.0 else math.atan(ratio)


def _passive(phi):
    return math.tan(math.radians(45.0 + phi / 2.0)) ** 2


def circle_overburden(family, phi, ratio):
    """s_q d_q of a circle, beside the d_q of Meyerhof that is in N_q."""
    depth = 1.0 + 2.0 * tan(phi) * (1.0 - math.sin(math.radians(phi))) ** 2 * _hansen_depth(ratio)
    if family == "vesic_1973":
        return (1.0 + tan(phi)) * depth
    if family == "hansen_1970":
        return (1.0 + math.sin(math.radians(phi))) * depth
    if family == "meyerhof_1963":
        return 1.0 + 0.1 * _passive(phi) if phi > 10.0 else 1.0
    return 1.0


def circle_cohesion(family, phi, nc, ratio):
    """s_c d_c of a circle."""
    if family in ("vesic_1973", "hansen_1970"):
        return (1.0 + prandtl_nq(phi) / nc) * (1.0 + 0.4 * _hansen_depth(ratio))
    if family == "meyerhof_1963":
        depth = 1.0 + 0.2 * math.sqrt(_passive(phi)) * min(ratio, 1.0)
        return (1.0 + 0.2 * _passive(phi)) * depth
    return 1.3 if family == "terzaghi_1943" else 1.0


NGAMMA = {
    "vesic_1973": vesic_ngamma,
    "meyerhof_1963": meyerhof_ngamma,
    "hansen_1970": hansen_ngamma,
}


def skempton_nc(ratio):
    """5 (1 + 0.2 B/L)(1 + 0.2 z/B), at most 9, of a circle."""
    return min(5.0 * 1.2 * (1.0 + 0.2 * ratio), 9.0)


def cavity_nc(rigidity):
    """4/3 (ln I_rr + 1) + pi/2 + 1."""
    return 4.0 / 3.0 * (math.log(rigidity) + 1.0) + math.pi / 2.0 + 1.0


def critical_sand(phi):
    """(H/D)_cr of a plate in sand."""
    return between(BREAKOUT, phi, 2)


def critical_clay(rule, su):
    """(H/D)_cr of a plate in clay."""
    return 4.0 if rule == "four_diameters" else min(0.107 * su + 2.5, 7.0)


def breakout_sand(phi, ratio):
    """F_q = 1 + 2 (1 + m R) R K_u tan phi, R = min(H/D, (H/D)_cr)."""
    held = min(ratio, critical_sand(phi))
    growth = between(BREAKOUT, phi, 1)
    return 1.0 + 2.0 * (1.0 + growth * held) * held * BREAKOUT_LATERAL * tan(phi)


def breakout_clay(ratio):
    """F_c = 1.2 H/D, at most 9."""
    return min(1.2 * ratio, 9.0)


def lateral_uplift(phi, ratio):
    """K_u = 0.6 + m H/D up to (H/D)_cr; 0.6 below 25 degrees."""
    if phi < CYLINDER[0][0]:
        return 0.6
    return 0.6 + between(CYLINDER, phi, 1) * min(ratio, critical_sand(phi))


def at_rest_friction(phi):
    """(1 - sin phi) tan phi, held from 38.2 degrees on: its maximum, at sin phi = 0.618034."""
    held = min(math.radians(phi), math.asin((math.sqrt(5.0) - 1.0) / 2.0))
    return (1.0 - math.sin(held)) * math.tan(held)
