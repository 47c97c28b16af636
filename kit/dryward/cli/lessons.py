"""``dryward lessons``: the learner's own copy of the lessons, opened in JupyterLab; and what their authors need."""

from __future__ import annotations

import argparse
import json
import os
import secrets
import tempfile
import warnings
from pathlib import Path
from typing import TYPE_CHECKING

from dryward.checks import BadFile, OutOfRange, UnknownName
from dryward.cli import front_page
from dryward.cli.pages import HIGHEST_PORT
from dryward.language import message
from dryward.school import folders, lab
from dryward.teaching import lessons, notebooks

if TYPE_CHECKING:
    from jupyterlab.labapp import LabApp

_FIRST = "00-start.ipynb"
_DOOR = "127.0.0.1"


def add(parser: argparse.ArgumentParser) -> None:
    """Name the arguments of the command."""
    parser.add_argument("--folder", type=Path, help=message("cli.lessons-folder"))
    parser.add_argument("--port", type=int, default=8888, help=message("cli.lessons-port"))
    parser.add_argument("--lesson", default=_FIRST, help=message("cli.lessons-lesson"))
    parser.add_argument("--no-browser", action="store_true", help=message("cli.no-browser"))
    author = parser.add_argument_group(message("cli.lessons-authors"))
    author.add_argument("--own", metavar=message("cli.meta-folder"), help=message("cli.lessons-own"))
    author.add_argument("--new", metavar=message("cli.meta-name"), help=message("cli.lessons-new"))
    author.add_argument("--write", action="store_true", help=message("cli.lessons-write"))
    author.add_argument("--check", action="store_true", help=message("cli.lessons-check"))


def run(args: argparse.Namespace) -> int:
    """Copy, start, and serve until Ctrl-C; or write, check or make lessons."""
    if args.own is not None:
        _remember(args.own)
    if args.new is not None:
        return _make(args.new)
    if args.write or args.check:
        return _write() if args.write else _check()
    if args.own == "-":
        return 0
    if not 1 <= args.port <= HIGHEST_PORT:
        raise OutOfRange(message("cli.port-range", port=str(args.port), most=str(HIGHEST_PORT)))
    lesson = found(args.lesson)
    folder = (args.folder or folders.own_lessons()).expanduser().resolve()
    beside = folders.copy(folders.shipped_lessons(), folder).beside
    with tempfile.TemporaryDirectory() as made:
        if notebooks.write_own(Path(made)):
            beside += folders.copy(Path(made), folder).beside
    print(message("cli.lessons-are-in", folder=str(folder)))
    for name in beside:
        print(f"  {message('cli.lessons-newer', name=name)}")
    for trouble in lessons.troubles():
        print(f"  {trouble}")
    serve(folder, lesson, args.port, browser=not args.no_browser)
    return 0


# --- for who writes lessons ---------------------------------------------------------------


def _remember(named: str) -> None:
    """Keep the folder of one's own lessons, or forget it."""
    if named == "-":
        lessons.remember_own(None)
        print(message("cli.own-forgotten"))
        return
    folder = Path(named).expanduser()
    if folder.exists() and not folder.is_dir():
        raise BadFile(message("cli.own-is-a-file", folder=str(folder)))
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as reason:
        raise BadFile(message("cli.own-not-made", folder=str(folder), why=str(reason.strerror or reason))) from None
    lessons.remember_own(folder)
    print(message("cli.own-taken-from", folder=str(folder.resolve())))


def _make(name: str) -> int:
    """The skeleton of a lesson: in one's own folder where there is one, else in the checkout."""
    own, checkout = lessons.own_folder(), Path("tests", "course")
    if own is None and not (checkout.is_dir() and lessons.COURSE.is_relative_to(Path.cwd())):
        raise BadFile(message("cli.own-name-a-folder"))
    made = notebooks.new(name, own or lessons.COURSE, None if own else checkout.resolve())
    print(message("cli.own-made", name=name, number=str(lessons.lesson(name).number)), *made, sep="\n  ")
    if own is None:
        print(message("cli.own-change-it"))
    return 0


