"""The parts a desk is made of; each is a plain table that the browser draws."""


def section(key, title, *parts, fold=None):
    """A titled group; with `fold` ("open" or "shut") it can be folded away."""
    found = {"key": key, "title": title, "parts": [part for part in parts if part]}
    return found if fold is None else {**found, "fold": fold}


def text(words, style="", alert=False):
    """A paragraph."""
    return {"kind": "text", "text": words, "class": style, "alert": alert}


def head(words):
    """A small heading."""
    return {"kind": "head", "text": words}


def items(words, ordered=False):
    """A list of sentences."""
    return {"kind": "list", "items": list(words), "ordered": ordered}


def row(*parts, style=""):
    """Parts beside each other."""
    return {"kind": "row", "parts": [part for part in parts if part], "class": style}


def button(key, words, value=None, label=None, disabled=False, title=None):
    """A button; `label` is what a screen reader says of a sign such as an arrow."""
    return {"kind": "button", "key": key, "text": words, "value": value, "label": label, "disabled": disabled,
            "title": title}  # fmt: skip


def field(key, label, value, unit="", bare=False, size=8, hint="", error="", options=None, disabled=False):
    """A line to type in."""
    return {"kind": "field", "key": key, "label": label, "value": value, "unit": unit, "bare": bare, "size": size,
            "hint": hint, "error": error, "options": options, "disabled": disabled}  # fmt: skip


def area(key, label, value, rows=3, hint="", error=""):
    """Several lines to type in."""
    return {"kind": "area", "key": key, "label": label, "value": value, "rows": rows, "hint": hint, "error": error}


def select(key, label, options, value, bare=False, error=""):
    """A choice; `options` are (id, words)."""
    return {"kind": "select", "key": key, "label": label, "value": value, "bare": bare, "error": error,
            "options": [{"id": id, "text": words} for id, words in options]}  # fmt: skip


def check(key, label, value):
    """A box to tick."""
    return {"kind": "check", "key": key, "label": label, "value": value}


def upload(key, label, accept, most):
    """A file of the reader's, up to so many bytes."""
    return {"kind": "file", "key": key, "label": label, "accept": accept, "most": most}


def download(key, words, name, content, kind):
    """A link that saves bytes as a file."""
    return {"kind": "download", "key": key, "text": words, "name": name, "bytes": content, "type": kind}


def table(head, rows, caption="", style=""):
    """Rows of cells; a cell is a text or a part; a row may be (cells, style)."""
    made = [row if isinstance(row, tuple) else (row, "") for row in rows]
    return {"kind": "table", "head": list(head), "caption": caption, "class": style,
            "rows": [{"cells": list(cells), "class": look} for cells, look in made]}  # fmt: skip


def picture(content, alt):
    """A picture, WebP bytes."""
    return {"kind": "picture", "bytes": content, "alt": alt}


def progress(label, done, total):
    """How far a long run is."""
    return {"kind": "progress", "label": label, "done": done, "total": total}


def check_card(title, answer, mark, lines, small):
    """One check with its answer: the mark stands for it without color."""
    kept = [line for line in lines if line]
    return {"kind": "card", "title": title, "answer": answer, "mark": mark, "lines": kept, "small": small}


def lesson(key, words, id, file):
    """A link to a lesson: by its file in JupyterLab, by its name on the pages."""
    return {"kind": "lesson", "key": key, "text": words, "id": id, "file": file}


def typed_in(sections):
    """All fields and areas in sections, however deep.

    Parameters
    ----------
    sections : list

    Returns
    -------
    list of dict
    """
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
