"""The report as one HTML file and as PDF.

The HTML has no script, no font and no address outside.  The PDF is made by
fpdf2, pure Python without system packages: two sheets of paper at most, what
was found and the sentences first, pictures beside each other, then the checks
in two columns.  When a long job would need a third, the letters become a
little smaller.
"""

import base64
import datetime
import io
from collections.abc import Callable, Iterable, Sequence
from typing import TypeAlias, cast

from fpdf import FPDF, FontFace
from fpdf.enums import MethodReturnValue, XPos, YPos
from fpdf.fonts import TTFFont
from jinja2 import Environment, PackageLoader, StrictUndefined, select_autoescape

from dryward import language
from dryward.language import message
from dryward.pictures.exhibits import font_files
from dryward.report.check import Check
from dryward.report.document import (
    Document,
    Picture,
    columns,
    foot,
    heads,
    layer_cells,
    mark,
    numbers,
    row_cells,
)


def html(document: Document, paper: str = "letter") -> str:
    """A document as one HTML file with its pictures inside; what the job holds is escaped."""
    shelf = Environment(
        loader=PackageLoader("dryward.report"),
        autoescape=select_autoescape(),
        undefined=StrictUndefined,
        trim_blocks=True,
    )
    shelf.filters["inline"] = lambda png: base64.b64encode(png).decode("ascii")
    shelf.filters["numbers"] = lambda check: numbers(check, document.unit_system)
    shelf.filters["sentence"] = _ended
    shelf.filters["mark"] = mark
    shelf.filters["cells"] = row_cells
    shelf.filters["layer"] = layer_cells
    return shelf.get_template("page.html").render(
        document=document,
        heads=heads(),
        columns=columns(),
        foot=foot(document),
        sources=_sources(document),
        language=language.name(),
        size={"letter": "letter", "a4": "A4"}[paper],
    )


def _sources(document: Document) -> str:
    return message("report.sources", list=" ".join(document.sources))


#: One stretch of a check on paper: style, size of the letters [pt], words.
Text: TypeAlias = tuple[str, float, str]
#: Sizes of small print, text, heads and the title [pt], tried in this order.
_SIZES = ((7.0, 8.2, 9.6, 14.5), (6.6, 7.8, 9.2, 14.0), (6.0, 7.2, 8.6, 13.0), (5.5, 6.5, 8.0, 12.0))
#: Sheets of paper that should be enough.
_SHEETS = 2
_GAP = 6.0


