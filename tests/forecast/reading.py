"""The depth at which a log meets its torque, from the text of the method `forecast_torque_depth`.

Depths in feet. Written apart from the engine: readings that count, means over them, and the
least depth from which on the mean holds.
"""

METRE = 1 / 0.3048


def counts(depths, torques, length):
    """For each reading whether it counts: no rise of more than 1.5 times that falls again within
    the averaging length or 1 m (a single reading always), and at the end none that has not held
    over the averaging length."""
    n, extent = len(depths), max(length, METRE) * (1 + 1e-9)
    good = [True] * n
    for first in range(1, n):
        before = first - 1
        for last in range(first, n - 1):
            least = min(torques[first : last + 1])
            if least <= 1.5 * torques[before]:
                break
            short = depths[last + 1] - depths[before] <= extent
            if least > 1.5 * torques[last + 1] and (short or first == last):
                for i in range(first, last + 1):
                    good[i] = False
            if depths[last] - depths[before] > extent:
                break
    # what fell again is as if it had not been read; the end is judged on the rest
    left = [i for i in range(n) if good[i]]
    for place in range(1, len(left)):
        before, run = left[place - 1], left[place:]
        rises = all(torques[i] > 1.5 * torques[before] for i in run)
        held = depths[left[-1]] - depths[before] >= length * (1 - 1e-9)
        if rises and not (held and len(run) > 1):
            for i in run:
                good[i] = False
            break
    return good


def mean(depths, torques, to, length):
    """Mean torque by depth over a length that ends at a depth; the first reading stands for
    nothing above it."""
    total = 0.0
    for above, below, torque in zip(depths, depths[1:], torques[1:]):
        part = min(below, to) - max(above, to - length)
        if part > 0:
            total += torque * part
    return total / length


def depth_met(depths, torques, required, length):
    """("met", depth), ("not_met", depth) or ("not_usable", None)."""
    good = counts(depths, torques, length)
    d = [x for x, ok in zip(depths, good) if ok]
    t = [x for x, ok in zip(torques, good) if ok]
    if len(d) < 2 or d[-1] - d[0] < length:
        return "not_usable", None
    first, end = d[0] + length, d[-1]
    stops = sorted({x for x in d + [x + length for x in d] if first < x < end} | {first, end})
    deeper = None
    for x in reversed(stops):
        here = mean(d, t, x, length)
        if here < required:
            if deeper is None:
                return "not_met", x
            at, there = deeper
            return "met", x + (required - here) / (there - here) * (at - x)
        deeper = (x, here)
    return ("met", first) if d[0] <= length else ("not_usable", None)
