"""A server of the pages for a test, and what is known of its processes."""

import contextlib
import itertools
import os
import random
import re
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from dataclasses import dataclass
from pathlib import Path

import psutil

# Below the ports that Linux (32768 on), macOS and Windows (49152 on) give out by themselves.
FIRST_PORT, PORTS, WORKERS = 16_000, 16_000, 8


def _starts():
    """Each offset of a worker's range in turn, from a place that another run does not start at."""
    size = PORTS // WORKERS
    first = random.SystemRandom().randrange(size)
    return itertools.cycle((first + each) % size for each in range(size))


_ASKED = _starts()


@dataclass
class Server:
    """A server that runs."""

    process: subprocess.Popen
    address: str
    secret: str
    folder: Path
    log: Path

    @property
    def entry(self):
        """The address that lets in at once."""
        return f"{self.address}?key={self.secret}"

    def kernels(self):
        """Its Python kernels."""
        found = []
        for child in psutil.Process(self.process.pid).children(recursive=True):
            with contextlib.suppress(psutil.Error):
                if "ipykernel_launcher" in " ".join(child.cmdline()):
                    found.append(child)
        return found

    def said(self):
        """What it printed."""
        return self.log.read_text()


def free_port():
    """A port nobody uses now, and none that the system gives to who asks for any.

    A server takes it seconds later: one of the system's own would by then belong to the kernel of another test.
    Tests that run side by side ask in ranges of their own.
    """
    worker = int(os.environ.get("PYTEST_XDIST_WORKER", "gw0")[2:]) % WORKERS
    for port in itertools.islice(_ASKED, PORTS // WORKERS):
        with socket.socket() as asking, contextlib.suppress(OSError):
            asking.bind(("127.0.0.1", FIRST_PORT + worker * (PORTS // WORKERS) + port))
            return asking.getsockname()[1]
    raise AssertionError("no port is free")


def start(folder, *typed, port=None, env=None, seconds=90):
    """Start ``dryward pages`` and wait until it says where it is."""
    folder = Path(folder)
    folder.mkdir(parents=True, exist_ok=True)
    port = port or free_port()
    log = folder / f"server-{time.monotonic_ns()}.log"
    command = [sys.executable, "-m", "dryward", "pages", "--no-browser", "--port", str(port)]
    command += ["--folder", str(folder / "class"), *typed]
    with log.open("w") as out:
        process = subprocess.Popen(
            command, stdout=out, stderr=subprocess.STDOUT, env={**os.environ, "HOME": str(folder), **(env or {})}
        )
    end = time.monotonic() + seconds
    while time.monotonic() < end and process.poll() is None:
        said = log.read_text()
        here = re.search(r"(https?://\S+/)\?key=(\S+)", said)
        shared = re.search(r"(https?://\S+/)\n +password +(\S+)", said)
        if here or shared:
            return Server(process, *(here or shared).groups(), folder, log)
        time.sleep(0.1)
    stop(process)
    raise AssertionError(f"the pages did not start: {log.read_text()[-2000:]}")


def stop(process, seconds=30):
    """End a server, and its kernels with it."""
    family = []
    with contextlib.suppress(psutil.Error):
        family = psutil.Process(process.pid).children(recursive=True)
    if process.poll() is None:
        process.terminate()
    try:
        process.wait(seconds)
    except subprocess.TimeoutExpired:
        process.kill()
        process.wait(seconds)
    for each in psutil.wait_procs(family, timeout=10)[1]:
        with contextlib.suppress(psutil.Error):
            each.kill()


@contextlib.contextmanager
def served(folder, *typed, **keys):
    """A server as long as the block lasts."""
    server = start(folder, *typed, **keys)
    try:
        yield server
    finally:
        stop(server.process)


class _Stay(urllib.request.HTTPRedirectHandler):
    def redirect_request(self, *args):
        return None


def ask(address, method="GET", cookies="", body=None, **headers):
    """Status, headers and text of one request; no redirect is followed."""
    request = urllib.request.Request(address, data=body, method=method)
    if cookies:
        request.add_header("Cookie", cookies)
    for name, value in headers.items():
        request.add_header(name.replace("_", "-"), value)
    try:
        with urllib.request.build_opener(_Stay).open(request, timeout=60) as answer:
            return answer.status, answer.headers, answer.read().decode("utf-8", "replace")
    except urllib.error.HTTPError as answer:
        return answer.code, answer.headers, answer.read().decode("utf-8", "replace")


def cookies_of(headers, before=""):
    """The cookies a browser would send next."""
    found = dict(each.split("=", 1) for each in before.split("; ") if each)
    for line in headers.get_all("Set-Cookie") or []:
        name, value = line.split(";")[0].split("=", 1)
        found[name] = value
    return "; ".join(f"{name}={value}" for name, value in found.items())


def enter(server):
    """The cookies of a new learner on this machine."""
    status, headers, _ = ask(server.entry)
    assert status == 302
    return cookies_of(headers)


def proportional_memory(process):
    """Memory of a process, what it shares with others counted in part [MB]."""
    for line in Path(f"/proc/{process.pid}/smaps_rollup").read_text().splitlines():
        if line.startswith("Pss:"):
            return int(line.split()[1]) / 1024
    raise AssertionError("this system does not tell")
