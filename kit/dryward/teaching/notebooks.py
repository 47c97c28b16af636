"""What is written from the folders of the lessons, and the skeleton of a new one.

A notebook has a title, the page, a number with its words, and where to go
next.  `written` gives every file that follows from the folders; the files in
``lessons`` are exactly these.
"""

from __future__ import annotations

import contextlib
import io
import json
import re
from importlib.resources import files
from pathlib import Path
from string import Template
from typing import NamedTuple

from dryward.checks import BadFile, OutOfRange
from dryward.language import message
from dryward.storage import write_whole
from dryward.teaching import guide, lessons, pathways
from dryward.teaching.lessons import Lesson

#: Tag of a cell whose output is compared by the tests; no reader sees it.
MARK = "nbval-check-output"
_SKELETON = files("dryward.teaching") / "data" / "skeleton"

# --- a notebook ---------------------------------------------------------------------------


def _cell(id: str, source: str, output: str | None = None, hidden: bool = False) -> dict:
    """One cell; code where it has an output, which may be empty; what is not hidden is compared."""
    cell = {"cell_type": "markdown", "id": id, "metadata": {}, "source": source.splitlines(keepends=True)}
    if output is None:
        return cell
    shown = [{"name": "stdout", "output_type": "stream", "text": output.splitlines(keepends=True)}] if output else []
    metadata: dict = {"jupyter": {"source_hidden": True}} if hidden else {"tags": [MARK]}
    # Without a count nothing would compare the output.
    return {
        **cell, "cell_type": "code", "metadata": metadata, "execution_count": 1 if output else None, "outputs": shown
    }  # fmt: skip


def _link(lesson: Lesson) -> str:
    return f"**[{_titled(lesson)}]({lesson.file})**"


def _titled(lesson: Lesson) -> str:
    """Its number and its title; the index has no number."""
    return message("lessons.titled", number=lesson.number, title=lesson.title)


def _passage(text: str) -> str:
    """A text in which the list of lessons and the lessons of a pathway stand where they are named."""
    listed = [
        message("lessons.in-order", number=each.number, title=each.title, file=each.file, minutes=each.minutes)
        for each in _kits()
        if each.number
    ]
    text = text.replace("@lessons", "\n".join(listed))
    for way in pathways.pathways():
        taken = [lessons.lesson(id).number for session in way.sessions for id in session.lessons]
        text = text.replace(f"@{way.id}", ", ".join(str(number) for number in taken if number))
    return text


def _kits() -> tuple[Lesson, ...]:
    """The lessons of the kit, without one's own."""
    return tuple(each for each in lessons.lessons() if not each.own)


def output(lesson: Lesson) -> str:
    """What the number's code prints, worked out now."""
    printed = io.StringIO()
    try:
        with contextlib.redirect_stdout(printed):
            exec(compile(lesson.worked.code, f"{lesson.folder.name}/lesson.toml", "exec"), {})
    except Exception as reason:
        told = message("lessons.error", error=type(reason).__name__, reason=str(reason).rstrip("."))
        file = f"{lesson.folder.name}/lesson.toml"
        raise BadFile(message("lessons.worked-stops", file=file, reason=told)) from None
    return printed.getvalue()


def notebook(lesson: Lesson, printed: str) -> str:
    """The notebook of a lesson with what its number's code printed, as the text of its file."""
    title = f"# {_titled(lesson)}"
    opens = lesson.opens or message("lessons.opens")
    page = f'# {opens}\nfrom dryward import panels\n\npage = panels.page("{lesson.id}")\npage.widget'
    cells = [_cell("title", f"{title}\n\n{lesson.intro}" if lesson.intro else title), _cell("page", page, "", True)]
    cells += [_cell(each.id, _passage(each.text)) for each in lesson.passages]
    heading = lesson.worked.heading or message("lessons.number-heading")
    cells.append(_cell("number", f"## {heading}\n\n{lesson.worked.text}"))
    cells.append(_cell("check", lesson.worked.code, printed))
    if lesson.number:
        start = _link(lessons.lesson("start"))
        after = [each for each in (lessons.lessons() if lesson.own else _kits()) if each.number > lesson.number]
        on = (
            message("lessons.go-on", next=_link(after[0]), start=start)
            if after
            else message("lessons.back", start=start)
        )
        cells.append(_cell("next", f"## {message('lessons.next')}\n\n{on}"))
    body = {
        "cells": cells,
        "metadata": {
            "dryward": {"lesson": lesson.id},
            "kernelspec": {"display_name": "Python 3", "language": "python", "name": "python3"},
            "language_info": {"name": "python"},
        },
        "nbformat": 4,
        "nbformat_minor": 5,
    }
    return json.dumps(body, indent=1, sort_keys=True, ensure_ascii=False) + "\n"


