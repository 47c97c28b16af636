"""A made-up language: every English text wrapped in marks and a third longer, numbers with a decimal comma.

What a screen, a page, a picture or a command then shows outside of marks is a
text that stands in the code, or a fact: a number, or what somebody named.  A
number with a decimal point was not written for the reader.  `home` is the
folder of the language, made from the files of English; `bare` gives what of a text
stands outside of marks.
"""

import atexit
import contextlib
import functools
import re
import shutil
import tempfile
import tomllib
from pathlib import Path

import tomli_w
from fluent.syntax import FluentSerializer, ast, parse
from fluent.syntax.visitor import Transformer

import dryward
from dryward import language
from dryward.teaching.lessons import WORDS, is_word

ROOT = Path(dryward.__file__).parent
OPEN, CLOSE = "⟦", "⟧"
_MARKED = re.compile(f"{OPEN}[^{OPEN}{CLOSE}]*{CLOSE}")


#: The marks of a number in this language.
COMMA, MINUS = ",", "−"
_POINT = re.compile(r"(?<=\d)\.(?=\d)")


def longer(text):
    """A text in marks, a third longer, its numbers as the language has them."""
    return f"{OPEN}{_POINT.sub(COMMA, text)}{'~' * max(1, len(text) // 3)}{CLOSE}"


#: Messages that are signs of a number.
MARKS = {"decimal-mark": COMMA, "minus-sign": MINUS}


class _Marking(Transformer):
    """Puts marks around what a message says itself; what is given to it stands outside of them."""

    def visit_Message(self, node):
        if node.id.name in MARKS:
            node.value.elements = [ast.TextElement(MARKS[node.id.name])]
            return node
        return self.generic_visit(node)

    def visit_Pattern(self, node):
        node = self.generic_visit(node)
        for element in node.elements:
            if isinstance(element, ast.TextElement) and element.value.strip():
                element.value = longer(element.value)
        return node


def messages(text):
    """A file of messages in the made-up language."""
    return FluentSerializer().serialize(_Marking().visit(parse(text)))


def words(table, kept=()):
    """A table of words in the made-up language; what stands under the kept keys is no word."""
    if isinstance(table, str):
        return longer(table)
    if isinstance(table, list):
        return [words(each, kept) for each in table]
    if isinstance(table, dict):
        return {key: value if key in kept else words(value, kept) for key, value in table.items()}
    return table


def lesson(table, at=""):
    """What of a lesson is words, in the made-up language: as another language gives it."""
    found = {}
    for key, value in table.items():
        if is_word(at, key):
            found[key] = printing(value) if key == "code" else words(value)
        elif key in ("choices", "passages"):
            mark = "key" if key == "choices" else "id"
            found[key] = [{mark: each[mark], **lesson(each, key)} for each in value]
        elif key in WORDS:
            found[key] = lesson(value, key)
    return found


def printing(code):
    """Code whose own words, the first of each line it prints, are in the made-up language."""
    return re.sub(r'(?<=print\(")[^"]*(?=")', lambda found: longer(found.group()), code)


def write(folder):
    """The whole language into a folder, and the folder."""
    folder.mkdir(parents=True, exist_ok=True)
    for path in (ROOT / "language" / "en").rglob("*.ftl"):
        (folder / path.name).write_text(messages(path.read_text(encoding="utf-8")), encoding="utf-8")
    for path in (ROOT / "language" / "en").rglob("*.toml"):
        (folder / path.name).write_text(
            tomli_w.dumps(words(tomllib.loads(path.read_text(encoding="utf-8")))), encoding="utf-8"
        )
    for path in (ROOT / "teaching" / "data").glob("*.toml"):
        table = words(tomllib.loads(path.read_text(encoding="utf-8")), kept=("id", "source", "asked", "lesson"))
        (folder / path.name).write_text(tomli_w.dumps(table), encoding="utf-8")
    lessons = folder / "course"
    lessons.mkdir(exist_ok=True)
    for path in (ROOT / "course").glob("*/en.ftl"):
        (lessons / f"{path.parent.name}.ftl").write_text(messages(path.read_text(encoding="utf-8")), encoding="utf-8")
    for path in (ROOT / "course").glob("*/lesson.toml"):
        table = tomllib.loads(path.read_text(encoding="utf-8"))
        (lessons / f"{path.parent.name}.toml").write_text(tomli_w.dumps(lesson(table)), encoding="utf-8")
    return folder


@functools.cache
def home():
    """The folder of the whole language, written once for all tests of a process that only read it."""
    folder = Path(tempfile.mkdtemp(prefix="made-up-"))
    atexit.register(shutil.rmtree, folder, ignore_errors=True)
    return write(folder / "xx")


@contextlib.contextmanager
def spoken():
    """The language while the block lasts."""
    language.use(home())
    try:
        yield
    finally:
        language.use(None)


def bare(text):
    """What of a text stands outside of all marks."""
    while (shorter := _MARKED.sub(" ", text)) != text:
        text = shorter
    return text


def unmarked(text, allowed=()):
    """Words of a text outside of marks, but for those that are allowed: what a user named, a file's own name."""
    text = bare(text)
    for known in sorted(allowed, key=len, reverse=True):  # a whole name before its parts
        text = re.sub(rf"(?<!\w){re.escape(known)}(?!\w)", " ", text)
    return re.findall(r"[^\W\d_]{2,}", text)


def points(text, allowed=()):
    """Numbers of a text with a decimal point, but for what is allowed: the names of sections, versions, addresses."""
    for known in sorted(allowed, key=len, reverse=True):
        text = text.replace(known, " ")
    return re.findall(r"\S*\d\.\d\S*", text)