class _Paper(FPDF):
    """One document: margins, the foot of each page, and the few kinds of text."""

    def __init__(self, document: Document, paper: str, sizes: tuple[float, float, float, float]) -> None:
        super().__init__(format=paper)
        self.document, (self.small, self.normal, self.big, self.huge) = document, sizes
        self.set_margins(14, 10)
        self.set_auto_page_break(True, 12)
        for style, file in font_files().items():
            self.add_font("kit", style, file)
        self.set_title(document.title)
        self.set_creator(f"dryward {document.version}")
        # The same job on the same day makes the same file.
        self.set_creation_date(datetime.datetime.fromisoformat(document.date).replace(tzinfo=datetime.UTC))
        self.add_page()

    def footer(self) -> None:
        self.set_margins(14, 10)
        self.set_xy(14, -9)
        self.set_font("kit", "", self.small)
        words = message("report.foot-and-page", foot=foot(self.document), page=str(self.page_no()), pages="{nb}")
        self.cell(0, 4, words, align="R")

    def leave(self) -> None:
        """Give up a document that is not written out: its font files are closed."""
        for font in self.fonts.values():
            if isinstance(font, TTFFont):
                font.ttfont.close()

    @property
    def room(self) -> float:
        return self.w - 28

    def text_block(
        self, words: str, size: float | None = None, bold: bool = False, space: float = 0.8, marked: bool = False
    ) -> None:
        size = size or self.normal
        self.set_font("kit", "B" if bold else "", size)
        self.multi_cell(0, size * 0.42, words, new_x=XPos.LMARGIN, new_y=YPos.NEXT, align="L", markdown=marked)
        self.ln(space)

    def head(self, words: str, keep: float = 16) -> None:
        if self.will_page_break(keep):
            self.add_page()
        self.ln(0.8)
        self.text_block(words, self.big, bold=True, space=0.2)
        self.set_line_width(0.35)
        self.line(self.l_margin, self.get_y(), self.w - self.r_margin, self.get_y())
        self.ln(0.8)

    def rows(
        self, rows: Iterable[Sequence[str]], widths: tuple[float, ...], heading: tuple[str, ...] | None = None
    ) -> None:
        self.set_font("kit", "", self.small)
        with self.table(
            col_widths=widths,
            width=self.w - self.l_margin - self.r_margin,
            first_row_as_headings=heading is not None,
            headings_style=FontFace(emphasis="BOLD"),
            line_height=self.small * 0.46,
            padding=(0.25, 0.8, 0.25, 0),
            align="LEFT",
            text_align="LEFT",
            borders_layout="HORIZONTAL_LINES",
        ) as table:
            for row in ([heading] if heading else []) + list(rows):
                table.row([str(cell) for cell in row])

    def side_by_side(self, left: Callable[[], object], right: Callable[[], object], share: float = 0.5) -> None:
        """Two columns from here down; both must fit on this page."""
        top, wide = self.get_y(), self.room - _GAP
        self.set_right_margin(14 + wide * (1 - share) + _GAP)
        self.set_x(14)
        left()
        low = self.get_y()
        self.set_margins(14 + wide * share + _GAP, 10, 14)
        self.set_xy(14 + wide * share + _GAP, top)
        right()
        self.set_margins(14, 10, 14)
        self.set_xy(14, max(low, self.get_y()))


def pdf(document: Document, paper: str = "letter") -> bytes:
    """A document as PDF: the same bytes for the same document."""
    for sizes in _SIZES:
        page = _made(document, paper, sizes)
        if page.page_no() <= _SHEETS or sizes is _SIZES[-1]:
            break
        page.leave()
    return bytes(page.output())


def _made(document: Document, paper: str, sizes: tuple[float, float, float, float]) -> _Paper:
    page = _Paper(document, paper, sizes)
    page.text_block(document.title, page.huge, bold=True, space=0.4)
    page.text_block(document.headline, page.normal * 1.2, bold=True, space=0.3)
    page.text_block(document.limits, page.small, space=0.4)

    named = heads()

    def sentences(title: str, words: Iterable[str]) -> None:
        page.head(title)
        for number, sentence in enumerate(words, 1):
            page.text_block(message("report.numbered", number=str(number), sentence=sentence), space=0.4)

    page.side_by_side(
        lambda: sentences(named["client"], document.client), lambda: sentences(named["inspector"], document.inspector)
    )

    def inputs() -> None:
        page.head(named["inputs"])
        page.rows(document.inputs, (42, 58))

    def layers() -> None:
        page.head(named["layers"])
        page.rows([layer_cells(row) for row in document.layers], (43, 15, 12, 22), columns())

    page.side_by_side(inputs, layers, 0.42)
    _pictures(page, document.pictures)
    _checks(page, document)
    if document.rows:
        page.head(named["rows"])
        cells = (row_cells(each) for each in document.rows)
        page.rows([(f"{title} {what}", small) for title, what, small in cells], (60, 50))
    page.head(named["cautions"])
    page.text_block(
        " ".join(f"**{title}** {text}" for title, text in document.cautions), page.small, space=0.4, marked=True
    )
    page.text_block(" ".join((*document.notes, document.disclaimer)), page.small, space=0.4)
    page.text_block(_sources(document), page.small, space=0)
    return page


def _pictures(page: _Paper, pictures: Sequence[Picture]) -> None:
    """The section over the full width, the others beside each other under it."""
    if not pictures:
        return
    first, *others = pictures
    _across(page, [first], 0.78)
    if others:
        _across(page, others, 1.0 if len(others) > 1 else 0.5)