def write_own(folder: Path) -> tuple[str, ...]:
    """Write the notebooks of one's own lessons into a folder, where they differ; gives their names."""
    names = []
    for each in lessons.lessons():
        if each.own:
            text, path = notebook(each, ""), folder / each.file
            if not path.is_file() or path.read_text("utf-8") != text:
                write_whole(path, text)
            names.append(each.file)
    return tuple(names)


# --- all that follows from the folders ------------------------------------------------------


def table() -> str:
    """The lessons as a table for the README, as Markdown."""
    heads = (message("lessons.table-lesson"), message("lessons.table-question"), message("lessons.table-minutes"))
    rows = [f"| {' | '.join(heads)} |", "|---|---|---|"]
    for each in _kits():
        link = f"[{each.number:02d} {each.title}](lessons/{each.file})"
        rows.append(f"| {link} | {each.question} | {each.minutes} |")
    return "\n".join(rows)


def _stored(path: Path, lesson: Lesson) -> str | None:
    """The output in a notebook that has the same code now; the tests of the notebooks hold it true."""
    with contextlib.suppress(OSError, ValueError, KeyError, IndexError):
        for cell in json.loads(path.read_text("utf-8"))["cells"]:
            if cell["id"] == "check" and "".join(cell["source"]) == lesson.worked.code:
                return "".join(cell["outputs"][0]["text"])
    return None


def written(folder: Path, run: bool = True) -> dict[str, str]:
    """Every file that follows from the folders, by its place in ``lessons``.

    With `run` the code of each number is run; otherwise what the notebooks in
    `folder` hold is kept where their code is the same.
    """
    found = {}
    for each in _kits():
        kept = None if run else _stored(folder / each.file, each)
        found[each.file] = notebook(each, output(each) if kept is None else kept)
    return found | {f"guide/{name}": text for name, text in guide.pages().items()}


def stale(folder: Path) -> tuple[str, ...]:
    """Files in ``lessons`` that are not what the folders give: changed, missing or left over."""
    made = written(folder, run=False)
    there = [*folder.glob("[0-9][0-9]-*.ipynb"), *folder.glob("guide/sheets/*.md")]
    over = [name for name in (path.relative_to(folder).as_posix() for path in there) if name not in made]
    wrong = [name for name, text in made.items() if _text(folder / name) != text]
    return tuple(sorted(over + wrong))


def _text(path: Path) -> str | None:
    return path.read_text("utf-8") if path.is_file() else None


class Changes(NamedTuple):
    """The files of ``lessons`` that are new or other than before, and those that are gone."""

    written: tuple[str, ...]
    removed: tuple[str, ...]


def write(folder: Path) -> Changes:
    """Write the files that follow from the folders into ``lessons``, and remove what is left over."""
    made = written(folder)
    there = [*folder.glob("[0-9][0-9]-*.ipynb"), *folder.glob("guide/sheets/*.md")]
    over = [path for path in there if path.relative_to(folder).as_posix() not in made]
    changed = [name for name, text in made.items() if _text(folder / name) != text]
    for path in over:
        path.unlink()
    for name in changed:
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        write_whole(folder / name, made[name])
    return Changes(tuple(sorted(changed)), tuple(sorted(path.relative_to(folder).as_posix() for path in over)))


# --- a new one ----------------------------------------------------------------------------


def new(id: str, folder: Path, tests: Path | None = None) -> tuple[Path, ...]:
    """Make a lesson that works, to be changed into one's own; gives its files."""
    if not re.fullmatch(r"[a-z][a-z0-9]*(-[a-z0-9]+)*", id):
        raise OutOfRange(message("lessons.new-name", name=id))
    name = id.replace("-", "_")
    number = max(each.number for each in lessons.lessons()) + 1
    facts = {
        "id": id,
        "folder": name,
        "number": str(number),
        "title": id.replace("-", " ").capitalize(),
        "name": "".join(part.capitalize() for part in id.split("-")),
    }
    files_of_it = ("__init__.py", "lesson.toml", "en.ftl", "questions.py", "page.py", "scene.py")
    places = {each: folder / name / each for each in files_of_it}
    if tests is not None:
        places["test.py"] = tests / f"test_{name}.py"
    for path in places.values():
        if path.exists():
            raise BadFile(message("lessons.new-exists", file=path.name, name=id))
    for each, path in places.items():
        text = "" if each == "__init__.py" else (_SKELETON / f"{each}.txt").read_text("utf-8")
        path.parent.mkdir(parents=True, exist_ok=True)
        write_whole(path, Template(text).substitute(facts))
    lessons.forget()
    return tuple(places.values())
