"""A logger's file as lines of cells: what is text, and how it is cut into cells."""

import csv
import re
from pathlib import Path

from dryward.checks import BadFile

#: Larger than years of readings every minute are [bytes]; and rows.
LARGEST, MOST_ROWS = 40_000_000, 1_000_000
DELIMITERS = (";", "\t", "|", ",")
_CONTROL = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f]")
# What a spreadsheet would run when it opens the cell.
_FORMULA = re.compile(r"\s*(=|@|[+-]\s*[A-Za-z]+\s*[(!|])")


def lines(path):
    """The lines of a text file.

    Parameters
    ----------
    path : path
        UTF-8, UTF-16 with its mark, or the Windows alphabet of western Europe.

    Returns
    -------
    tuple of str
        Empty lines at the end are left out.

    Raises
    ------
    BadFile
        When it cannot be opened, is too large, or is not text.

    Examples
    --------
    >>> lines("nowhere.csv")
    Traceback (most recent call last):
    dryward.checks.BadFile: nowhere.csv cannot be opened: no such file or directory.
    """
    name = Path(path).name
    try:
        with open(path, "rb") as file:
            raw = file.read(LARGEST + 1)
    except OSError as error:
        raise BadFile(f"{name} cannot be opened: {(error.strerror or 'unknown reason').lower()}.") from None
    if len(raw) > LARGEST:
        raise BadFile(f"{name} is too large; a file of readings is at most {LARGEST / 1e6:.0f} MB.")
    text = _decoded(raw)
    if text is None or _CONTROL.search(text):
        raise BadFile(f"{name} is not text; save the readings as CSV in the logger's own program.")
    found = text.splitlines()
    while found and not found[-1].strip():
        found.pop()
    if not found:
        raise BadFile(f"{name} is empty.")
    if len(found) > MOST_ROWS:
        raise BadFile(f"{name} has {len(found)} lines; at most {MOST_ROWS} are read.")
    return tuple(found)


def _decoded(raw):
    marked = raw.startswith((b"\xff\xfe", b"\xfe\xff"))
    alphabets = ("utf-16",) if marked else ("utf-8-sig", "cp1252")
    for alphabet in alphabets:
        try:
            return raw.decode(alphabet)
        except UnicodeDecodeError:
            continue
    return None


def cells(name, rows, delimiter):
    """Each line cut into cells, blanks around them taken off.

    Parameters
    ----------
    name : str
        Of the file, for the sentence.
    rows : sequence of str
        Lines.
    delimiter : str
        One character.

    Returns
    -------
    list of list of str

    Raises
    ------
    BadFile
        When a cell begins like a spreadsheet's formula: a file of readings
        has none, and whoever opens it would run it.

    Examples
    --------
    >>> cells("a.csv", ['1;"21,4" ;x'], ";")
    [['1', '21,4', 'x']]
    """
    found = []
    for number, line in enumerate(rows, start=1):
        try:
            row = [cell.strip() for cell in next(csv.reader([line], delimiter=delimiter), [])]
        except csv.Error:
            raise BadFile(f"{name}, line {number}: a cell is too long to be a reading.") from None
        for cell in row:
            if _FORMULA.match(cell):
                raise BadFile(
                    f'{name}, line {number}: a cell begins with "{cell.lstrip()[0]}", like a formula of a spreadsheet; '
                    "readings are dates and numbers only."
                )
        found.append(row)
    return found


def likely_delimiter(rows):
    """The character that cuts the most lines into the same number of cells.

    Parameters
    ----------
    rows : sequence of str
        Lines.

    Returns
    -------
    str or None
        None when no character cuts them alike.

    Notes
    -----
    Between equals the comma loses: where another one stands, it is a decimal
    comma.

    Examples
    --------
    >>> likely_delimiter(["01.02.2024;21,4;45,0", "02.02.2024;21,5;45,1"])
    ';'
    """
    best, score = None, 0.5
    sample = [row for row in rows[:3000] if row.strip()]
    for delimiter in DELIMITERS:
        counts = {}
        for row in sample:
            width = len(next(csv.reader([row[:5000]], delimiter=delimiter), []))
            counts[width] = counts.get(width, 0) + 1
        counts.pop(1, None)
        if counts:
            share = max(counts.values()) / len(sample)
            if share > score + 0.02:
                best, score = delimiter, share
    return best


def number(cell, decimal="."):
    """The number in a cell, with or without a unit behind it.

    Parameters
    ----------
    cell : str
        Such as ``"21,4 °C"``.
    decimal : {".", ","}
        The decimal sign.

    Returns
    -------
    float
        Not a number where the cell holds none.

    Examples
    --------
    >>> number("21,4 °C", ",")
    21.4
    >>> number("--")
    nan
    """
    match = _NUMBER[decimal].fullmatch(cell)
    return float(match[1].replace(",", ".")) if match else float("nan")


_NUMBER = {
    sign: re.compile(
        rf"([+-]?\d{{1,9}}(?:{re.escape(sign)}\d{{0,12}})?)\s*(?:°?\s*[CF]|%|% ?RH|mm|in|V|K)?", re.IGNORECASE
    )
    for sign in (".", ",")
}
