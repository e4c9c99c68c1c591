"""Compares an answer with its recomputation, member by member, and keeps the largest differences.

Every number, word and list of the recomputation must be in the answer. Members of the answer
that were not recomputed are listed, so that nothing new goes unnoticed.
"""

from units import base, is_quantity

TOLERANCE = 1e-6


class Comparison:
    """What was compared so far."""

    def __init__(self):
        # largest relative difference of each member, with the request where it stands
        self.largest = {}
        self.counted = {}
        self.faults = []
        self.extra = {}

    def number(self, path, where, got, want):
        """Relative to the larger of the two; two zeros are equal."""
        scale = max(abs(got), abs(want))
        difference = abs(got - want) / scale if scale > 0.0 else 0.0
        self.counted[path] = self.counted.get(path, 0) + 1
        if path not in self.largest or not difference <= self.largest[path][0]:
            self.largest[path] = (difference, where)
        if not difference <= TOLERANCE:
            self.faults.append(f"{where} {path}: service {got!r}, recomputed {want!r}")

    def node(self, path, where, got, want):
        """One node of the answer with its recomputation."""
        if isinstance(want, dict):
            self._members(path, where, got, want)
        elif isinstance(want, list):
            self._items(path, where, got, want)
        elif isinstance(want, float):
            self._number_at(path, where, got, want)
        elif got != want:
            self.faults.append(f"{where} {path}: service {got!r}, recomputed {want!r}")
        else:
            self.counted[path] = self.counted.get(path, 0) + 1

    def _number_at(self, path, where, got, want):
        if is_quantity(got):
            got = base(got)
        if isinstance(got, bool) or not isinstance(got, (int, float)):
            self.faults.append(f"{where} {path}: service {got!r}, recomputed {want!r}")
            return
        self.number(path, where, float(got), want)

    def _items(self, path, where, got, want):
        if not isinstance(got, list) or len(got) != len(want):
            self.faults.append(f"{where} {path}: not {len(want)} items: {got!r}")
            return
        for number, (a, b) in enumerate(zip(got, want), start=1):
            self.node(f"{path}[]", f"{where} #{number}", a, b)

    def _members(self, path, where, got, want):
        if not isinstance(got, dict):
            self.faults.append(f"{where} {path}: service {got!r}, recomputed an object")
            return
        for name, value in want.items():
            below = f"{path}.{name}" if path else name
            if name in got:
                self.node(below, where, got[name], value)
            else:
                self.faults.append(f"{where} {below}: not answered, recomputed {value!r}")
        for name in got.keys() - want.keys():
            below = f"{path}.{name}" if path else name
            self.extra[below] = self.extra.get(below, 0) + 1
