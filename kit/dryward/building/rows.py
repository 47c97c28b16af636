"""Rows of the data tables: CSV files of the package, read with care.

Every row says where its numbers come from; a row that does not is refused.
Lines that begin with ``#`` are remarks.
"""

import csv
from importlib import resources

from dryward.checks import BadFile

#: What every row must say.
MUST_SPEAK = ("id", "source", "where", "how_read")


def read(name, columns, text=None):
    """The rows of one table.

    Parameters
    ----------
    name : str
        File below ``building/data``, such as ``"materials.csv"``.
    columns : sequence of str
        Columns that must be there, besides those of `MUST_SPEAK`.
    text : str, optional
        Read this text in place of the file.

    Returns
    -------
    list of dict
        One a row, all values text; ``"line"`` is the line number.

    Raises
    ------
    BadFile
        When a column is missing, an id stands twice, or a row lacks its
        source, its place or how it was read.

    Examples
    --------
    >>> read("things.csv", [], "id,source,where,how_read\\na,by hand,-,counted\\n")[0]["source"]
    'by hand'
    """
    if text is None:
        text = resources.files("dryward.building").joinpath("data", *name.split("/")).read_text(encoding="utf-8")
    lines = [(number, line) for number, line in enumerate(text.splitlines(), 1) if line and not line.startswith("#")]
    reader = csv.DictReader((line for _, line in lines), strict=True)
    lacking = [column for column in (*MUST_SPEAK, *columns) if column not in (reader.fieldnames or ())]
    if lacking:
        raise BadFile(f"The table {name} lacks the column {lacking[0]}.")
    found, seen = [], set()
    for row, (number, _) in zip(reader, lines[1:], strict=True):
        if None in row or None in row.values():
            raise BadFile(f"The table {name}, line {number}, does not have one value for each column.")
        for column in MUST_SPEAK:
            if not row[column].strip():
                raise BadFile(f"The table {name}, line {number} ({row['id'] or 'no id'}), lacks its {column}.")
        if row["id"] in seen:
            raise BadFile(f"The table {name}, line {number}, has the id {row['id']} a second time.")
        seen.add(row["id"])
        found.append({**{key: value.strip() for key, value in row.items()}, "line": number})
    return found


def number(row, column, name):
    """The number in one cell.

    Parameters
    ----------
    row : dict
        From `read`.
    column, name : str
        The column, and the table for the message.

    Returns
    -------
    float or None
        None for an empty cell.

    Raises
    ------
    BadFile
        When the cell is not a number.

    Examples
    --------
    >>> number({"a": "2.5", "line": 3}, "a", "things.csv")
    2.5
    """
    if not row[column]:
        return None
    try:
        return float(row[column])
    except ValueError:
        raise _wrong(row, column, name, "a number") from None


def points(row, column, name):
    """The points in one cell, written ``0.5:12 0.8:20``.

    Parameters
    ----------
    row : dict
        From `read`.
    column, name : str
        The column, and the table for the message.

    Returns
    -------
    tuple of (float, float)

    Raises
    ------
    BadFile
        When the cell is not made of points.

    Examples
    --------
    >>> points({"a": "0.5:12 0.8:20", "line": 3}, "a", "things.csv")
    ((0.5, 12.0), (0.8, 20.0))
    """
    try:
        found = tuple(tuple(float(part) for part in each.split(":")) for each in row[column].split())
        if any(len(each) != 2 for each in found):
            raise ValueError
    except ValueError:
        raise _wrong(row, column, name, 'made of points like "0.5:12 0.8:20"') from None
    return found


def _wrong(row, column, name, what):
    return BadFile(f"The table {name}, line {row['line']}, column {column}: {row[column][:40]!r} is not {what}.")
