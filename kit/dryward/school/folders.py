"""Where the lessons and the answers lie, and the learner's own copy of the lessons.

What a learner has changed in the copy is never overwritten.
"""

import contextlib
import hashlib
import json
import shutil
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import platformdirs

from dryward import __version__
from dryward.checks import BadFile
from dryward.language import message
from dryward.storage import write_whole
from dryward.teaching import lessons, notebooks

#: The folder of this package.
PACKAGE = Path(__file__).resolve().parent.parent
#: What the copy remembers of each file as it was given.
MANIFEST = ".dryward-lessons.json"


def shipped_lessons() -> Path:
    """The folder of the lessons that came with the kit: inside an installed package, in a checkout beside it."""
    for folder in (PACKAGE / "lessons", PACKAGE.parent.parent / "lessons"):
        if any(folder.glob("[0-9][0-9]-*.ipynb")):
            return folder
    raise BadFile(message("school.lessons-missing"))


@contextlib.contextmanager
def served_lessons() -> Iterator[Path]:
    """A folder with the notebooks of all lessons, while they are served: the kit's own, and an instructor's."""
    if not any(each.own for each in lessons.lessons()):
        yield shipped_lessons()
        return
    with tempfile.TemporaryDirectory() as made:
        for path in shipped_lessons().glob("[0-9][0-9]-*.ipynb"):
            shutil.copyfile(path, Path(made, path.name))
        notebooks.write_own(Path(made))
        yield Path(made)


def own_lessons() -> Path:
    """The folder the learner's own copy goes to, unless told otherwise."""
    return platformdirs.user_documents_path() / "dryward-lessons"


def class_folder() -> Path:
    """The folder in which the answers of a class are kept, unless told otherwise."""
    return platformdirs.user_documents_path() / "dryward-class"


@dataclass(frozen=True)
class Copied:
    """What one copying did, by names of files."""

    new: tuple[str, ...] = ()  # were not there
    renewed: tuple[str, ...] = ()  # the learner had not touched them
    beside: tuple[str, ...] = ()  # new versions put beside what the learner has changed


def _mark(path: Path) -> str:
    return hashlib.sha256(path.read_bytes()).hexdigest()


def _read(manifest: Path) -> dict[str, str]:
    try:
        found = json.loads(manifest.read_text("utf-8"))
        return {str(name): str(mark) for name, mark in found["files"].items()}
    except (FileNotFoundError, ValueError, KeyError, AttributeError, TypeError):
        return {}  # without a readable one every file counts as the learner's own


def _write(manifest: Path, marks: dict[str, str]) -> None:
    # Whole: a half-written one would forget what is the learner's.
    write_whole(manifest, json.dumps({"kit": __version__, "files": marks}, indent=1, sort_keys=True))


def _beside(path: Path) -> Path:
    return path.with_name(f"{path.stem} (new {__version__}){path.suffix}")


def copy(source: str | Path, target: str | Path) -> Copied:
    """Copy the lessons into the learner's folder, made when it is missing; BadFile when it cannot be written."""
    try:
        return _copy(Path(source), Path(target))
    except OSError as reason:
        raise BadFile(
            message("school.lessons-not-copied", folder=str(target), why=str(reason.strerror or reason))
        ) from None


def _copy(source: Path, target: Path) -> Copied:
    if target.is_file():
        raise BadFile(message("school.lessons-not-into-file", folder=str(target)))
    target.mkdir(parents=True, exist_ok=True)
    marks = _read(target / MANIFEST)
    done: dict[str, list[str]] = {"new": [], "renewed": [], "beside": []}
    for path in sorted(source.rglob("*")):
        name = path.relative_to(source).as_posix()
        if not path.is_file() or any(part.startswith(".") for part in path.relative_to(source).parts):
            continue
        here, mark = target / name, _mark(path)
        if not here.exists():
            kind, place = "new", here
        elif _mark(here) == mark:
            kind, place = None, here
        elif _mark(here) == marks.get(name):
            kind, place = "renewed", here
        elif marks.get(name) == mark:
            continue  # the learner's own, and nothing newer to offer
        else:
            kind, place = "beside", _beside(here)
        if kind:
            place.parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(path, place)
            done[kind].append(place.relative_to(target).as_posix())
        marks[name] = mark
    _write(target / MANIFEST, marks)
    return Copied(**{kind: tuple(names) for kind, names in done.items()})
