"""A cloud session for a test: JupyterLab on a copy of the lessons, started by ``binder/start``."""

import contextlib
import os
import shutil
import subprocess
import sys
import time
from pathlib import Path

from served import ask, free_port, stop

from dryward.school import folders

START = Path(__file__).parents[2] / "binder" / "start"
TOKEN = "0123456789abcdef"


@contextlib.contextmanager
def session(folder, lessons="lessons"):
    """The address of the server as long as the block lasts; add ``?token=TOKEN``."""
    folder, port = Path(folder), free_port()
    shutil.copytree(folders.shipped_lessons(), folder / lessons)
    env = {
        **os.environ,
        "HOME": str(folder),
        "TMPDIR": str(folder),
        "PATH": f"{Path(sys.executable).parent}:{os.environ['PATH']}",
        "DRYWARD_LESSONS": f"{lessons}/",
    }
    # What a cloud puts after it; root only because the tests may be.
    typed = [str(START), "jupyter", "lab", "--ip=127.0.0.1", f"--port={port}", "--no-browser", "--allow-root"]
    typed.append(f"--IdentityProvider.token={TOKEN}")
    log = folder / "session.log"
    with log.open("w") as out:
        process = subprocess.Popen(typed, cwd=folder, env=env, stdout=out, stderr=out)
    address, end = f"http://127.0.0.1:{port}/", time.monotonic() + 90
    try:
        while time.monotonic() < end and process.poll() is None:
            with contextlib.suppress(OSError):
                if ask(f"{address}api?token={TOKEN}")[0] == 200:
                    break
            time.sleep(0.3)
        else:
            raise AssertionError(f"the session did not start: {log.read_text()[-2000:]}")
        yield address
    finally:
        stop(process)
