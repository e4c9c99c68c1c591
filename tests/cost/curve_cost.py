"""What a curve over depth costs beside one depth: instructions of a whole call and bytes of its reply.

Usage: curve_cost.py BEARWELL EXAMPLE. The example asks for a curve of at least 200 depths with a summary reply. It is
sent as it is and without `depth_curve` to a service under valgrind (callgrind), which counts instructions and
not time, so that a busy machine changes nothing. Fails above 3 times the instructions or 10 % more bytes.
Nothing about the numbers of the answers is checked here.
"""

import http.client
import json
import re
import socket
import subprocess
import sys
import tempfile
import time

CALLS = 40
MOST_COST = 3.0
MOST_BYTES = 1.10
PATH = "/v1/helix-capacity"


def free_port():
    with socket.socket() as s:
        s.bind(("127.0.0.1", 0))
        return s.getsockname()[1]


def connection(port, process):
    for _ in range(600):
        try:
            c = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
            c.connect()
            return c
        except OSError:
            if process.poll() is not None:
                break
            time.sleep(0.1)
    sys.exit("the service did not come up under valgrind")


def run(binary, body, calls):
    """Instructions of a service that starts, answers `calls` times and stops; bytes of one reply."""
    port = free_port()
    with tempfile.TemporaryFile("w+") as log:
        command = ["valgrind", "--tool=callgrind", "--callgrind-out-file=/dev/null"]
        command += [binary, "serve", "--listen", f"127.0.0.1:{port}", "--workers", "1"]
        process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=log)
        try:
            c = connection(port, process)
            size = 0
            for _ in range(calls):
                c.request("POST", PATH, body, {"content-type": "application/json"})
                reply = c.getresponse()
                text = reply.read()
                if reply.status != 200:
                    sys.exit(text.decode())
                size = len(text)
            c.close()
        finally:
            process.terminate()
            process.wait(timeout=120)
        log.seek(0)
        return int(re.search(r"Collected\s*:\s*(\d+)", log.read()).group(1)), size


def per_call(binary, body):
    few, _ = run(binary, body, CALLS)
    many, size = run(binary, body, 3 * CALLS)
    return (many - few) / (2 * CALLS), size


def main():
    binary, example = sys.argv[1:]
    with open(example) as f:
        request = json.load(f)
    depths = request["depth_curve"]["depth_count"]
    if depths < 200 or request["depth_curve"].get("points"):
        sys.exit("the example is not a summary of 200 depths or more")
    curve, curve_bytes = per_call(binary, json.dumps(request).encode())
    del request["depth_curve"]
    one, one_bytes = per_call(binary, json.dumps(request).encode())
    cost, size = curve / one, curve_bytes / one_bytes
    print(f"one depth: {one:,.0f} instructions a call, {one_bytes:,} bytes")
    print(f"{depths} depths: {curve:,.0f} instructions a call, {curve_bytes:,} bytes")
    print(f"ratio: {cost:.2f} of at most {MOST_COST} in instructions, {size:.3f} of at most {MOST_BYTES} in bytes")
    if cost > MOST_COST or size > MOST_BYTES:
        sys.exit("a curve costs too much")


main()
