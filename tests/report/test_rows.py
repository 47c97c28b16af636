"""Code rows of a review: every fact the layers hold is passed, and each row says where it stands."""

import dataclasses
import re

import pytest

from dryward import cli
from dryward.building import Layer, Material, library, preset
from dryward.building.job import Job, Place, Vent
from dryward.report import code_checks, document, printed, review
from dryward.report.sentences import for_inspector
from dryward.report.setting import setting
from dryward.units import thickness, to_si


def rows(assembly, zone="", edition=None):
    found = code_checks.code_rows(setting(Job(assembly, Place(zone=zone))), edition)
    return {each.id.removeprefix("code-"): each for each in found}


def wall(inner, outer="mineral-wool-board", inches=2.0, sheathing="osb"):
    built = preset("wood-frame-wall-exterior-insulation")
    built = built.replace("inner membrane", library.membrane(inner))
    built = built.replace("sheathing", library.material(sheathing))
    return built.replace("exterior insulation", library.material(outer), to_si(inches, "in"))


def test_a_facing_that_opens_is_not_called_prohibited():
    row = rows(preset("wood-frame-wall"), "2")["retarder"]
    assert row.answer == "met"
    assert "permitted inside in zone 2 because it opens to more than 1 perm in the wet cup" in row.what


def test_class_three_is_judged_by_what_stands_outside_the_studs():
    bare = preset("wood-frame-wall-exterior-insulation")
    bare = dataclasses.replace(bare, layers=tuple(each for each in bare.layers if each.name != "inner membrane"))
    thick = bare.replace("exterior insulation", thickness=to_si(4, "in"))
    assert code_checks.retarder(bare)["wall"] == "2x6"
    assert code_checks.retarder(bare)["vented_cladding_over"] == "none"
    assert rows(bare, "6")["retarder"].answer == "not met"
    assert "asks for R-11.25 outside" in rows(bare, "6")["retarder"].what
    assert rows(thick, "6")["retarder"].answer == "met"
    plain = dataclasses.replace(bare, layers=tuple(each for each in bare.layers if each.name != "exterior insulation"))
    assert "with vented cladding over panel" in rows(plain, "5")["retarder"].what
    assert rows(plain, "6")["retarder"].answer == "not met", "over panels the table does not have zone 6"
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
    assert rows(wall("polyethylene-6-mil"), "6")["retarder"].answer == "met"


def test_an_unvented_roof_has_its_rows():
    roof = preset("unvented-vault-foam-above-deck")
    row = rows(roof, "6")["unvented-insulation"]
    assert row.answer == "not met"
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
        assert any(each.id.startswith("code-unvented") for each in found.checks) == asked


ROOF = preset("unvented-vault-foam-above-deck")


def with_foam(substance, inches=4.0):
    return ROOF.replace("foam", substance, to_si(inches, "in"))


@pytest.mark.parametrize("id", ["mineral-wool-board", "wood-fiber-board", "cellulose-dense", "plywood"])
@pytest.mark.parametrize(("zone", "asks"), [("4A", "R-15"), ("5", "R-20"), ("6", "R-25"), ("8", "R-35")])
def test_where_no_foam_is_drawn_the_row_is_not_met(id, zone, asks):
    found = rows(with_foam(library.material(id)), zone)
    row = found["unvented-insulation"]
    assert row.answer == "not met"
    assert "no air-impermeable insulation is drawn at or above the deck" in row.what
    assert f"the row asks for {asks}" in row.what
    assert "air-impermeable and without gaps must be shown" not in row.limits
    assert "unvented-class-2" not in found, "nothing is there whose class could be asked"
    assert "vapor diffusion port" not in row.what


def test_a_membrane_in_place_of_the_foam_is_no_foam_either():
    bare = dataclasses.replace(ROOF, layers=tuple(each for each in ROOF.layers if each.name != "foam"))
    assert rows(bare, "6")["unvented-insulation"].what.startswith("Not met: no air-impermeable insulation is drawn")
    warm = rows(bare, "3A")["unvented-insulation"].what
    assert "the row asks for R-5.0 of it; in an attic of this zone a vapor diffusion port is another way" in warm
    assert "vapor diffusion port" not in rows(bare, "3A", 2015)["unvented-insulation"].what, "it came in 2018"


def test_foam_on_the_room_side_does_not_count_and_is_named():
    inside = ROOF.replace("insulation", library.material("polyiso-fiber-faced"))
    inside = inside.replace("foam", library.material("cellulose-dense"))
    row = rows(inside, "6")["unvented-insulation"]
    assert row.answer == "not met"
    assert "insulation lies on the room side of other insulation" in row.what


def test_without_the_zone_it_cannot_be_told():
    bare = with_foam(library.material("cellulose-dense"))
    for zone, why in (("", "the climate zone must be known"), ("4", "zone 4 needs its letter here")):
        row = rows(bare, zone)["unvented-insulation"]
        assert (row.answer, row.what) == ("cannot tell", f"Cannot tell: {why}.")


OWN = Material("own-material", "own board", 30, 1400, 0.022, 1e-12, category="own")


@pytest.mark.parametrize("substance", [OWN, library.material("spray-foam-open-cell"), library.material("cork-board")])
def test_insulation_that_may_hold_air_back_cannot_be_told(substance):
    row = rows(with_foam(substance, 8.0), "6")["unvented-insulation"]
    assert row.answer == "cannot tell"
    assert row.what.startswith("Cannot tell: whether foam is air-impermeable is not known here; the row asks for R-25")


