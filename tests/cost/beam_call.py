"""A beam on 100 springs in six combinations: a call over HTTP against a general library's call in the same process.

Usage: beam_call.py BEARWELL [ROUNDS]; by hand, on a quiet machine, in an environment with openseespy (which needs
libblas3 and liblapack3). In each round the library solves once and the service answers 21 times over one connection;
what counts is the ratio of the round, because the machine's speed drifts. First the reactions of both are compared:
every greatest compression on springs must agree to 1e-6. Fails where the median of the ratios is below 10. Then the same
with library, client and service on one core, printed only: what it costs to wake another one is not in that.
"""

import json
import os
import socket
import statistics
import subprocess
import sys
import time

import openseespy.opensees as ops

PILES = 100
CALLS = 21
LEAST_RATIO = 10.0
RIGIDITY = 20000.0  # kN m2
DEAD = 12.0  # kN/m
COMBINATIONS = [(1.4, 0.0), (1.25, 1.5), (1.25, 0.5), (0.9, 1.5), (1.0, 1.0), (1.0, 0.75)]
SPANS = [1.8 + 0.1 * (i % 7) for i in range(PILES - 1)]
LIVE = [8.0 + 0.5 * (i % 3) for i in range(PILES - 1)]
STIFFNESS = [15000.0 + 500.0 * (i % 5) for i in range(PILES)]
PLACES = [round(sum(SPANS[:i]), 6) for i in range(PILES)]


def of(value, unit):
    return {"value": value, "unit": unit}


def request():
    factors = lambda dead, live: [{"kind": "dead", "factor": dead}] + [{"kind": "live", "factor": live}] * (live > 0)
    named = [{"name": f"c{i + 1}", "factors": factors(*c)} for i, c in enumerate(COMBINATIONS)]
    loads = [{"kind": "dead", "load": of(DEAD, "kN_per_m")}]
    loads += [
        {"kind": "live", "from": of(a, "m"), "to": of(b, "m"), "load": of(q, "kN_per_m")}
        for a, b, q in zip(PLACES, PLACES[1:], LIVE)
    ]
    ends = [{"x": of(x, "m"), "y": of(0, "m")} for x in (0, PLACES[-1])]
    piles = [
        {"at": {"x": of(x, "m"), "y": of(0, "m")}, "stiffness": of(k, "kN_per_m")} for x, k in zip(PLACES, STIFFNESS)
    ]
    asked = {
        "design_basis": {"limit_states": {"combinations": {"own": {"list": named}}}},
        "beams": [{"points": ends, "flexural_rigidity": of(RIGIDITY, "kN_m2"), "line_loads": loads}],
        "piles": {"given": {"positions": piles}},
        "reaction_detail": "table",
    }
    return json.dumps(asked, separators=(",", ":")).encode()


def library():
    """Reactions of all springs, a list a combination, kN."""
    ops.wipe()
    ops.model("basic", "-ndm", 2, "-ndf", 3)
    ops.geomTransf("Linear", 1)
    for i, x in enumerate(PLACES):
        ops.node(i, x, 0.0)
        ops.node(1000 + i, x, 0.0)
        ops.fix(1000 + i, 1, 1, 1)
        ops.fix(i, 1, 0, 0)
        ops.uniaxialMaterial("Elastic", i + 1, STIFFNESS[i])
        ops.element("zeroLength", 2000 + i, 1000 + i, i, "-mat", i + 1, "-dir", 2)
    for i in range(PILES - 1):
        ops.element("elasticBeamColumn", i, i, i + 1, 1e-2, 200e6, RIGIDITY / 200e6, 1)
    ops.constraints("Plain")
    ops.numberer("RCM")
    ops.system("BandSPD")
    ops.algorithm("Linear")
    ops.integrator("LoadControl", 1.0)
    ops.analysis("Static")
    out = []
    for c, (dead, live) in enumerate(COMBINATIONS):
        ops.timeSeries("Constant", c + 1)
        ops.pattern("Plain", c + 1, c + 1)
        for i in range(PILES - 1):
            ops.eleLoad("-ele", i, "-type", "-beamUniform", -(dead * DEAD + live * LIVE[i]), 0.0)
        ops.analyze(1)
        out.append([-k * ops.nodeDisp(i, 2) for i, k in enumerate(STIFFNESS)])
        ops.remove("loadPattern", c + 1)
        ops.reset()
    return out


