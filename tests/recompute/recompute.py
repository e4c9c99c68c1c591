"""Independent recomputation of `helix-capacity` and `installation-record`: random requests
through the real service.

Usage: recompute.py BINARY. Sends the requests of profiles.py in one batch, recomputes every
answer, does the same with the examples of the document and the reference cases, and fails
where they differ by more than 1e-6, where too few profiles of a kind were answered, or where
the service and the recomputation disagree on what cannot be answered. Then the same with
installation logs, in record_check.py.
"""

import sys
from collections import Counter

import general
import profiles
from classes import ALTERNATIVES, LEAST_SHARE, LEAST_TIMES, NAMES, alternatives, classes
from compare import Comparison
from curves import judge_curves
from examples import judge_cases, judge_examples
from expected import directions, expected
from record_check import judge_record
from refusals import predicted
from selftest import comparison_can_fail
from service import Service

LEAST_ANSWERED = 200
MOST_REFUSED = 0.20


def judge(items, answers):
    """Compares all; returns (comparison, kinds, refusals, answered)."""
    comparison, kinds, refusals, answered = Comparison(), Counter(), Counter(), []
    for item, reply in zip(items, answers, strict=True):
        request, where = item["request"], item["id"]
        if reply["id"] != where:
            comparison.faults.append(f"{where}: answered as {reply['id']}")
        codes = predicted(request, directions(request))
        said = {e["code"] for e in reply.get("problem", {}).get("errors", [])}
        if codes != said:
            comparison.faults.append(
                f"{where}: refused for {sorted(said)}, should be for {sorted(codes)}"
            )
        if "problem" in reply:
            refusals.update(said)
        elif not codes:
            pile, want = expected(request)
            result = reply["answer"]["result"]
            comparison.node("", where, result, want)
            kinds.update(classes(pile, result) | alternatives(request))
            answered.append((where, result, want))
    return comparison, kinds, refusals, answered


def report(comparison, kinds, refusals, answered, asked):
    print(f"{asked} requests, {len(answered)} answered, {asked - len(answered)} refused")
    for code, count in sorted(refusals.items()):
        print(f"  refused for {code}: {count}")
    for name in NAMES:
        print(f"  {name}: {kinds[name]} ({100.0 * kinds[name] / max(len(answered), 1):.0f} %)")
    print("  " + ", ".join(f"{name}: {kinds[name]}" for name in ALTERNATIVES))
    print("largest relative difference of each member, with the number compared:")
    for path, (difference, where) in sorted(comparison.largest.items()):
        print(f"  {difference:.1e}  {path} ({comparison.counted[path]}; {where})")
    print("words and labels compared:")
    for path, count in sorted(comparison.counted.items()):
        if path not in comparison.largest:
            print(f"  {path} ({count})")
    print("members of the answers that are not recomputed:", sorted(comparison.extra))
    print("answered by the general library:", general.USED)


def shortcomings(comparison, kinds, answered, asked):
    """What makes the run fail, in words."""
    found = list(comparison.faults[:40])
    if len(comparison.faults) > 40:
        found.append(f"and {len(comparison.faults) - 40} more differences")
    if len(answered) < LEAST_ANSWERED:
        found.append(f"only {len(answered)} answered, at least {LEAST_ANSWERED}")
    if asked - len(answered) >= MOST_REFUSED * asked:
        found.append(f"{asked - len(answered)} of {asked} refused")
    for name in NAMES:
        if kinds[name] < LEAST_SHARE * len(answered):
            found.append(f"only {kinds[name]} of kind '{name}' among {len(answered)}")
    for name in ALTERNATIVES:
        if kinds[name] < LEAST_TIMES:
            found.append(f"only {kinds[name]} answered with '{name}'")
    for name, count in general.USED.items():
        if count == 0:
            found.append(f"the general library was never asked for {name}")
    return found


def main(binary):
    items = profiles.requests()
    with Service(binary) as service:
        reply = service.post("/v1/helix-capacity/batch", {"items": items})
        listed = judge_examples(service) + judge_cases(service)
        listed += judge_curves(service, items)
        logs = judge_record(service)
    comparison, kinds, refusals, answered = judge(items, reply["items"])
    report(comparison, kinds, refusals, answered, len(items))
    faults = shortcomings(comparison, kinds, answered, len(items))
    faults += comparison_can_fail(answered) + listed + logs
    for fault in faults:
        print("FAULT:", fault)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