def test_insulation_that_may_hold_air_back_but_is_too_thin_is_not_met():
    row = rows(with_foam(OWN, 1.0), "6")["unvented-insulation"]
    assert row.answer == "not met"
    assert "even if foam is air-impermeable there is only R-6.6 at or above the deck" in row.what


def test_known_foam_beside_what_is_not_known():
    both = with_foam(library.material("xps"), 6.0)
    deck = both.index("deck")
    own = Layer(OWN, 0.02, "own board")
    both = dataclasses.replace(both, layers=(*both.layers[: deck + 1], own, *both.layers[deck + 1 :]))
    assert rows(both, "6")["unvented-insulation"].answer == "met", "the foam alone is enough"
    thin = both.replace("foam", thickness=to_si(4, "in"))
    row = rows(thin, "6")["unvented-insulation"]
    assert row.answer == "cannot tell"
    assert "own board is air-impermeable" in row.what


def test_under_tiles_in_a_hot_dry_zone_no_foam_is_asked():
    tiled = with_foam(library.material("mineral-wool-board")).replace("covering", library.material("clay-tile"))
    assert rows(tiled, "3B")["unvented-insulation-tile"].answer == "met"
    assert rows(tiled, "3A")["unvented-insulation"].answer == "not met"


def test_another_edition_can_be_asked_for():
    wall = preset("wood-frame-wall")
    assert rows(wall, "6", 2009)["retarder"].source.startswith("IRC R601.3 and R601.3.1, edition 2009, ")
    new = rows(wall, "6", 2024)["retarder"]
    assert new.what.startswith("Met: 2024 was not read, so this is the row of 2021: 0.3 perm")
    assert "new Table R702.7(5)" in new.source
    bare = with_foam(library.material("cellulose-dense"))
    assert rows(bare, "6", 2024)["unvented-insulation"].what.startswith(
        "Not met: 2024 was not read, so this is the row of 2021: no air-impermeable insulation is drawn"
    )
    assert rows(bare, "6", 2009)["unvented-insulation"].source.startswith("IRC R806.4, Table R806.4, edition 2009, ")


@pytest.mark.parametrize("edition", [None, "2009", "2024"])
def test_the_edition_reaches_command_and_review(edition, capsys):
    typed = ["check", "wood-frame-wall", "--steady", "--zone", "6", *(["--edition", edition] if edition else [])]
    cli.main(typed)
    out = capsys.readouterr().out
    found = review(Job(preset("wood-frame-wall"), Place(zone="6")), hourly=False, edition=edition)
    assert f"    Rule: {found.check('code-retarder').source}." in out
    assert "Code rows are of the newest edition whose text was read, unless another was asked for." in out
    assert ("2024 was not read" in out) == (edition == "2024")
    assert any("of the newest edition whose text was read" in note for note in document.document(found).notes)


def test_an_edition_there_is_not(capsys):
    assert cli.main(["check", "wood-frame-wall", "--edition", "2010"]) == 2
    assert '--edition is "2010"; it must be one of 2006, 2009, 2012' in capsys.readouterr().err


def test_the_vents_say_which_edition_is_shown():
    job = Job(preset("vented-vault"), Place(zone="6"), vent=Vent())
    assert code_checks.vents(setting(job), 2024).why.startswith("2024 was not read, so this is the row of 2021. ")
    assert code_checks.vents(setting(job)).why.startswith(("The openings", "1/", "Even"))


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
    assert row.asked.endswith(":")


def test_the_dry_cup_of_a_board_is_read_dry():
    osb = Layer(library.material("osb"), to_si(0.5, "in"), "ceiling")
    roof = preset("unvented-vault-foam-above-deck")
    roof = dataclasses.replace(roof, layers=(osb, *roof.layers[2:]))
    assert code_checks.warm_side(roof) == pytest.approx(osb.substance.permeability_at(0.25) / osb.thickness)


def test_a_permeance_of_a_row_is_read_in_both_unit_systems():
    assert "0.3 perm (11.7 m sd), class II," in rows(preset("wood-frame-wall"), "6")["retarder"].what


@pytest.mark.parametrize("id", ["vented-vault", "unvented-vault-foam-above-deck", "wood-frame-wall"])
def test_screen_and_paper_name_the_code_of_each_row(id, capsys):
    found = review(Job(preset(id), Place(zone="6")), hourly=False)
    cli.main(["check", id, "--steady", "--zone", "6"])
    screen = capsys.readouterr().out
    made = document.document(found)
    paged = re.sub(r"<[^>]+>", "", printed.html(made))
    assert made.rows
    for row in made.rows:
        assert f"    Rule: {row.source}." in screen
        assert row.source.startswith("IRC ")
        title = document.row_title(row)
        assert title[0] == document.mark(row)
        assert f"{title} {row.what}" in paged
        assert row.source in paged


def test_layers_have_the_thickness_a_builder_says():
    made = document.document(review(Job(preset("wood-frame-wall-exterior-insulation")), hourly=False))
    shown = {name: thick for name, _, thick, *_ in made.layers}
    assert shown["sheathing"] == "7/16 in."
    assert shown["insulation"] == "5-1/2 in."
    assert shown["vent space"] == "3/8 in."
    assert "Vapor, at mid humidity" in printed.html(made)
    assert (thickness(to_si(0.3, "in"), "us"), thickness(0.0002, "us"), thickness(0.0002, "si")) == (
        "0.30 in.",
        "0.0079 in.",
        "0.20 mm",
    )