class Connection:
    """One connection that is kept, with as little work of its own as may be: the service is measured."""

    def __init__(self, port, body):
        head = f"POST /v1/pile-layout HTTP/1.1\r\nhost: x\r\ncontent-type: application/json\r\ncontent-length: {len(body)}"
        self.socket = socket.create_connection(("127.0.0.1", port))
        self.sent = head.encode() + b"\r\n\r\n" + body
        self.got = bytearray(1 << 20)
        self.room = memoryview(self.got)

    def call(self):
        self.socket.sendall(self.sent)
        have, want, start = 0, None, 0
        while want is None or have < want:
            count = self.socket.recv_into(self.room[have:])
            assert count > 0, "the connection was closed"
            have += count
            if want is None and (start := self.got.find(b"\r\n\r\n", 0, have)) >= 0:
                length = self.got.find(b"content-length:", 0, start) + 15
                want = start + 4 + int(self.got[length : self.got.find(b"\r", length)])
        assert self.got.startswith(b"HTTP/1.1 200"), bytes(self.room[:want])
        return bytes(self.room[start + 4 : want])


def compare(answer):
    """Greatest compressions of both on springs; where rigid piles govern the service's is higher."""
    table = json.loads(answer)["result"]["pile_table"]
    names = [c["name"] for c in table["columns"]]
    force, model = names.index("compression"), names.index("compression_supports")
    greatest = [max(r) for r in zip(*library())]
    judged = 0
    for row, want in zip(table["rows"], greatest):
        if row[model] == 1:
            judged += 1
            assert abs(row[force] - want) <= 1e-6 * want, (row, want)
        else:
            assert row[force] > want * (1 - 1e-6), (row, want)
    assert judged > 0
    print(f"{judged} of {len(greatest)} greatest reactions are on springs and agree to 1e-6, the rest are higher on rigid piles")


def timed(work):
    started = time.perf_counter()
    work()
    return time.perf_counter() - started


def measure(name, connection, rounds):
    """Median of the ratios of the rounds."""
    for _ in range(CALLS):
        connection.call()
    pairs = []
    for _ in range(rounds):
        pairs.append((timed(library), statistics.median(timed(connection.call) for _ in range(CALLS))))
    ratios = [library_s / call_s for library_s, call_s in pairs]
    print(name)
    for what, values in (("library", [p[0] for p in pairs]), ("call", [p[1] for p in pairs])):
        print(f"  {what}: median {1e3 * statistics.median(values):.3f} ms, least {1e3 * min(values):.3f} ms")
    ratio = statistics.median(ratios)
    print(f"  ratio: median {ratio:.1f}, {min(ratios):.1f} to {max(ratios):.1f} in {rounds} rounds")
    return ratio


def to_one_core(pid):
    """This process and all threads of another one."""
    core = {max(os.sched_getaffinity(0))}
    for thread in (0, *map(int, os.listdir(f"/proc/{pid}/task"))):
        os.sched_setaffinity(thread, core)


def main():
    binary = sys.argv[1]
    rounds = int(sys.argv[2]) if len(sys.argv) > 2 else 150
    with socket.socket() as s:
        s.bind(("127.0.0.1", 0))
        port = s.getsockname()[1]
    command = [binary, "serve", "--listen", f"127.0.0.1:{port}", "--workers", "1"]
    service = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        for _ in range(200):
            try:
                connection = Connection(port, request())
                break
            except OSError:
                time.sleep(0.05)
        compare(connection.call())
        ratio = measure("as the machine places them", connection, rounds)
        to_one_core(service.pid)
        measure("all on one core", connection, rounds)
    finally:
        service.terminate()
        service.wait()
    if ratio < LEAST_RATIO:
        sys.exit(f"below {LEAST_RATIO}")


if __name__ == "__main__":
    main()
