"""What a JupyterLab is told: our settings, our small extension, which lessons it may run, and no waiting."""

import json
import os
import sys
from pathlib import Path

from dryward.storage import write_whole
from dryward.teaching import lessons

#: Our settings and our extension, as files that JupyterLab reads.
_SHARE = Path(__file__).resolve().parent / "share" / "lab"
#: The folder of our settings, for ``JUPYTER_CONFIG_PATH``.
SETTINGS = _SHARE / "etc"
#: What a JupyterLab is told on its command line.
OPTIONS = (
    f"--LabApp.extra_labextensions_path={_SHARE / 'labextensions'}",
    "--ServerApp.kernel_websocket_connection_class=dryward.school.kernels.NoDelay",
)


def write_settings(folder: str | Path, within: str = "") -> Path:
    """Write which lessons, `within` the server's root, may run into a folder for ``JUPYTER_CONFIG_PATH``."""
    settings = Path(folder) / "labconfig"
    settings.mkdir(parents=True, exist_ok=True)
    names = sorted(within + each.file for each in lessons.lessons())
    page = {"drywardLessons": json.dumps(names)}
    write_whole(settings / "page_config.json", json.dumps(page, indent=1))
    return Path(folder)


if __name__ == "__main__":  # for a shell: the folders of settings, then the options, each on a line of its own
    print(os.pathsep.join((str(write_settings(*sys.argv[1:3])), str(SETTINGS))), *OPTIONS, sep="\n")
