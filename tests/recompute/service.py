"""Starts the service on a free loopback port, asks it, and stops it by its own process."""

import json
import socket
import subprocess
import tempfile
import time
import urllib.error
import urllib.request


class Service:
    """A running service; use it in a `with` block."""

    def __init__(self, binary):
        with socket.socket() as probe:
            probe.bind(("127.0.0.1", 0))
            self.port = probe.getsockname()[1]
        listen = f"127.0.0.1:{self.port}"
        self.root = f"http://{listen}"
        self.log = tempfile.TemporaryFile()
        self.process = subprocess.Popen(
            [binary, "serve", "--listen", listen, "--workers", "2"],
            stdin=subprocess.DEVNULL,
            stdout=self.log,
            stderr=subprocess.STDOUT,
        )

    def __enter__(self):
        for _ in range(200):
            if self.process.poll() is not None:
                break
            try:
                self.get("/health/ready")
                return self
            except (urllib.error.URLError, ConnectionError):
                time.sleep(0.05)
        self.__exit__(None, None, None)
        self.log.seek(0)
        raise SystemExit("the service did not come up:\n" + self.log.read().decode())

    def __exit__(self, *_):
        self.process.terminate()
        self.process.wait(timeout=30)

    def _open(self, request):
        with urllib.request.urlopen(request, timeout=120) as reply:
            return json.load(reply)

    def get(self, path):
        return self._open(urllib.request.Request(self.root + path))

    def post(self, path, body):
        return self._open(
            urllib.request.Request(
                self.root + path,
                data=json.dumps(body).encode(),
                headers={"content-type": "application/json"},
            )
        )
