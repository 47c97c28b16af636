"""The measurements as the front page shows them."""

import datetime
import os
import platform

from dryward import units


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
        aim = each.aim + {True: "", False: " (missed)", None: ""}[each.met]
        lines.append(f"| {each.what} | {units.number(each.value)} {each.unit} | {each.comparison} | {aim} |")
    when = datetime.date.today().isoformat()
    cores = f"{os.cpu_count()} cores" if os.cpu_count() else "unknown cores"
    lines.append(f"\nMedians of one run on {when}, {platform.system()}, Python {platform.python_version()}, {cores}.")
    return "\n".join(lines)
