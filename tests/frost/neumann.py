"""The exact solution for ground of one kind, by which both judges are judged."""

import math


def depth(layer, above, below, seconds):
    """Depth of the front after a step of the surface, Neumann's, with own frozen and unfrozen properties.

    exp(-g2)/erf(g) - (k_u v_o / k_f v_s) n exp(-g2 n2)/erfc(g n) = g L sqrt(pi) / (C_f v_s),
    n2 the ratio of frozen to unfrozen diffusivity; depth 2 g sqrt(a_f t).
    """
    a_f, a_u = layer.frozen / layer.cold, layer.unfrozen / layer.warm
    n = math.sqrt(a_f / a_u)

    def rest(g):
        frozen = math.exp(-g * g) / math.erf(g)
        thawed = layer.unfrozen / layer.frozen * n * above / below * math.exp(-((g * n) ** 2)) / math.erfc(g * n)
        return frozen - thawed - g * layer.latent * math.sqrt(math.pi) / (layer.cold * below)

    low, high = 1e-12, 5.0 / max(1.0, n)
    for _ in range(200):
        middle = 0.5 * (low + high)
        if rest(middle) > 0.0:
            low = middle
        else:
            high = middle
    return 2.0 * low * math.sqrt(a_f * seconds)
