"""Second judge: heat conduction with phase change in enthalpy, by finite volumes, fully implicit.

It shares nothing with tracking.py but the layers, and takes frozen and unfrozen properties apart
where they differ. Nothing of the formulas of the trade is used: only Fourier's law and the heat
content of each layer.
"""

import math

LEAST_CAPACITY = 1.0  # J/(m3 K), of a layer that only resists


def grid(layers, reach, finest, least):
    """Cells (size, layer): ends of layers are ends of cells, fine where frost may come."""
    cells, depth = [], 0.0
    for layer in layers:
        if layer.thickness is not None:
            inside = min(layer.thickness, reach)
            count = max(least, math.ceil(inside / finest))
            cells += [(inside / count, layer)] * count
            depth += inside
            continue
        fine = max(reach - depth, 20 * finest)
        count = math.ceil(fine / finest)
        cells += [(fine / count, layer)] * count
        size, bottom = fine / count, depth + fine
        while bottom < 12.0 * reach:
            size *= 1.08
            bottom += size
            cells.append((size, layer))
    return cells


def front(cells, heat, temperature):
    """Depth of the 0 C plane; 0 where the ground never froze."""
    depth, before = 0.0, None
    for (size, layer), h, t in zip(cells, heat, temperature, strict=True):
        if -layer.latent < h < 0.0:  # partly frozen
            return depth + size * (-h / layer.latent)
        if h >= 0.0:
            if before is None:
                return 0.0
            upper, cold, latent = before
            if latent > 0.0 and layer.latent > 0.0:
                return depth
            # a dry layer holds no partly frozen cell: where the straight line passes 0
            up, down = 0.5 * upper[0] / upper[1].frozen, 0.5 * size / layer.unfrozen
            reach = -cold / (t - cold) * (up + down)
            if reach <= up:
                return depth - (up - reach) * upper[1].frozen
            return depth + (reach - up) * layer.unfrozen
        before = ((size, layer), t, layer.latent)
        depth += size
    raise ValueError("the ground froze to the end of the grid")


def solve(layers, above, below, seconds, reach, finest=0.02, steps=240, least=6):
    """Depth of frost, and the number of systems solved. Step n of N ends at seconds (n/N)^2."""
    cells = grid(layers, reach, finest, least)
    n = len(cells)
    sizes = [c[0] for c in cells]
    kf, ku = [c[1].frozen for c in cells], [c[1].unfrozen for c in cells]
    cf = [max(c[1].cold, LEAST_CAPACITY) for c in cells]
    cu = [max(c[1].warm, LEAST_CAPACITY) for c in cells]
    latent = [c[1].latent for c in cells]
    heat = [above * c for c in cu]  # 0 at 0 C unfrozen, -latent at 0 C frozen
    temp = [above] * n
    work, past = 0, 0.0
    for number in range(1, steps + 1):
        now = seconds * (number / steps) ** 2
        todo = [now - past]
        past = now
        while todo:
            step = todo.pop()
            half = [
                0.5 * s / (a if h < -0.5 * l else b)
                for s, a, b, h, l in zip(sizes, kf, ku, heat, latent, strict=True)
            ]
            g = [1.0 / half[0]] + [1.0 / (half[i - 1] + half[i]) for i in range(1, n)]
            fresh, tried = advance(heat, [step / s for s in sizes], g, cf, cu, latent, below)
            work += tried
            if fresh is None:
                if len(todo) > 40:
                    raise ArithmeticError("a step did not settle")
                todo += [0.5 * step, 0.5 * step]
            else:
                heat = fresh
    temp = [
        h / u if h >= 0.0 else ((h + l) / f if h <= -l else 0.0)
        for h, u, f, l in zip(heat, cu, cf, latent, strict=True)
    ]
    return front(cells, heat, temp), work


def piece(h, latent):
    """Which of the three straight pieces of T(h): 1 unfrozen, 0 freezing, -1 frozen."""
    return 1 if h >= 0.0 else (-1 if h <= -latent else 0)


def advance(old, rate, g, cf, cu, latent, below, tries=25):
    """One implicit step: solved on straight pieces of T(h) until each cell stays on its own.

    None where that does not settle; the number of tries.
    """
    n = len(old)
    pieces = [piece(h, l) for h, l in zip(old, latent, strict=True)]
    for tried in range(1, tries + 1):
        slope = [
            1.0 / u if s == 1 else (1.0 / f if s == -1 else 0.0)
            for s, u, f in zip(pieces, cu, cf, strict=True)
        ]
        shift = [l / f if s == -1 else 0.0 for s, l, f in zip(pieces, latent, cf, strict=True)]
        p, q = [0.0] * n, [0.0] * n  # h[i] = p[i] T[i-1] + q[i], found from below upwards
        carry_p, carry_q, lower = 0.0, 0.0, 0.0  # T[i+1] = carry_p T[i] + carry_q
        for i in range(n - 1, -1, -1):
            up, down = g[i] * rate[i], lower * rate[i]
            out = up + down * (1.0 - carry_p)
            a = 1.0 + out * slope[i]
            p[i], q[i] = up / a, (old[i] - out * shift[i] + down * carry_q) / a
            carry_p, carry_q, lower = slope[i] * p[i], slope[i] * q[i] + shift[i], g[i]
        t, heat = -below, [0.0] * n
        for i in range(n):
            heat[i] = p[i] * t + q[i]
            t = slope[i] * heat[i] + shift[i]
        now = [piece(h, l) for h, l in zip(heat, latent, strict=True)]
        if now == pieces:
            return heat, tried
        pieces = now
    return None, tries
