"""EN 1997-1 for piles by design approaches 1 and 2: tables A.3 and A.6 to A.10, 7.6.2 and 7.6.3."""

from units import base

# Actions, table A.3: permanent unfavourable, permanent favourable, variable.
ACTIONS = {"A1": (1.35, 1.0, 1.5), "A2": (1.0, 1.0, 1.3)}
# Resistance, tables A.6 to A.8: base, total, tension by set.
RESISTANCE = {
    "driven": {"R1": (1.0, 1.0, 1.25), "R2": (1.1, 1.1, 1.15), "R4": (1.3, 1.3, 1.6)},
    "bored": {"R1": (1.25, 1.15, 1.25), "R2": (1.1, 1.1, 1.15), "R4": (1.6, 1.5, 1.6)},
    "continuous_flight_auger": {
        "R1": (1.1, 1.1, 1.25),
        "R2": (1.1, 1.1, 1.15),
        "R4": (1.45, 1.4, 1.6),
    },
}
# Load tests, table A.9: number of them, on the mean, on the least.
TESTED = ((1, 1.4, 1.4), (2, 1.3, 1.2), (3, 1.2, 1.05), (4, 1.1, 1.0), (5, 1.0, 1.0))
# Profiles of ground tests, table A.10.
PROFILES = (
    (1, 1.40, 1.40),
    (2, 1.35, 1.27),
    (3, 1.33, 1.23),
    (4, 1.31, 1.20),
    (5, 1.29, 1.15),
    (7, 1.27, 1.12),
    (10, 1.25, 1.08),
)
# Names of the combinations with their sets; the second is that of own factors.
COMBINATIONS = {
    "da1": (("da1_combination_1", "A1", "R1"), ("da1_combination_2", "A2", "R4")),
    "da2": (("da2", "A1", "R2"),),
}
OWN = ("combination_1", "combination_2")


def _row(rows, count):
    """Factors for so many tests: the last row that has not more."""
    return [row for row in rows if row[0] <= count][-1][1:]


def _resistances(basis, ultimate, side):
    """(resistances of the direction, whether measured)."""
    proof = basis.get("proof") or {}
    if "load_tests" in proof:
        tests = proof["load_tests"]["tests"]
        return [base(test[side]) for test in tests if side in test], True
    others = (proof.get("ground_tests") or {}).get("other_profiles") or []
    model = basis.get("model_factor", 1.0)
    found = [ultimate] + [base(other[side]) for other in others if side in other]
    return [value / model for value in found], False


def _correlation(basis, count, measured):
    """((xi on the mean, sent), (xi on the least, sent))."""
    own = basis.get("own_factors") or {}
    row = _row(TESTED if measured else PROFILES, count)
    names = ("correlation_mean_factor", "correlation_least_factor")
    return [(own.get(n, value), n in own) for n, value in zip(names, row)]


def _partial(basis, number, tension, measured):
    """(factor on the resistance, its name, whether it was sent) of a combination."""
    sent = (basis.get("own_factors") or {}).get(OWN[number]) or {}
    _, _, name = COMBINATIONS[basis["approach"]][number]
    row = RESISTANCE[basis["pile_kind"]][name]
    if tension:
        own, column, label = "tension_resistance_factor", 2, "tension_partial_factor"
    else:
        default = "total" if measured else "base"
        total = basis.get("compression_resistance", default) == "total"
        own, column = "compression_resistance_factor", int(total)
        label = "total_partial_factor" if total else "base_partial_factor"
    return sent.get(own, row[column]), label, own in sent


def _action_factors(basis, number, side):
    """(name, factor, whether it was sent, actions it is on) of a combination."""
    actions = (basis.get("actions") or {}).get(side)
    if actions is None:
        return []
    sent = (basis.get("own_factors") or {}).get(OWN[number]) or {}
    unfavourable, favourable, variable = ACTIONS[COMBINATIONS[basis["approach"]][number][1]]
    rows = [("permanent_unfavourable_factor", unfavourable), ("variable_factor", variable)]
    names = ["permanent", "variable"]
    if side == "tension":
        rows.append(("permanent_favourable_factor", favourable))
        names = ["permanent_unfavourable", "variable", "permanent_favourable"]
    loads = [base(actions[name]) if name in actions else 0.0 for name in names]
    return [
        (name, sent.get(name, value), name in sent, load)
        for (name, value), load in zip(rows, loads)
    ]


def _effect(basis, number, side):
    """Design effect of the actions in a combination, never negative."""
    parts = [factor * load for _, factor, _, load in _action_factors(basis, number, side)]
    held = parts.pop() if side == "tension" else 0.0
    return max(sum(parts) - held, 0.0)


def eurocode_design(basis, ultimate, side):
    """Design resistance with its characteristic value and combinations; None without tests."""
    values, measured = _resistances(basis, ultimate, side)
    if not values:
        return None
    (on_mean, _), (on_least, _) = _correlation(basis, len(values), measured)
    characteristic = min(sum(values) / len(values) / on_mean, min(values) / on_least)
    rows = []
    for number, (name, _, _) in enumerate(COMBINATIONS[basis["approach"]]):
        factor, _, _ = _partial(basis, number, side == "tension", measured)
        row = {"combination": name, "capacity": characteristic / factor}
        if _action_factors(basis, number, side):
            row["effect"] = _effect(basis, number, side)
        rows.append(row)
    return {
        "kind": "factored",
        "from_ultimate": min(values) if measured else ultimate,
        "capacity": min(row["capacity"] for row in rows),
        "characteristic": characteristic,
        "combinations": rows,
    }


def eurocode_factors(basis, side):
    """(name, factor, whether it was sent, combination) in force, in the order of the answer."""
    values, measured = _resistances(basis, 0.0, side)
    if not values:
        return []
    rows = []
    if not measured:
        sent = "model_factor" in basis
        rows.append(("model_factor", basis.get("model_factor", 1.0), sent, None))
    names = ("correlation_mean_factor", "correlation_least_factor")
    for name, (factor, sent) in zip(names, _correlation(basis, len(values), measured)):
        rows.append((name, factor, sent, None))
    for number, (combination, _, _) in enumerate(COMBINATIONS[basis["approach"]]):
        for name, factor, sent, _ in _action_factors(basis, number, side):
            rows.append((name, factor, sent, combination))
        factor, name, sent = _partial(basis, number, side == "tension", measured)
        rows.append((name, factor, sent, combination))
    return rows
