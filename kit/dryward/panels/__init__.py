"""What is touched: the pages of the lessons, with their sliders and pictures.

`page` opens a lesson's page.  How a lesson is written stands in
`dryward.panels.page`.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

# The module `page` is loaded here, before the function of that name takes its
# place in this package; `from dryward.panels.page import Page` works all the same.
import dryward.panels.page  # noqa: F401
from dryward.checks import UnknownName
from dryward.teaching import lessons

if TYPE_CHECKING:
    from dryward.panels.learner import Settings
    from dryward.panels.page import Page

__all__ = ["page"]


def page(id: str, unit_system: str | None = None, settings: Settings | None = None) -> Page:
    """The page of a lesson.

    Parameters
    ----------
    id : str
        The lesson's file name without its number, such as ``"where-it-gets-wet"``.
    unit_system : {"us", "si"}, optional
        Otherwise what the learner chose last; US at first.
    settings : Settings, optional
        What is remembered; otherwise the learner's own file.

    Returns
    -------
    Page

    Raises
    ------
    UnknownName
        For a lesson that does not exist, or an unknown unit system.

    Examples
    --------
    >>> page("where-it-gets-wet").sentence != ""
    True
    """
    if id not in ("start", *lessons.pages()):
        raise UnknownName("lesson page", id, ("start", *lessons.pages()))
    return lessons.module(id, "page").PAGE(unit_system, settings)
