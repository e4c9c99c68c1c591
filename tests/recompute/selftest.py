"""Proof that the comparison can fail: answers with one figure moved must be found out."""

import copy

from compare import Comparison

MOVED = 1.0 + 1e-5


def paths(node, at=()):
    """Paths of all numbers and words of a recomputation."""
    if isinstance(node, dict):
        for name, value in node.items():
            yield from paths(value, at + (name,))
    elif isinstance(node, list):
        for number, value in enumerate(node):
            yield from paths(value, at + (number,))
    else:
        yield at


def _move(answer, path):
    """A copy of the answer with one figure moved by 1e-5 or one word changed; None for a 0."""
    answer = copy.deepcopy(answer)
    holder = answer
    for step in path[:-1]:
        holder = holder[step]
    value = holder[path[-1]]
    if isinstance(value, str):
        holder[path[-1]] = value + "_"
    elif isinstance(value, dict):
        if value["value"] == 0:
            return None
        value["value"] *= MOVED
    elif value == 0:
        return None
    else:
        holder[path[-1]] = value * MOVED
    return answer


def comparison_can_fail(answered):
    """Moves every figure of the richest answer in turn; what is not noticed is a fault."""
    where, result, want = max(answered, key=lambda row: sum(1 for _ in paths(row[2])))
    faults, tried = [], 0
    untouched = Comparison()
    untouched.node("", where, result, want)
    if untouched.faults:
        return [f"{where} differs before anything was moved"]
    for path in paths(want):
        moved = _move(result, path)
        if moved is None:
            continue
        tried += 1
        comparison = Comparison()
        comparison.node("", where, moved, want)
        if len(comparison.faults) != 1:
            faults.append(f"{where}: moving {path} by 1e-5 was not noticed")
    print(f"self-test: each of {tried} figures and words of {where}, moved by 1e-5, is noticed")
    if tried < 50:
        faults.append(f"self-test tried only {tried} figures")
    return faults
