"""A made-up language: every English text wrapped in marks and a third longer.

What a screen, a page, a picture or a command then shows outside of marks is a
text that stands in the code.  `write` makes the folder of the language from
the files of English; `bare` gives what of a text stands outside of marks.
"""

import re
import tomllib
from pathlib import Path

import tomli_w
from fluent.syntax import FluentSerializer, ast, parse

import dryward
from dryward.teaching.lessons import WORDS, is_word

ROOT = Path(dryward.__file__).parent
OPEN, CLOSE = "⟦", "⟧"
_MARKED = re.compile(f"{OPEN}[^{OPEN}{CLOSE}]*{CLOSE}")


def longer(text):
    """A text in marks, a third longer."""
    return f"{OPEN}{text}{'~' * max(1, len(text) // 3)}{CLOSE}"


def messages(text):
    """A file of messages in the made-up language."""
    resource = parse(text)
    for entry in resource.body:
        if isinstance(entry, ast.Message) and entry.value is not None:
            length = sum(len(e.value) for e in entry.value.elements if isinstance(e, ast.TextElement)) or 12
            entry.value.elements.insert(0, ast.TextElement(OPEN))
            entry.value.elements.append(ast.TextElement("~" * max(1, length // 3) + CLOSE))
    return FluentSerializer().serialize(resource)


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
        table = words(tomllib.loads(path.read_text(encoding="utf-8")), kept=("id", "source"))
        (folder / path.name).write_text(tomli_w.dumps(table), encoding="utf-8")
    lessons = folder / "course"
    lessons.mkdir(exist_ok=True)
    for path in (ROOT / "course").glob("*/en.ftl"):
        (lessons / f"{path.parent.name}.ftl").write_text(messages(path.read_text(encoding="utf-8")), encoding="utf-8")
    for path in (ROOT / "course").glob("*/lesson.toml"):
        table = tomllib.loads(path.read_text(encoding="utf-8"))
        (lessons / f"{path.parent.name}.toml").write_text(tomli_w.dumps(lesson(table)), encoding="utf-8")
    return folder


def bare(text):
    """What of a text stands outside of all marks."""
    while (shorter := _MARKED.sub("", text)) != text:
        text = shorter
    return text


def unmarked(text, allowed=()):
    """Words of a text outside of marks, but for those that are allowed: what a user named, a file's own name."""
    return [word for word in re.findall(r"[^\W\d_]{2,}", bare(text)) if word not in allowed]