def _across(page: _Paper, pictures: Sequence[Picture], share: float) -> None:
    wide = (page.room * share - _GAP * (len(pictures) - 1)) / len(pictures)
    high = max(wide * each.height / each.width for each in pictures)
    if page.will_page_break(high + page.big * 0.42 + 3):
        page.add_page()
    page.ln(0.8)
    top = page.get_y()
    for k, each in enumerate(pictures):
        x = 14 + k * (wide + _GAP)
        page.set_font("kit", "B", page.big)
        page.set_xy(x, top)
        page.cell(wide, page.big * 0.42, each.title)
        page.image(io.BytesIO(each.png), x=x, y=top + page.big * 0.42 + 0.6, w=wide, alt_text=each.alt)
    page.set_xy(14, top + high + page.big * 0.42 + 1.2)


def _checks(page: _Paper, document: Document) -> None:
    """In two columns of about the same height; a check stays whole, and only what follows goes to the next page."""
    page.head(heads()["checks"])
    waiting = [(parts := _parts(page, each, document.unit_system), _height(page, parts)) for each in document.checks]
    while waiting:
        top = page.get_y()
        room = page.page_break_trigger - top
        left = _split([high for _, high in waiting], room)
        right = left + _fitting([high for _, high in waiting[left:]], room)
        if not right:  # nothing fits here
            if top <= page.t_margin + 1:
                left = right = 1  # longer than a page: it must break
            else:
                page.add_page()
                continue
        ends = [_column(page, 14 + k * (_column_width(page) + _GAP), top, part) for k, part in
                enumerate((waiting[:left], waiting[left:right]))]  # fmt: skip
        page.set_xy(14, max(ends))
        waiting = waiting[right:]
        if waiting:
            page.add_page()


def _column_width(page: _Paper) -> float:
    return (page.room - _GAP) / 2


def _parts(page: _Paper, check: Check, system: str) -> tuple[Text, ...]:
    """A check as (style, size, words): the question and its answer, what was found, the small print."""
    said = " ".join(p for p in (check.what, check.why, check.change, check.matters) if p)
    return (
        ("B", page.normal, f"{mark(check)} {check.asked}\n{_ended(check.said)}"),
        ("", page.normal, "\n".join((said, *(f"- {line}" for line in check.lines)))),
        (
            "",
            page.small,
            " ".join(_ended(each) for each in (numbers(check, system), check.limits, check.source) if each),
        ),
    )


def _ended(text: str) -> str:
    return message("report.sentence", said=text.rstrip("."))


def _write(page: _Paper, part: Text, dry: bool = False) -> float:
    style, size, words = part
    page.set_font("kit", style, size)
    high = page.multi_cell(
        _column_width(page), size * 0.42, words, new_x=XPos.LEFT, new_y=YPos.NEXT, align="L", dry_run=dry,
        output=MethodReturnValue.HEIGHT,
    )  # fmt: skip
    return cast(float, high)  # what was asked for; it may be asked for much else


#: Space under a finding [mm].
_UNDER = 1.8


def _height(page: _Paper, parts: Sequence[Text]) -> float:
    return sum(_write(page, part, dry=True) for part in parts if part[2]) + _UNDER


def _fitting(heights: Sequence[float], room: float) -> int:
    """How many of the first blocks fit under each other."""
    used = 0.0
    for count, high in enumerate(heights):
        used += high
        if used > room + _UNDER:
            return count
    return len(heights)


def _split(heights: Sequence[float], room: float) -> int:
    """How many blocks stand in the left column: both about as high, or as many as fit."""
    most = _fitting(heights, room)
    if most + _fitting(heights[most:], room) < len(heights):
        return most
    return min(range(most + 1), key=lambda k: (max(sum(heights[:k]), sum(heights[k:])), -k))


def _column(page: _Paper, x: float, top: float, blocks: Sequence[tuple[Sequence[Text], float]]) -> float:
    page.set_xy(x, top)
    for parts, _ in blocks:
        for part in parts:
            if part[2]:
                page.set_x(x)
                _write(page, part)
        page.set_y(page.get_y() + _UNDER)
    return page.get_y()