def _lessons_folder() -> Path:
    """The folder that is written: of the checkout in which the command was typed, without one's own lessons."""
    os.environ[lessons.OWN] = ""
    here = Path.cwd() / "lessons"
    if not (here / "guide").is_dir() or not lessons.COURSE.is_relative_to(Path.cwd()):
        raise BadFile(message("cli.in-a-checkout"))
    return here


def _write() -> int:
    changes = notebooks.write(_lessons_folder())
    before = Path("README.md").read_text("utf-8")
    front_page.write("lessons", notebooks.table())
    other = Path("README.md").read_text("utf-8") != before
    lines = [message("cli.written", file=f"lessons/{name}") for name in changes.written]
    lines += [message("cli.written", file="README.md")] * other
    lines += [message("cli.removed", file=f"lessons/{name}") for name in changes.removed]
    _tell(lines)
    return 0


def _check() -> int:
    stale = [f"lessons/{name}" for name in notebooks.stale(_lessons_folder())]
    stale += ["README.md"] * (notebooks.table() not in Path("README.md").read_text("utf-8"))
    _tell([message("cli.stale", file=name) for name in stale])
    return 1 if stale else 0


def _tell(lines: list[str]) -> None:
    print(*lines or [message("cli.all-as-folders-say")], sep="\n")


# --- serving ------------------------------------------------------------------------------


def found(named: str) -> str:
    """The file of a lesson that is named by its number, its name or its file.

    >>> found("5"), found("july")
    ('05-where-it-gets-wet.ipynb', '09-july.ipynb')
    """
    known = [each.file for each in lessons.lessons()]
    for each in lessons.lessons():
        if named in (each.file, each.file.removesuffix(".ipynb"), each.id, f"{each.number:02d}", str(each.number)):
            return each.file
    raise UnknownName("lesson", named, known)


def options(folder: Path, lesson: str, port: int, token: str, browser: bool) -> list[str]:
    """What the server is told on its command line."""
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


def _transport() -> list[str]:
    """Files instead of open ports between server and kernel, where the system allows it."""
    from jupyter_core.paths import jupyter_runtime_dir

    if os.name != "posix" or len(os.fsencode(jupyter_runtime_dir())) > _LONGEST_RUNTIME:
        return []
    return ["--KernelManager.transport=ipc"]


def serve(folder: Path, lesson: str, port: int, browser: bool) -> None:
    """Serve the lessons of a folder on this machine until it is stopped."""
    # Read by the server when its modules are imported: set before that.
    paths = [str(lab.SETTINGS), os.environ.get("JUPYTER_CONFIG_PATH", "")]
    os.environ["JUPYTER_CONFIG_PATH"] = os.pathsep.join(path for path in paths if path)
    from jupyterlab.labapp import LabApp

    # Jupyter warns itself about its own older settings; a learner need not read that.
    warnings.simplefilter("ignore", DeprecationWarning)
    token = secrets.token_hex(16)
    server = LabApp.initialize_server(argv=options(folder, lesson, port, token, browser))
    names = sorted(each.file for each in lessons.lessons())
    # The page tells the extension which files it may run.
    server.web_app.settings.setdefault("page_config_data", {})["drywardLessons"] = json.dumps(names)
    # Said once the door is open: the loop runs this after it has begun to listen.
    server.io_loop.add_callback(_say, address(server, lesson, token))
    server.start()


def _say(address: str) -> None:
    print(message("cli.open-address"), "", f"    {address}", "", message("cli.press-to-stop"), sep="\n", flush=True)


def address(server: LabApp, lesson: str, token: str) -> str:
    """The whole address of a lesson on a running server."""
    return f"http://{_DOOR}:{server.port}{server.base_url}doc/tree/{lesson}?token={token}"
