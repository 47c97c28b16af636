"""The printed page as one HTML file: no script, no font, no address outside."""

import base64

from jinja2 import Environment, PackageLoader, StrictUndefined, select_autoescape

from dryward.report.sheet import LEGEND, amount, mark, row_title


def html(sheet, paper="letter"):
    """A sheet as HTML.

    Parameters
    ----------
    sheet : Sheet
    paper : {"letter", "a4"}

    Returns
    -------
    str
        A whole document with its pictures inside; what the job holds is
        escaped.
    """
    shelf = Environment(
        loader=PackageLoader("dryward.report"),
        autoescape=select_autoescape(),
        undefined=StrictUndefined,
        trim_blocks=True,
    )
    shelf.filters["inline"] = lambda png: base64.b64encode(png).decode("ascii")
    shelf.filters["amount"] = lambda number: amount(number, sheet.unit_system)
    shelf.filters["mark"] = mark
    shelf.filters["row_title"] = row_title
    return shelf.get_template("page.html").render(
        sheet=sheet, legend=LEGEND, size={"letter": "letter", "a4": "A4"}[paper]
    )
