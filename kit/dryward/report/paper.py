"""The printed page as PDF, by fpdf2: pure Python, no system packages."""

import datetime
import io

from fpdf import FPDF, FontFace
from fpdf.enums import XPos, YPos

from dryward.pictures.printed import font_files
from dryward.report.sheet import amount

_SMALL, _TEXT, _HEAD, _TITLE = 6.9, 8.6, 10.0, 15.0


class _Paper(FPDF):
    """One document: margins, the foot of each page, and the few kinds of text."""

    def __init__(self, sheet, paper):
        super().__init__(format=paper)
        self.sheet = sheet
        self.set_margins(15, 12)
        self.set_auto_page_break(True, 14)
        for style, file in font_files().items():
            self.add_font("kit", style, file)
        self.set_title(sheet.title)
        self.set_creator(f"dryward {sheet.version}")
        # The same job on the same day makes the same file.
        self.set_creation_date(datetime.datetime.fromisoformat(sheet.date).replace(tzinfo=datetime.UTC))
        self.add_page()

    def footer(self):
        self.set_y(-11)
        self.set_font("kit", "", _SMALL)
        name = f"{self.sheet.file}, " if self.sheet.file else ""
        self.cell(
            0, 4, f"{name}{self.sheet.date}, dryward {self.sheet.version}, page {self.page_no()} of {{nb}}", align="R"
        )

    def text_block(self, words, size=_TEXT, bold=False, space=1.0):
        self.set_font("kit", "B" if bold else "", size)
        self.multi_cell(0, size * 0.46, words, new_x=XPos.LMARGIN, new_y=YPos.NEXT, align="L")
        self.ln(space)

    def head(self, words, keep=24):
        if self.will_page_break(keep):
            self.add_page()
        self.ln(1.2)
        self.text_block(words, _HEAD, bold=True, space=0.4)
        self.set_line_width(0.4)
        self.line(self.l_margin, self.get_y(), self.w - self.r_margin, self.get_y())
        self.ln(1.2)

    def rows(self, rows, widths, heading=None):
        self.set_font("kit", "", _SMALL)
        with self.table(
            col_widths=widths,
            first_row_as_headings=heading is not None,
            headings_style=FontFace(emphasis="BOLD"),
            line_height=3.5,
            text_align="LEFT",
            borders_layout="HORIZONTAL_LINES",
        ) as table:
            for row in ([heading] if heading else []) + list(rows):
                table.row([str(cell) for cell in row])


def pdf(sheet, paper="letter"):
    """A sheet as PDF.

    Parameters
    ----------
    sheet : Sheet
    paper : {"letter", "a4"}

    Returns
    -------
    bytes
        The same bytes for the same sheet.
    """
    page = _Paper(sheet, paper)
    page.text_block(sheet.title, _TITLE, bold=True)
    page.text_block(sheet.verdict, 10.5, space=1.5)
    page.head("What was checked")
    page.rows(sheet.inputs, (35, 65))
    page.head("Layers, from inside to outside")
    page.rows(
        [(f"{name} ({what})" if what else name, *rest[:3], rest[3]) for name, what, *rest in sheet.layers],
        (34, 13, 11, 13, 60),
        ("Layer", "Thickness", "R", "Vapor", "Source"),
    )
    for picture in sheet.pictures:
        _picture(page, picture)
    page.head("Findings")
    for each in sheet.findings:
        _finding(page, each, sheet.unit_system)
    for title, sentences in (("For the client", sheet.client), ("For the inspector", sheet.inspector)):
        page.head(title)
        for number, sentence in enumerate(sentences, 1):
            page.text_block(f"{number}. {sentence}", space=0.6)
    if sheet.rows:
        page.head("Code rows")
        page.rows([(each.what, f"{each.source}. {each.limits}") for each in sheet.rows], (60, 50))
    page.head("Cautions and limits")
    for title, text in sheet.cautions:
        page.text_block(f"{title}. {text}", _SMALL, space=0.3)
    page.text_block(" ".join((*sheet.notes, sheet.disclaimer)), _SMALL)
    return bytes(page.output())


def _picture(page, picture):
    width = page.w - page.l_margin - page.r_margin
    if page.will_page_break(width * 0.5 + 8):
        page.add_page()
    page.head(picture.title, keep=10)
    page.image(io.BytesIO(picture.png), w=width, alt_text=picture.alt)
    page.ln(1)


def _finding(page, each, unit_system):
    if page.will_page_break(16):
        page.add_page()
    page.text_block(f"{each.question} {each.answer.capitalize()}.", bold=True, space=0)
    page.text_block(" ".join(part for part in (each.what, each.why, each.change) if part), space=0)
    numbers = "; ".join(f"{number.label}: {amount(number, unit_system)}" for number in each.numbers)
    page.text_block(" — ".join(part for part in (numbers, each.limits, each.source) if part), _SMALL, space=1.2)
