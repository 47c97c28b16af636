"""``dryward lessons``: the learner's own copy of the lessons, opened in JupyterLab."""

import json
import os
import secrets
import warnings
from pathlib import Path

from dryward.checks import OutOfRange, UnknownName
from dryward.school import folders, lab

_FIRST = "00-start.ipynb"
_DOOR = "127.0.0.1"
_HIGHEST_PORT = 65535


def add(parser):
    """Name the arguments of the command."""
    parser.add_argument("--folder", type=Path, help="where your own copy of the lessons is kept")
    parser.add_argument("--port", type=int, default=8888, help="port of the local server (8888; the next free one)")
    parser.add_argument("--lesson", default=_FIRST, help="lesson to open first: its number or its file name")
    parser.add_argument("--no-browser", action="store_true", help="print the address and open no browser")


def run(args):
    """Copy, start, and serve until Ctrl-C."""
    if not 1 <= args.port <= _HIGHEST_PORT:
        raise OutOfRange(f"The port is {args.port}; it must be 1 to {_HIGHEST_PORT}.")
    lesson = found(args.lesson)
    folder = (args.folder or folders.own_lessons()).expanduser().resolve()
    done = folders.copy(folders.shipped_lessons(), folder)
    print(f"Your lessons are in {folder}")
    for name in done.beside:
        print(f"  you have changed a lesson that is newer in the kit; the new one is beside it: {name}")
    serve(folder, lesson, args.port, browser=not args.no_browser)
    return 0


def found(lesson):
    """The file of a lesson that is named by its number, its name or its file.

    Parameters
    ----------
    lesson : str

    Returns
    -------
    str

    Raises
    ------
    UnknownName
        When there is none.

    Examples
    --------
    >>> found("5"), found("july")
    ('05-where-it-gets-wet.ipynb', '09-july.ipynb')
    """
    files = [path.name for path in sorted(folders.shipped_lessons().glob("[0-9][0-9]-*.ipynb"))]
    for file in files:
        name = file.removesuffix(".ipynb")
        if lesson in (file, name, name[3:], name[:2], str(int(name[:2]))):
            return file
    raise UnknownName("lesson", lesson, files)


def options(folder, lesson, port, token, browser):
    """What the server is told on its command line.

    Parameters
    ----------
    folder : Path
    lesson : str
    port : int
    token : str
    browser : bool

    Returns
    -------
    list of str
    """
    return [
        *_transport(),
        # Only this machine can reach it, with a token: no more risk for root than any program.
        "--ServerApp.allow_root=True",
        f"--ServerApp.root_dir={folder}",
        f"--ServerApp.ip={_DOOR}",
        f"--ServerApp.port={port}",
        f"--IdentityProvider.token={token}",
        f"--ServerApp.open_browser={browser}",
        # Where Voila is installed it would come along, and turn Jupyter's warnings about itself on again.
        "--ServerApp.jpserver_extensions=voila.server_extension=False",
        "--ServerApp.log_level=ERROR",
        "--LabApp.log_level=ERROR",
        f"--LabApp.default_url=/doc/tree/{lesson}",
        *lab.OPTIONS,
    ]


#: Longest folder [characters] in which a kernel's sockets still have names that the system takes.
_LONGEST_RUNTIME = 45


def _transport():
    """Files instead of open ports between server and kernel, where the system allows it."""
    from jupyter_core.paths import jupyter_runtime_dir

    if os.name != "posix" or len(os.fsencode(jupyter_runtime_dir())) > _LONGEST_RUNTIME:
        return []
    return ["--KernelManager.transport=ipc"]


def serve(folder, lesson, port, browser):
    """Serve the lessons of a folder on this machine until it is stopped."""
    # Read by the server when its modules are imported: set before that.
    paths = [str(lab.SETTINGS), os.environ.get("JUPYTER_CONFIG_PATH", "")]
    os.environ["JUPYTER_CONFIG_PATH"] = os.pathsep.join(path for path in paths if path)
    from jupyterlab.labapp import LabApp

    # Jupyter warns itself about its own older settings; a learner need not read that.
    warnings.simplefilter("ignore", DeprecationWarning)
    token = secrets.token_hex(16)
    server = LabApp.initialize_server(argv=options(folder, lesson, port, token, browser))
    names = sorted(path.name for path in folders.shipped_lessons().glob("*.ipynb"))
    # The page tells the extension which files it may run.
    server.web_app.settings.setdefault("page_config_data", {})["drywardLessons"] = json.dumps(names)
    # Said once the door is open: the loop runs this after it has begun to listen.
    server.io_loop.add_callback(_say, address(server, lesson, token))
    server.start()


def _say(address):
    print(f"Open this address in a browser:\n\n    {address}\n\nPress Ctrl-C here to stop.", flush=True)


def address(server, lesson, token):
    """The whole address of a lesson on a running server."""
    return f"http://{_DOOR}:{server.port}{server.base_url}doc/tree/{lesson}?token={token}"
