"""Coverage of the bands of `length-forecast` on jobs that its model does not know.

Usage: coverage.py BINARY. Sends 500 simulated jobs of ground.py to the real service and counts
how often the depth a pile comes to lies within the band that was forecast. Fails where the 80 %
band holds less than 70 % of them, where the service reads another depth out of a log than
reading.py, or where bands of a third of the width would have passed too.
"""

import pathlib
import random
import sys

sys.path.append(str(pathlib.Path(__file__).resolve().parent.parent / "recompute"))

from ground import job  # noqa: E402
from service import Service  # noqa: E402

JOBS, SEED, CHUNK = 500, 20260, 25
LEAST_80 = 0.70
TOLERANCE = 1e-6


def compare(readings, logs):
    """Depths that the service reads differently."""
    wrong = []
    for (status, depth), log in zip(readings, logs, strict=True):
        told = log.get("depth", {}).get("value")
        same = status == log["status"] and (depth is None) == (told is None)
        if not same or depth is not None and abs(depth - told) > TOLERANCE:
            wrong.append(f"{log}: read here as {status} {depth}")
    return wrong


def main(binary):
    rnd = random.Random(SEED)
    jobs = [job(rnd) for _ in range(JOBS)]
    faults, refused, atoms = [], 0, 0
    within = {}  # kind -> [count, in 50, in 80, in 90, in a third of 80]
    with Service(binary) as service:
        for start in range(0, JOBS, CHUNK):
            part = jobs[start : start + CHUNK]
            items = [{"id": str(start + i), "request": j[0]} for i, j in enumerate(part)]
            replies = service.post("/v1/length-forecast/batch", {"items": items})["items"]
            for (_, truths, readings, kind), reply in zip(part, replies, strict=True):
                if "problem" in reply:
                    codes = {e["code"] for e in reply["problem"]["errors"]}
                    met = sum(status == "met" for status, _ in readings)
                    refused += 1
                    if met >= 3 or "forecast_too_few_logs" not in codes:
                        faults.append(f"job {reply['id']} refused with {met} logs: {codes}")
                    continue
                result = reply["answer"]["result"]
                faults += compare(readings, result["torques"][0]["logs"])
                for truth, pile in zip(truths, result["piles"], strict=True):
                    if truth is None:
                        faults.append(f"job {reply['id']}: a pile never met its torque")
                        continue
                    atoms += truth == kind["least"]
                    ends = {b: (pile[b]["from"]["value"], pile[b]["to"]["value"]) for b in ("band_50", "band_80", "band_90")}
                    middle, (low, high) = pile["median"]["value"], ends["band_80"]
                    ends["third"] = (middle - (middle - low) / 3, middle + (high - middle) / 3)
                    inside = [low - 1e-6 <= truth <= high + 1e-6 for low, high in ends.values()]
                    logs = "one side first" if kind["one_side"] else "logs anywhere"
                    names = ["all", f"{logs}, {'' if kind['places'] else 'no '}places"]
                    names.append("two kinds" if kind["two_kinds"] else "one kind")
                    for name in names:
                        row = within.setdefault(name, [0] * 5)
                        row[0] += 1
                        for i, hit in enumerate(inside):
                            row[i + 1] += hit
    for name, (count, *hits) in sorted(within.items()):
        shares = "  ".join(f"{b} %: {100 * h / count:5.1f}" for b, h in zip((50, 80, 90), hits))
        print(f"  {name:26} {count:5} piles   {shares}")
    count, _, eighty, _, third = within["all"]
    if eighty < LEAST_80 * count:
        faults.append(f"the 80 % band holds only {100 * eighty / count:.1f} %")
    if third >= LEAST_80 * count:
        faults.append("bands of a third of the width would pass: this test cannot fail")
    if refused > JOBS // 10:
        faults.append(f"{refused} of {JOBS} jobs were refused")
    for fault in faults[:20]:
        print("FAULT", fault)
    print(
        f"forecast: {JOBS - refused} jobs of {JOBS}, {count} piles, {100 * eighty / count:.1f} % within"
        f" the 80 % band ({100 * third / count:.1f} % within a third of it), {atoms} at their least depth,"
        f" {len(faults)} faults"
    )
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
