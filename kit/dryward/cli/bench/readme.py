"""Puts the measured table between its two marks in the README."""

import datetime
import os
import platform
from pathlib import Path

from dryward.checks import BadFile

BEGIN, END = "<!-- speed: written by `dryward bench --readme` -->", "<!-- end of speed -->"


def table(found):
    """The measurements as a Markdown table.

    Parameters
    ----------
    found : sequence of Measurement

    Returns
    -------
    str
    """
    lines = ["| work | took | beside its peers | aim |", "|---|---|---|---|"]
    for each in found:
        took = f"{each.value:.3g}" if each.value < 100 else f"{each.value:.0f}"
        aim = each.aim + {True: "", False: " (missed)", None: ""}[each.met]
        lines.append(f"| {each.what} | {took} {each.unit} | {each.comparison} | {aim} |")
    when = datetime.date.today().isoformat()
    cores = f"{os.cpu_count()} cores" if os.cpu_count() else "unknown cores"
    lines.append(f"\nMedians of one run on {when}, {platform.system()}, Python {platform.python_version()}, {cores}.")
    return "\n".join(lines)


def write(found, path=Path("README.md")):
    """Replace what stands between the marks.

    Parameters
    ----------
    found : sequence of Measurement
    path : Path, optional
        The file; the README of the folder in which the command was typed.

    Returns
    -------
    Path

    Raises
    ------
    BadFile
        When the file or a mark is not there.
    """
    try:
        words = path.read_text(encoding="utf-8")
    except OSError:
        raise BadFile(f"There is no {path} here; type the command in the folder of the checkout.") from None
    if BEGIN not in words or END not in words:
        raise BadFile(f"{path} has no place for the table, between {BEGIN} and {END}.")
    before, _, rest = words.partition(BEGIN)
    path.write_text(before + BEGIN + "\n" + table(found) + "\n" + END + rest.partition(END)[2], encoding="utf-8")
    return path
