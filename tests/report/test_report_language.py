"""The report in another language: every text on the page, on paper and in the plain form comes from its messages."""

import dataclasses
import html
import io
import json
import re

import pytest
from jobs_at_hand import TIGHT
from pypdf import PdfReader

import made_up
from dryward import __version__
from dryward.building import Assembly, Layer, codes, library, preset
from dryward.building.job import Job, Place, Tightness, Vent
from dryward.physics import drying, monthly, steady
from dryward.report import document, many, printed, review, tables
from dryward.units import to_si
from dryward.weather import Air

#: A vented roof and a wall, with and without the year; one without a test of its tightness.
JOBS = {
    "roof": Job(preset("vented-vault"), Place(zone="6"), tightness=Tightness(1.0), vent=Vent(), years=1),
    "untested": Job(preset("vented-vault-osb"), Place("demo", "very-cold"), years=1, azimuth=33.0),
    "wall": Job(preset("wood-frame-wall"), Place(zone="6"), years=1),
    "foam": Job(preset("unvented-vault-foam-above-deck"), Place(zone="3A"), design="cold winter", years=1),
}
#: Names of standards, of codes and of the kit, signs of classes, and formats.
NAMES = ("ISO", "EN", "IRC", "IECC", "dryward", "roof.toml", "II", "III")
#: Sections of codes, and the version that a report ends with.
SECTIONS = ("R702.7", "R806", "N1102", __version__)


@pytest.fixture
def spoken():
    """The made-up language while a test runs."""
    with made_up.spoken():
        yield


def told(text, job):
    """Words of a text outside of marks, without what a job's tables cite: sources are no words of ours."""
    for cited in sorted(cites(job), key=len, reverse=True):
        text = text.replace(cited, "")
    return made_up.unmarked(text, NAMES) + made_up.points(text, SECTIONS)


def cites(job):
    found = {library.source_of(layer.substance) for layer in job.assembly.layers}
    found |= {each.rstrip(".") for each in found}
    for name in ("LIMITS", "RETARDERS", "CLASS_2"):
        for row in codes.table(getattr(codes, name)):
            found |= {row["section"], row["how_read"], row["source"], row["edition"]}
    return found - {"", "-"}


@pytest.mark.parametrize(
    ("id", "hourly"),
    [
        *((id, False) for id in JOBS),
        *(pytest.param(id, True, marks=() if id == "roof" else pytest.mark.slow) for id in JOBS),
    ],
)
def test_the_report_shows_nothing_but_messages(spoken, id, hourly):
    job = JOBS[id]
    found = review(job, hourly=hourly, with_trials=False)
    for system in ("us", "si"):
        made = dataclasses.replace(document.document(found, system, "roof.toml"), cautions=())  # words of `teaching`
        page = re.sub(r"<style>.*?</style>|base64,[^\"]*", "", printed.html(made), flags=re.S)
        alts = re.findall(r'alt="([^"]*)"', page)
        assert alts
        shown = html.unescape(" ".join([re.sub(r"<[^>]*>", " ", page), *alts]))
        assert told(" ".join(shown.split()), job) == [], system
    plain = many.plain(found, "roof.toml")
    said = [plain["headline"], plain["small"], *plain["warnings"], *plain["notes"]]
    for each in plain["checks"]:
        keys = ("asked", "said", "what", "why", "change", "matters", "limits", "source")
        said += [*(each[key] for key in keys), *each["lines"], *(number["label"] for number in each["numbers"])]
    assert told(" ".join(said), job) == []
    assert json.dumps(plain)


def test_paper_shows_nothing_but_messages(spoken):
    job = JOBS["roof"]
    made = dataclasses.replace(document.document(review(job, hourly=False), "us", "roof.toml"), cautions=())
    pages = PdfReader(io.BytesIO(printed.pdf(made))).pages
    assert told(" ".join(" ".join(each.extract_text() for each in pages).split()), job) == []


def test_what_is_tried_and_drawn_shows_nothing_but_messages(spoken):
    found = review(dataclasses.replace(TIGHT, years=1))
    for each in found.checks:
        assert told(each.matters, TIGHT) == []
    assert told(" ".join(document.designs(found)), TIGHT) == []
    made = document.document(found, "us")
    assert told(" ".join((*made.client, *made.inspector)), TIGHT) == []


@pytest.mark.parametrize("edition", [None, 1890, *codes.EDITIONS])
@pytest.mark.parametrize("zone", [None, "0", "2B", "4", "6", "8"])
def test_rulings_are_messages(spoken, zone, edition):
    perm = to_si(1, "perm")
    asked = {
        "retarder": (
            {},
            {"permeance": 0.05 * perm},
            {"permeance": 0.05 * perm, "responsive": True},
            {"permeance": 0.05 * perm, "outer_permeance": 0.01 * perm},
            {"permeance": 7 * perm},
            {"permeance": 7 * perm, "vented_cladding_over": "gypsum"},
            {"permeance": 7 * perm, "wall": "2x6", "exterior_insulation": 1.0},
            {"permeance": 50 * perm},
        ),
        "class-2-insulation": ({}, {"wall": "2x4", "exterior_insulation": 0.5}),
        "vent-area": ({}, *({"vented_area": 100.0, "free_area": area} for area in (0.1, 0.4, 1.0))),
    }
    for rule in codes.rules():
        for facts in asked.get(rule, ({}, {"value": 0.05}, {"value": 5.0})):
            ruling = codes.judge(rule, zone=zone, edition=edition, **facts)
            assert told(ruling.reason, JOBS["roof"]) == [], (rule, facts)


def test_tables_show_nothing_but_messages(spoken):
    roof, room, outdoor = preset("vented-vault-osb"), Air(21.0, 0.4), Air(-10.0, 0.8)
    here = document.setting(JOBS["untested"])
    state = steady.profile(roof, room, outdoor)
    shown = [
        roof,
        state,
        drying.rates(roof, "outer layer", room, outdoor),
        monthly.balance(roof, here.months, here.room),
    ]
    for each in shown:
        for system in ("us", "si"):
            assert told(tables.table(each, unit_system=system), JOBS["untested"]) == [], type(each)


def test_what_somebody_named_is_shown_as_it_is(spoken):
    own = Layer(library.material("osb"), 0.012, "my own board")
    built = preset("vented-vault")
    roof = Assembly("House at the lake", (*built.layers[:-1], own))
    shown = printed.html(document.document(review(Job(roof), hourly=False)))
    assert "House at the lake" in shown
    assert "my own board" in shown


def test_the_language_goes_along_to_other_processes(spoken):
    work = dict.fromkeys(("one", "other"), "layers = 3")
    for each in many.many(work, workers=2):
        assert made_up.OPEN in each["error"]
