"""The printed page: the same numbers in HTML and PDF, on paper of both sizes, nothing fetched."""

import datetime
import io
import re

import pytest
from jobs_at_hand import OPEN, TIGHT, checked
from pypdf import PdfReader

from dryward.building import preset
from dryward.building.job import Job
from dryward.report import document, printed, review

DAY = datetime.date(2026, 1, 15)


@pytest.fixture(scope="module", params=[OPEN, TIGHT], ids=["open", "tight"])
def made(request):
    return document.document(checked(request.param, True), "us", "roof.toml", DAY)


def words(pdf):
    return " ".join(" ".join(each.extract_text() for each in PdfReader(io.BytesIO(pdf)).pages).split())


@pytest.mark.parametrize(("size", "width"), [("letter", 612), pytest.param("a4", 595.28, marks=pytest.mark.slow)])
def test_one_or_two_sheets_on_both_papers(made, size, width):
    read = PdfReader(io.BytesIO(printed.pdf(made, size)))
    assert len(read.pages) <= 2
    assert float(read.pages[0].mediabox.width) == pytest.approx(width, abs=0.5)


def test_both_forms_say_the_same(made):
    text, shown_html = words(printed.pdf(made)), printed.html(made)
    for each in (made.headline, *made.client, *made.inspector, made.disclaimer, *(f.what for f in made.checks)):
        assert " ".join(each.split()) in text
    plain = re.sub(r"<[^>]+>", " ", shown_html).replace("&#39;", "'")
    for each in (made.headline, *made.client, *made.inspector):
        assert each in plain
    for check in made.checks:
        for each in (*check.lines, check.matters):
            assert " ".join(each.split()) in text
            assert each in plain
    assert "2026-01-15" in text
    assert "roof.toml" in text


def test_three_sentences_each(made):
    assert len(made.client) == len(made.inspector) == 3
    assert "R702.7" in made.inspector[0] or "no vapor retarder" in made.inspector[0]


def test_nothing_is_fetched_and_nothing_runs(made):
    shown_html = printed.html(made)
    assert "<script" not in shown_html
    assert not re.search(r"(src|href)=\"(?!data:)", shown_html)
    assert "http" not in shown_html


def test_what_a_file_holds_is_escaped():
    import dataclasses

    roof = dataclasses.replace(preset("vented-vault"), name="<script>alert(1)</script>")
    made = document.document(review(Job(roof), hourly=False), "si")
    assert "<script>" not in printed.html(made)
    assert words(printed.pdf(made, "a4"))


def test_pictures_are_gray_and_described(made):
    from PIL import Image

    for picture in made.pictures:
        assert Image.open(io.BytesIO(picture.png)).mode == "L"
        assert len(picture.alt) > 40


def test_the_same_sheet_makes_the_same_file(made):
    assert printed.pdf(made) == printed.pdf(made)


def test_si_shows_si():
    made = document.document(review(OPEN, hourly=False), "si")
    text = words(printed.pdf(made, "a4"))
    assert "°C" in text
    assert "°F" not in text
