"""The second list: every example request of the document, and the reference cases."""

import json
from collections import Counter
from pathlib import Path

from cases import cases
from compare import Comparison
from expected import expected

FOLDER = Path(__file__).resolve().parents[2] / "openapi" / "examples" / "helix-capacity"
LEAST_EXAMPLES = 40


def _requests():
    """Example requests that are answered, by their file names."""
    for file in sorted(FOLDER.glob("*.json")):
        if not file.name.endswith(".answer.json"):
            yield file.stem, json.loads(file.read_text())


def _answers(service, items):
    reply = service.post("/v1/helix-capacity/batch", {"items": items})
    return reply["items"]


def judge_examples(service):
    """Recomputes the examples of the document; returns faults."""
    items = [{"id": name, "request": request} for name, request in _requests()]
    comparison = Comparison()
    for item, reply in zip(items, _answers(service, items), strict=True):
        if "answer" not in reply:
            comparison.faults.append(f"example {item['id']} was refused")
            continue
        _, want = expected(item["request"])
        comparison.node("", item["id"], reply["answer"]["result"], want)
    print(f"{len(items)} examples of the document recomputed, {len(comparison.faults)} differences")
    if len(items) < LEAST_EXAMPLES:
        comparison.faults.append(f"only {len(items)} examples found in {FOLDER}")
    return comparison.faults


def judge_cases(service):
    """Asks for the figures of the reference cases; returns faults."""
    known = cases()
    items = [{"id": f"{n}", "request": case.request} for n, case in enumerate(known)]
    comparison, faults, counted = Comparison(), [], Counter()
    for case, reply in zip(known, _answers(service, items), strict=True):
        if "answer" not in reply:
            faults.append(f"case {case.id} was refused: {reply['problem']['detail']}")
            continue
        _, want = expected(case.request)
        comparison.node("", case.id, reply["answer"]["result"], want)
        got = case.differs(reply["answer"])
        if got is not None:
            faults.append(f"case {case.id}: service {got!r}, the case has {case.figure!r}")
        counted[case.id] += 1
    print(f"{len(known)} figures of {len(counted)} reference cases:", dict(sorted(counted.items())))
    return faults + comparison.faults
