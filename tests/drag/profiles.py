"""Random piles in settling ground: the request, and the same pile in m, kN and kPa for balance.py.

Everything is drawn from one generator with a fixed seed. Each choice of the request that moves
the neutral plane occurs; drag.py counts them and fails where one is hardly there.
"""

import dataclasses

from units import FACTORS, quantity

# Published range of beta by soil as the text of the service's document states it: lower, upper.
BETA = {"clay": (0.15, 0.35), "silt": (0.25, 0.50), "sand": (0.30, 0.90), "gravel": (0.35, 0.80)}


@dataclasses.dataclass
class Ground:
    """A layer. `factors` lower, upper; `strength` None: they stand for beta."""

    thickness: float
    weight: float
    factors: tuple
    strength: float | None
    limit: float | None


@dataclasses.dataclass
class Pile:
    """A pile in it; lengths m, forces kN, stresses kPa. `table`: rows (depth, sum) instead of layers."""

    head: float
    toe: float
    perimeter: float
    load: float
    resistance: float | None
    layers: list
    water: float | None
    surcharge: float
    settling: float | None
    method: str
    table: list | None = None
    steel: dict | None = None


def _sent(rnd, value, *units):
    """A quantity in one of the units, from a value in the base unit."""
    unit = rnd.choice(units)
    return quantity(value / FACTORS[unit], unit)


def _layer(rnd, kinds):
    thickness, weight = rnd.uniform(0.4, 5.0), rnd.uniform(15.0, 22.0)
    sent = {
        "thickness": _sent(rnd, thickness, "m", "ft"),
        "unit_weight": _sent(rnd, weight, "kN_per_m3", "pcf"),
    }
    kind = rnd.choice(("beta_by_soil", "beta", "alpha", "alpha_alone"))
    strength = None
    if kind == "beta_by_soil":
        soil = rnd.choice(tuple(BETA))
        factors = BETA[soil]
        sent["friction"] = {"beta_by_soil": {"soil": soil}}
    elif kind == "beta":
        upper = rnd.uniform(0.1, 0.9)
        factors = (rnd.uniform(0.3, 1.0) * upper, upper)
        sent["friction"] = {"beta": {"lower_factor": factors[0], "upper_factor": factors[1]}}
    else:
        upper, strength = rnd.uniform(0.2, 1.0), rnd.uniform(10.0, 90.0)
        factors = (upper, upper)
        alpha = {"upper_factor": upper, "undrained_strength": _sent(rnd, strength, "kPa", "psf")}
        if kind == "alpha":
            factors = (rnd.uniform(0.3, 1.0) * upper, upper)
            alpha["lower_factor"] = factors[0]
        sent["friction"] = {"alpha": alpha}
    limit = None
    if rnd.random() < 0.4:
        limit = rnd.uniform(5.0, 45.0)
        sent["friction_limit"] = _sent(rnd, limit, "kPa", "psf")
        kinds.add("limit")
    kinds.add(kind)
    return Ground(thickness, weight, factors, strength, limit), sent


def _steel(rnd, kinds):
    """What the steel bears: as sent, and (factor of load, factor of drag, strength)."""
    strength = rnd.uniform(50.0, 900.0)
    if rnd.random() < 0.5:
        kinds.add("allowable_stress")
        sent = {"allowable_stress": {"allowable_strength": _sent(rnd, strength, "kN", "kip")}}
        return sent, {"load": 1.0, "drag": 1.0, "strength": strength}
    kinds.add("limit_states")
    phi, own = rnd.uniform(0.5, 0.9), rnd.random() < 0.5
    factors = (rnd.uniform(1.0, 1.5), rnd.uniform(1.0, 1.5)) if own else (1.25, 1.10)
    sent = {"nominal_resistance": _sent(rnd, strength, "kN", "kip"), "resistance_factor": phi}
    if own:
        sent["permanent_load_factor"], sent["drag_load_factor"] = factors
    return {"limit_states": sent}, {
        "load": factors[0],
        "drag": factors[1],
        "strength": phi * strength,
        "least": strength,
    }


def _pile(rnd, number, kinds):
    """Shaft, head and toe."""
    sent = {"label": f"pile {number}"}
    if rnd.random() < 0.7:
        d = rnd.uniform(0.06, 0.30)
        perimeter = 3.141592653589793 * d
        sent["shaft"] = {"round": {"outside_diameter": _sent(rnd, d, "mm", "in")}}
    else:
        side = rnd.uniform(0.03, 0.10)
        perimeter = 4.0 * side
        sent["shaft"] = {"square": {"side": _sent(rnd, side, "mm", "in")}}
        kinds.add("square")
    head, where = 0.0, rnd.random()
    if where < 0.3:
        head = rnd.uniform(0.2, 1.5)
        kinds.add("head below grade")
    elif where < 0.5:
        head = -rnd.uniform(0.1, 1.0)
        kinds.add("head above grade")
    if head:
        sent["head_depth"] = _sent(rnd, head, "m", "ft")
    return head, perimeter, sent


