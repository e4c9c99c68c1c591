"""Adhesion of clay and silt to a round shaft above the top helix, by the API alpha."""

import math

from general import api_alpha
from units import base

SLICE = 0.25
IGNORED_DEPTH = 1.5


def shaft_adhesion(pile):
    """Sum of alpha s_u pi d h at mid-height of slices of at most 0.25 m; 0 where not counted."""
    chosen, members = pile.option("shaft_adhesion")
    if chosen == "none":
        return 0.0
    ignored = base(members["ignored_depth"]) if members.get("ignored_depth") else IGNORED_DEPTH
    top = max(ignored, pile.credit_depth)
    bottom = pile.helices[0].depth - pile.helices[0].diameter
    if bottom <= top:
        return 0.0
    total = 0.0
    for part in pile.ground.parts(top, bottom):
        if part.layer.su is None:
            continue
        count = math.ceil(part.height / SLICE - 1e-9)
        height = part.height / count
        for number in range(count):
            middle = part.top + (number + 0.5) * height
            alpha = api_alpha(part.layer.su, pile.ground.stress(middle))
            total += alpha * part.layer.su * math.pi * pile.width * height
    return total
