"""Code rows of a review: every fact the layers hold is passed, and each row says where it stands."""

import dataclasses
import re

import pytest

from dryward import cli
from dryward.building import Layer, library, preset
from dryward.building.job import Job, Place
from dryward.report import code_facts, page, review, rule_checks, sheet
from dryward.report.amounts import thickness
from dryward.report.sentences import for_inspector
from dryward.report.setting import setting
from dryward.units import to_si


def rows(assembly, zone=""):
    found = rule_checks.code_rows(setting(Job(assembly, Place(zone=zone))))
    return {each.id.removeprefix("code-"): each for each in found}


def wall(inner, outer="mineral-wool-board", inches=2.0, sheathing="osb"):
    built = preset("wood-frame-wall-exterior-insulation")
    built = built.replace("inner membrane", library.membrane(inner))
    built = built.replace("sheathing", library.material(sheathing))
    return built.replace("exterior insulation", library.material(outer), to_si(inches, "in"))


def test_a_facing_that_opens_is_not_called_prohibited():
    row = rows(preset("wood-frame-wall"), "2")["retarder"]
    assert (row.answer, row.good) == ("cannot tell", None)
    assert "a responsive one may be allowed: read the adopted text" in row.what


def test_class_three_is_judged_by_what_stands_outside_the_studs():
    bare = preset("wood-frame-wall-exterior-insulation")
    bare = dataclasses.replace(bare, layers=tuple(each for each in bare.layers if each.name != "inner membrane"))
    thick = bare.replace("exterior insulation", thickness=to_si(4, "in"))
    assert code_facts.retarder(bare)["wall"] == "2x6"
    assert code_facts.retarder(bare)["vented_cladding_over"] == "none"
    assert rows(bare, "6")["retarder"].answer == "no"
    assert "asks for R-11.25 outside" in rows(bare, "6")["retarder"].what
    assert rows(thick, "6")["retarder"].answer == "yes"
    plain = dataclasses.replace(bare, layers=tuple(each for each in bare.layers if each.name != "exterior insulation"))
    assert "with vented cladding over panel" in rows(plain, "5")["retarder"].what
    assert rows(plain, "6")["retarder"].answer == "no", "over panels the table does not have zone 6"
    other = plain.replace("sheathing", library.material("asphalt-fiberboard"))
    assert "with vented cladding over fiberboard" in rows(other, "6")["retarder"].what


def test_without_the_framing_the_studs_are_not_guessed():
    bare = dataclasses.replace(preset("wood-frame-wall-exterior-insulation"), framing=None)
    bare = dataclasses.replace(bare, layers=tuple(each for each in bare.layers if each.name != "inner membrane"))
    row = rows(bare, "6")["retarder"]
    assert row.answer == "cannot tell"
    assert row.what.endswith("not known: the wall (2x4 or 2x6).")


def test_class_one_on_both_sides():
    both = wall("polyethylene-6-mil", "polyiso-foil-faced")
    assert "class I on both sides" in rows(both, "6")["retarder"].what
    assert rows(wall("polyethylene-6-mil"), "6")["retarder"].answer == "yes"


def test_an_unvented_roof_has_its_rows():
    roof = preset("unvented-vault-foam-above-deck")
    row = rows(roof, "6")["unvented-insulation"]
    assert row.good is False
    assert "R-22.19" in row.what
    assert "R-25" in row.what
    assert "air-impermeable and without gaps must be shown" in row.limits
    assert rows(roof)["unvented-insulation"].what == "Cannot tell: the climate zone must be known."
    assert rows(roof, "0")["unvented-insulation"].what == "Cannot tell: no row names zone 0."
    assert "unvented-insulation" not in rows(preset("vented-vault"), "6")
    assert "unvented-insulation" not in rows(preset("wood-frame-wall"), "6")


def test_the_inspector_is_sent_to_rows_that_are_printed():
    for id, asked in (("unvented-vault-foam-above-deck", True), ("wood-frame-wall", False)):
        built = preset(id)
        built = dataclasses.replace(built, layers=tuple(each for each in built.layers if not each.vented))
        found = review(Job(built, Place(zone="6")), hourly=False)
        assert ("code rows of unvented roofs apply" in for_inspector(found)[1]) == asked
        assert any(each.id.startswith("code-unvented") for each in found.findings) == asked


def test_foam_that_is_not_known_breaks_no_row():
    roof = preset("unvented-vault-foam-above-deck").replace("foam", library.material("mineral-wool-board"))
    row = rows(roof, "6")["unvented-insulation"]
    assert row.answer == "cannot tell"
    assert "the rule asks for R-25.0 of it" in row.what
    inside = preset("unvented-vault-foam-above-deck").replace("insulation", library.material("polyiso-fiber-faced"))
    inside = inside.replace("foam", library.material("cellulose-dense"))
    assert code_facts.foam(inside) == ()


@pytest.mark.parametrize(
    ("id", "rule", "place"),
    [
        ("vented-vault", "vent-air-space", "IRC R806.3, editions 2012 to 2021, read in secondary sources"),
        ("wood-frame-wall", "retarder", "IRC R702.7, Tables R702.7(2) and (3), edition 2021, "),
    ],
)
def test_a_row_names_its_code_edition_and_section(id, rule, place):
    row = rows(preset(id), "6")[rule]
    assert row.source.startswith(place)
    assert row.question.startswith("Is the code row met: ")


def test_the_dry_cup_of_a_board_is_read_dry():
    osb = Layer(library.material("osb"), to_si(0.5, "in"), "ceiling")
    roof = preset("unvented-vault-foam-above-deck")
    roof = dataclasses.replace(roof, layers=(osb, *roof.layers[2:]))
    assert code_facts.warm_side(roof) == pytest.approx(osb.substance.permeability_at(0.25) / osb.thickness)


def test_a_permeance_of_a_row_is_read_in_both_unit_systems():
    assert "0.3 perm (11.7 m sd), class II," in rows(preset("wood-frame-wall"), "6")["retarder"].what


@pytest.mark.parametrize("id", ["vented-vault", "unvented-vault-foam-above-deck", "wood-frame-wall"])
def test_screen_and_paper_name_the_code_of_each_row(id, capsys):
    found = review(Job(preset(id), Place(zone="6")), hourly=False)
    cli.main(["check", id, "--steady", "--zone", "6"])
    screen = capsys.readouterr().out
    made = sheet.sheet(found)
    paged = re.sub(r"<[^>]+>", "", page.html(made))
    assert made.rows
    for row in made.rows:
        assert f"    Rule: {row.source}." in screen
        assert row.source.startswith("IRC ")
        title = sheet.row_title(row)
        assert title[0] == sheet.mark(row)
        assert f"{title} {row.what}" in paged
        assert row.source in paged


def test_layers_have_the_thickness_a_builder_says():
    made = sheet.sheet(review(Job(preset("wood-frame-wall-exterior-insulation")), hourly=False))
    shown = {name: thick for name, _, thick, *_ in made.layers}
    assert shown["sheathing"] == "7/16 in."
    assert shown["insulation"] == "5-1/2 in."
    assert shown["vent space"] == "3/8 in."
    assert "Vapor, at mid humidity" in page.html(made)
    assert (thickness(to_si(0.3, "in"), "us"), thickness(0.0002, "us"), thickness(0.0002, "si")) == (
        "0.30 in.",
        "0.0079 in.",
        "0.20 mm",
    )
