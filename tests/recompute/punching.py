"""Weaker soil below a helix: what it takes of the load that spreads down to it.

The load spreads by one across for two down on every side. Compression only.
"""

from bearing import compression_bearing
from pile import Helix

NEAR = 3.0


def _taken(pile, layer, spread):
    """Bearing of a layer under the load at its top, as of a plate there."""
    if not layer.credited:
        return 0.0
    return compression_bearing(pile, Helix("", spread, layer.top), layer)[2]


def punching_limit(pile, helix, bearing):
    """The one that takes least of the weaker layers that begin within three diameters below."""
    least = None
    for layer in pile.ground.layers:
        distance = layer.top - helix.depth
        near = 0.0 < distance < NEAR * helix.diameter
        if layer.kind == "rock" or not near:
            continue
        spread = helix.diameter + distance
        taken = _taken(pile, layer, spread)
        limit = taken * (spread / helix.diameter) ** 2
        if taken < bearing and (least is None or limit < least["bearing_limit"]):
            least = {
                "layer": layer.label,
                "distance": distance,
                "spread_diameter": spread,
                "layer_bearing": taken,
                "bearing_limit": limit,
            }
    return least


def _held(bearing):
    """Resistance of a helix with its bearing held at the limit."""
    limit = bearing.get("punching", {}).get("bearing_limit", bearing["bearing"])
    return bearing["area"] * min(bearing["bearing"], limit)


def ultimate_by_punching(found, bearings):
    """The ultimate with every helix held, where that is less than without; else None."""
    least = sum(_held(bearing) for bearing in bearings)
    cylinder = found.get("cylindrical_shear")
    if cylinder:
        (end,) = [b for b in bearings if b["label"] == cylinder["end_helix"]]
        least = min(least, _held(end) + cylinder["shear"])
    held = least + found["shaft_adhesion"]
    return held if held < found["ultimate"] else None
