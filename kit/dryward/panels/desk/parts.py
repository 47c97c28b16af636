"""The parts that sections of a desk are made of; each is a plain table that the browser draws (``static/desk.js``).

The key of a field or button comes back with what the reader did.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

Part = dict[str, Any]


def section(key: str, title: str, *inside: Part | None, fold: str | None = None) -> Part:
    """A titled group; with `fold` ("open" or "shut") it can be folded away."""
    found = {"key": key, "title": title, "parts": [part for part in inside if part]}
    return found if fold is None else {**found, "fold": fold}


def text(words: str, style: str = "", alert: bool = False) -> Part:
    """A paragraph."""
    return {"kind": "text", "text": words, "class": style, "alert": alert}


def items(words: Iterable[str]) -> Part:
    """A list of sentences."""
    return {"kind": "list", "items": list(words)}


def row(*inside: Part | None, style: str = "") -> Part:
    """Parts beside each other."""
    return {"kind": "row", "parts": [part for part in inside if part], "class": style}


def button(
    key: str,
    words: str,
    label: str | None = None,
    disabled: bool = False,
    title: str | None = None,
) -> Part:
    """A button; `label` is what a screen reader says of a sign such as an arrow."""
    return {"kind": "button", "key": key, "text": words, "label": label, "disabled": disabled, "title": title}


def field(
    key: str,
    label: str,
    value: object,
    unit: str = "",
    bare: bool = False,
    size: int = 8,
    hint: str = "",
    error: str = "",
) -> Part:
    """A line to type in; `bare` shows its label to screen readers alone."""
    return {"kind": "field", "key": key, "label": label, "value": value, "unit": unit, "bare": bare, "size": size,
            "hint": hint, "error": error}  # fmt: skip


def area(key: str, label: str, value: str, rows: int = 3, error: str = "") -> Part:
    """Several lines to type in."""
    return {"kind": "area", "key": key, "label": label, "value": value, "rows": rows, "error": error}


def select(
    key: str, label: str, options: Iterable[tuple[str, str]], value: str, bare: bool = False, error: str = ""
) -> Part:
    """A choice; `options` are (id, words)."""
    return {"kind": "select", "key": key, "label": label, "value": value, "bare": bare, "error": error,
            "options": [{"id": id, "text": words} for id, words in options]}  # fmt: skip


def check(key: str, label: str, value: bool) -> Part:
    """A box to tick."""
    return {"kind": "check", "key": key, "label": label, "value": value}


def upload(key: str, label: str, accept: str, most: int) -> Part:
    """A file of the reader's, up to so many bytes; a larger one is never sent, and ``<key>-too-large`` says so."""
    return {"kind": "file", "key": key, "label": label, "accept": accept, "most": most}


def download(key: str, words: str, name: str, content: bytes, media_type: str) -> Part:
    """A link that saves bytes as a file."""
    return {"kind": "download", "key": key, "text": words, "name": name, "bytes": content, "type": media_type}


def table(head: Sequence[str], rows: Iterable[Any]) -> Part:
    """Rows of cells; a cell is a text or a part; a row may be (cells, style)."""
    made = [row if isinstance(row, tuple) else (row, "") for row in rows]
    return {
        "kind": "table",
        "head": list(head),
        "rows": [{"cells": list(cells), "class": look} for cells, look in made],
    }


def picture(content: bytes, alt: str) -> Part:
    """A picture, WebP bytes."""
    return {"kind": "picture", "bytes": content, "alt": alt}


def progress(label: str, done: int, total: int) -> Part:
    """How far a long run is."""
    return {"kind": "progress", "label": label, "done": done, "total": total}


def check_card(title: str, answer: str, mark: str, lines: Iterable[str], small: str) -> Part:
    """One check with its answer: the mark stands for it without color."""
    kept = [line for line in lines if line]
    return {"kind": "card", "title": title, "answer": answer, "mark": mark, "lines": kept, "small": small}


def lesson(key: str, words: str, id: str, file: str) -> Part:
    """A link to a lesson: by its file in JupyterLab, by its name on the pages."""
    return {"kind": "lesson", "key": key, "text": words, "id": id, "file": file}


def typed_in(sections: Iterable[Part]) -> list[Part]:
    """All fields and areas in sections, however deep."""
    found, waiting = [], list(sections)
    while waiting:
        part = waiting.pop()
        if not isinstance(part, dict):
            continue
        if part.get("kind") in ("field", "area"):
            found.append(part)
        waiting += part.get("parts", [])
        if part.get("kind") == "table":
            waiting += [cell for row in part["rows"] for cell in row["cells"]]
    return found
