"""A JupyterHub of a class for a test, on this machine only."""

import contextlib
import http.cookiejar
import os
import re
import shutil
import subprocess
import sys
import time
import urllib.error
import urllib.request
from pathlib import Path

from served import ask, free_port, stop

CONFIG = Path(__file__).parents[2] / "binder" / "class" / "jupyterhub_config.py"
#: The proxy of the hub, from npm.
PROXY = "configurable-http-proxy@5.1.0"


def proxy(cache):
    """The proxy's command, fetched once by npm; None when it cannot be had."""
    found = shutil.which("configurable-http-proxy")
    if found:
        return found
    command = Path(cache) / "node_modules" / ".bin" / "configurable-http-proxy"
    if not command.is_file() and shutil.which("npm"):
        install = ["npm", "install", "--no-fund", "--no-audit", "--prefix", str(cache), PROXY]
        subprocess.run(install, capture_output=True, timeout=180)
    return str(command) if command.is_file() else None


def _open_to_all(command):
    path = Path(command).resolve()
    return all(each.stat().st_mode & 0o001 for each in (path, *path.parents))


@contextlib.contextmanager
def hub(folder, command, **settings):
    """The hub's address as long as the block lasts."""
    port, log = free_port(), Path(folder) / "hub.log"
    env = {
        **os.environ,
        "DRYWARD_CLASS": str(folder),
        "DRYWARD_ADDRESS": f"http://127.0.0.1:{port}",
        "DRYWARD_PROXY": command,
        "DRYWARD_HUB_PORT": str(free_port()),
        "DRYWARD_PROXY_PORT": str(free_port()),
        **settings,
    }
    if os.geteuid() == 0 and not _open_to_all(sys.executable):
        env["DRYWARD_ONE_USER"] = "1"  # no seat could start this Python
    with log.open("w") as out:
        process = subprocess.Popen(
            [sys.executable, "-m", "jupyterhub", "-f", str(CONFIG)], cwd=folder, stdout=out, stderr=out, env=env
        )
    address = f"http://127.0.0.1:{port}/"
    try:
        end = time.monotonic() + 60
        while process.poll() is None and time.monotonic() < end:
            with contextlib.suppress(OSError):
                if ask(f"{address}hub/health")[0] == 200:
                    break
            time.sleep(0.3)
        else:
            raise AssertionError(f"the hub did not start: {log.read_text()[-2000:]}")
        yield address, log
    finally:
        stop(process, 40)


class Browser:
    """Keeps cookies by their paths and follows where it is sent, as the hub's doors need it."""

    def __init__(self):
        self._jar = http.cookiejar.CookieJar()
        self._opener = urllib.request.build_opener(urllib.request.HTTPCookieProcessor(self._jar))

    def ask(self, address, body=None):
        """Status and text at the end of the way."""
        try:
            with self._opener.open(address, data=body, timeout=60) as answer:
                return answer.status, answer.read().decode("utf-8", "replace")
        except urllib.error.HTTPError as answer:
            return answer.code, answer.read().decode("utf-8", "replace")

    def token(self, path):
        """What a page below that path sends along when it changes something."""
        return next(each.value for each in self._jar if each.name == "_xsrf" and each.path.startswith(path))

    def login(self, address, seat, password):
        """Status after the door."""
        _, form = self.ask(f"{address}hub/login?next=/hub/home")
        token = re.search(r'name="_xsrf" value="([^"]*)"', form).group(1)
        body = f"username={seat}&password={password}&_xsrf={token}".encode()
        return self.ask(f"{address}hub/login?next=/hub/home", body)[0]
