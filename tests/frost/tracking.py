"""First judge: the front is followed from node to node, and how long it takes for each is solved.

Fourier's law and the balance of heat, fully implicit, with the mean conductivity and heat capacity
of each layer in both states. Ground at `above` K over freezing; from the start its surface is held
`below` K under it; the depth of the front after `seconds` is wanted.
"""

import math

DEEP = 4.0  # of fine nodes in the last layer, m
FAR = 20.0  # of growing ones below, m
FEWEST = 4  # intervals in a layer


def intervals(layers, finest):
    """(size, k, C, L) between nodes; the ground alone decides, never the winter."""
    cells = []
    for layer in layers[:-1]:
        count = max(FEWEST, math.ceil(layer.thickness / finest - 1e-6))
        cells += [(layer.thickness / count, layer.conductivity, layer.capacity, layer.latent)] * count
    last, size, depth = layers[-1], finest, 0.0
    while depth < DEEP + FAR:
        cells.append((size, last.conductivity, last.capacity, last.latent))
        depth += size
        if depth > DEEP:
            size *= 1.1
    return cells


class Ground:
    """Temperatures of all nodes; node 0 is the surface."""

    def __init__(self, cells, above, below):
        self.n = len(cells)
        self.resistance = [c[0] / c[1] for c in cells] + [math.inf]  # nothing flows below the last
        self.heat = [0.0] * (self.n + 1)
        for i, (size, _, capacity, _) in enumerate(cells):
            self.heat[i] += 0.5 * size * capacity
            self.heat[i + 1] += 0.5 * size * capacity
        self.temp = [above] * (self.n + 1)
        self.temp[0] = -below
        self.below = below
        self.a, self.b = [0.0] * (self.n + 1), [0.0] * (self.n + 1)
        self.sweeps = 0

    def energy(self, f, dt):
        """Heat that node f gives up beyond its own in dt, when it is at 0 at the end.

        Each temperature above f becomes a T(next below) + b, each below f a T(next above) + b.
        """
        self.sweeps += 1
        r, heat, temp, a, b = self.resistance, self.heat, self.temp, self.a, self.b
        pa, pb = 0.0, -self.below
        for i in range(1, f):
            m = heat[i] / dt
            d = m + (1.0 - pa) / r[i - 1] + 1.0 / r[i]
            pb = (m * temp[i] + pb / r[i - 1]) / d
            pa = 1.0 / r[i] / d
            a[i], b[i] = pa, pb
        qa, qb = 1.0, 0.0
        for i in range(self.n, f, -1):
            m = heat[i] / dt
            d = m + 1.0 / r[i - 1] + (1.0 - qa) / r[i]
            qb = (m * temp[i] + qb / r[i]) / d
            qa = 1.0 / r[i - 1] / d
            a[i], b[i] = qa, qb
        self.upper, self.lower = (pa, pb), (qa, qb)
        return dt * (-pb / r[f - 1] - qb / r[f]) - heat[f] * temp[f]

    def unfrozen(self, f, dt):
        """Temperature of node f after dt where nothing freezes, from the last sweep."""
        r, m = self.resistance, self.heat[f] / dt
        (pa, pb), (qa, qb) = self.upper, self.lower
        return (m * self.temp[f] + pb / r[f - 1] + qb / r[f]) / (m + (1.0 - pa) / r[f - 1] + (1.0 - qa) / r[f])

    def settle(self, f, value):
        """Takes over the last sweep with node f at that temperature."""
        temp, a, b = self.temp, self.a, self.b
        temp[f] = value
        for i in range(f - 1, 0, -1):
            temp[i] = a[i] * temp[i + 1] + b[i]
        for i in range(f + 1, self.n + 1):
            temp[i] = a[i] * temp[i - 1] + b[i]


def time_to_freeze(ground, f, latent, longest):
    """The dt up to `longest` in which node f gives up exactly `latent`, by false position."""
    low, high = 0.0, longest
    under = -ground.heat[f] * ground.temp[f] - latent
    over = ground.energy(f, high) - latent
    scale, side, dt = over - under, 0, high
    for _ in range(200):
        if abs(over) <= 1e-12 * scale:
            return high
        dt = (low * over - high * under) / (over - under)
        if not low < dt < high:
            dt = 0.5 * (low + high)
        rest = ground.energy(f, dt) - latent
        if abs(rest) <= 1e-11 * scale or high - low <= 1e-13 * high:
            return dt
        if rest > 0.0:
            high, over = dt, rest
            under = 0.5 * under if side > 0 else under
            side = 1
        else:
            low, under = dt, rest
            over = 0.5 * over if side < 0 else over
            side = -1
    raise ArithmeticError("a step did not settle")


def solve(layers, above, below, seconds, finest, parts):
    """(Depth of the front, sweeps). No step is longer than a `parts`th of the season."""
    cells = intervals(layers, finest)
    ground = Ground(cells, above, below)
    now, depth, longest = 0.0, 0.0, seconds / parts
    for f, (size, _, _, latent) in enumerate(cells, 1):
        began, left = now, size * latent
        while True:
            energy = ground.energy(f, longest)
            if energy >= left:
                break
            ground.settle(f, 0.0 if energy >= 0.0 else ground.unfrozen(f, longest))
            left -= max(energy, 0.0)
            now += longest
            if now > 50.0 * seconds:
                return depth, ground.sweeps  # the front will never come here
        now += time_to_freeze(ground, f, left, longest)
        ground.settle(f, 0.0)
        if now >= seconds:  # the square of the depth grows with time
            end = depth + size
            part = (seconds - began) / (now - began)
            return math.sqrt(depth * depth + (end * end - depth * depth) * part), ground.sweeps
        depth += size
    raise ValueError("the ground froze to the end of the grid")


def depth(layers, above, below, seconds, finest=0.02, parts=200):
    """Depth of the front; the error of a grid, which halves with it, is taken off by a coarser one."""
    coarse, _ = solve(layers, above, below, seconds, 2.0 * finest, parts // 2)
    fine, _ = solve(layers, above, below, seconds, finest, parts)
    return 2.0 * fine - coarse