def drawn(rnd, number):
    """(request, pile, kinds) of a pile in layers."""
    kinds = set()
    head, perimeter, sent = _pile(rnd, number, kinds)
    pairs = [_layer(rnd, kinds) for _ in range(rnd.randint(1, 6))]
    layers = [p[0] for p in pairs]
    depth = sum(l.thickness for l in layers)
    toe = min(depth, max(head + 0.5, depth * rnd.uniform(0.7, 1.0)))
    if depth < head + 0.5:  # too little ground for this head
        layers[-1].thickness += head + 0.5
        pairs[-1][1]["thickness"] = quantity(layers[-1].thickness, "m")
        toe = head + 0.5 + 0.9 * depth
    sent["toe_depth"] = _sent(rnd, toe, "m", "ft")
    ground = {"layers": [p[1] for p in pairs]}
    water, surcharge = None, 0.0
    if rnd.random() < 0.6:
        water = rnd.uniform(0.0, 0.9 * toe)
        ground["water_depth"] = _sent(rnd, water, "m", "ft")
        kinds.add("water")
    if rnd.random() < 0.5:
        surcharge = rnd.uniform(2.0, 60.0)
        ground["surcharge"] = _sent(rnd, surcharge, "kPa", "psf")
        kinds.add("surcharge")
    pile = Pile(head, toe, perimeter, 0.0, None, layers, water, surcharge, None, "neutral_plane")
    _ask(rnd, pile, sent, {"layers": ground}, kinds)
    return sent, pile, kinds


def tabled(rnd, number):
    """(request, pile, kinds) of a pile with its shaft resistance summed over depth."""
    kinds = {"cumulative"}
    depth, total, rows = 0.0, 0.0, [(0.0, 0.0)]
    for _ in range(rnd.randint(3, 20)):
        depth += rnd.uniform(0.2, 2.0)
        total += rnd.uniform(1.0, 30.0)
        rows.append((depth, total))
    columns = [{"name": "depth", "unit": "m"}, {"name": "cumulative_resistance", "unit": "kN"}]
    sent = {"label": f"pile {number}", "toe_depth": quantity(depth, "m")}
    pile = Pile(0.0, depth, 1.0, 0.0, None, [], None, 0.0, None, "neutral_plane", rows)
    table = {"columns": columns, "rows": [list(r) for r in rows]}
    _ask(rnd, pile, sent, {"cumulative": {"table": table}}, kinds)
    return sent, pile, kinds


def _ask(rnd, pile, sent, friction, kinds):
    """Load, toe, settling depth, method and steel, drawn so that every position occurs."""
    size = 40.0 * pile.perimeter * (pile.toe - max(pile.head, 0.0))
    pile.load = rnd.uniform(0.0, 1.2) * size * rnd.choice((0.3, 1.0))
    toe = rnd.choice((0.1, 1.0, 1.0, 4.0)) * rnd.uniform(0.3, 1.5) * size
    drag = {"permanent_load": _sent(rnd, pile.load, "kN", "kip"), "friction": friction}
    settles = rnd.random() < 0.5
    if settles:
        top = max(pile.head, 0.0)
        pile.settling = top + rnd.uniform(0.1, 0.9) * (pile.toe - top)
        cause = rnd.choice(("fill", "collapse_on_wetting", "drawdown"))
        drag["settling"] = {"depth": _sent(rnd, pile.settling, "m", "ft"), "cause": {cause: {}}}
        pile.method = "fill_base"
        kinds.add(cause)
    if not settles or rnd.random() < 0.7:
        pile.resistance = toe
        drag["toe"] = {"resistance": {"given": {"ultimate": _sent(rnd, toe, "kN", "kip")}}}
        if rnd.random() < 0.3:
            part = rnd.uniform(0.2, 1.0)
            drag["toe"]["mobilised_ratio"] = part
            pile.resistance = part * toe
            kinds.add("mobilised")
        if settles and rnd.random() < 0.5:
            pile.method = drag["method"] = "neutral_plane"
            kinds.add("balance though settling")
    if pile.method == "fill_base":
        kinds.add("fill_base")
    if rnd.random() < 0.5:
        drag["structural"], pile.steel = _steel(rnd, kinds)
    sent["drag"] = drag
