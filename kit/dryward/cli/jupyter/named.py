"""Tells a JupyterLab that `dryward` did not start itself which notebooks may run when they are opened."""

import json
import sys
from pathlib import Path

from dryward.cli import places


def write(folder, within=""):
    """Write the settings into a folder that is put on ``JUPYTER_CONFIG_PATH``.

    Parameters
    ----------
    folder : Path
    within : str, optional
        Where the lessons lie below the server's root, such as ``"lessons/"``.

    Returns
    -------
    Path
        The folder.
    """
    settings = Path(folder) / "labconfig"
    settings.mkdir(parents=True, exist_ok=True)
    names = sorted(within + path.name for path in places.shipped_lessons().glob("*.ipynb"))
    page = {"drywardLessons": json.dumps(names)}
    (settings / "page_config.json").write_text(json.dumps(page, indent=1), encoding="utf-8")
    return Path(folder)


if __name__ == "__main__":
    print(write(*sys.argv[1:3]))
