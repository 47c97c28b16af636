"""Lesson 5: the page against the steady state, its three states, wood that is damp without a drop, its arithmetic."""

import asked
import pytest
from lesson_page import check_replies, open_page, places, strips_are_the_page, to_both_ends

from dryward import building, units
from dryward.building import FixedMembrane
from dryward.building.library import wood_moisture
from dryward.physics import steady
from dryward.teaching import lessons, questions, vault
from dryward.teaching.vault import gain, roof, verdict
from dryward.units import from_si, to_si
from dryward.verdict import of_steady
from dryward.weather import Air

ID = "where-it-gets-wet"
ROOM = units.to_si(70, "degF")
ROOFS = {
    "open-sheet": "vented-vault",
    "fiberboard": "vented-vault-fiberboard",
    "osb": "vented-vault-osb",
    "closed-sheet": "vented-vault-closed",
}


def profile(at):
    """The steady state of what the controls say."""
    roof = building.preset(ROOFS[at.Outer]).replace("inner membrane", FixedMembrane(at.M_in))
    return steady.profile(roof, Air(ROOM, at.RH_in), Air(at.T_out, 0.8))


def go(page, **values):
    """Set several controls."""
    for name, value in values.items():
        page.controls[name].value = value
    return page.readouts


def note(page, name):
    """The second line of a readout."""
    return next(each.note for each in page.readout_list if each.name == name)


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for at in places(page):
        found = profile(at)
        worst = max(found.wet_planes, key=lambda plane: plane.rate, default=None)
        assert page.readouts["gain"] == pytest.approx(found.gain, abs=1e-18)
        assert page.readouts["dew_point_depth"] == found.dew_point_depth
        assert page.readouts["wet_plane"] == (worst.depth if worst else None)
        assert page.readouts["state"] == of_steady(found).state
        assert ("no water gathers" in page.sentence) == (worst is None)
        if worst is None:
            assert note(page, "wet_plane").startswith("no water gathers; ")
        else:
            assert page.show(worst.rate, "vapor flux") in page.sentence


@pytest.mark.parametrize(
    ("outdoor", "state", "wood"),
    [(20, "wet", None), (36, "damp", "22 %"), (40, "damp", "18 %"), (50, "dry", "13 %")],
)
def test_between_dry_and_wet_the_wood_is_damp(outdoor, state, wood, tmp_path):
    """No drops are no proof: from 34 to 44 degF no water gathers behind the OSB that counts, and it is not dry."""
    page = open_page(ID, tmp_path)
    go(page, T_out=outdoor)
    assert page.readouts["state"] == state
    assert (page.readouts["wet_plane"] is None) == (wood is not None)
    if wood:
        assert note(page, "wet_plane") == f"no water gathers; wood would settle at {wood} moisture"


def test_the_strip_has_the_stretch_in_between(tmp_path):
    page = open_page(ID, tmp_path)
    words = page.widget.live["strips"]["T_out"]["words"]
    assert words == "Wet up to 31, damp 34 to 43, dry 46 to 67, damp 70 to 85, wet from 88 °F on"


def test_the_words_of_the_lesson_are_the_page(tmp_path):
    page = open_page(ID, tmp_path)
    lesson = lessons.lesson(ID)
    assert "at 36 °F outside none gathers behind the OSB either, but that wood would settle at 22 %" in (
        lesson.prediction.reveal
    )
    go(page, T_out=36)
    assert page.sentence.startswith("Damp. ")
    assert page.sentence.endswith("no water gathers, and the outer layer would settle at 22 % moisture content.")
    depths = [go(page, T_out=20, Outer=outer)["dew_point_depth"] for outer in ("open-sheet", "osb")]
    assert depths[0] == pytest.approx(depths[1], rel=0.02)  # "in nearly the same place"
    assert [go(page, Outer=outer)["state"] for outer in ("open-sheet", "osb")] == ["dry", "wet"]


def test_why_a_humid_face_counts_or_does_not_is_said(tmp_path):
    page = open_page(ID, tmp_path)
    go(page, Outer="open-sheet")
    assert page.sentence.endswith("81 % humidity, between insulation and outer layer, too cold there for mold.")
    go(page, Outer="closed-sheet", T_out=40, M_in=0.05)
    assert page.sentence.endswith("between insulation and outer layer, and mold can grow.")
    go(page, Outer="open-sheet", T_out=50)
    assert page.sentence.endswith("% at which mold can start there.")


def test_a_gain_that_does_not_count_is_called_little(tmp_path):
    page = open_page(ID, tmp_path)
    go(page, T_out=34)
    assert page.readouts["state"] == "damp"
    assert 0 < units.from_si(page.readouts["gain"], "g/m2/day") < 0.1
    assert page.sentence.endswith("too little to count, but the outer layer would settle at 24 % moisture content.")


def test_water_is_told_where_no_part_is_as_cold_as_the_dew_point(tmp_path):
    page = open_page(ID, tmp_path)
    go(page, T_out=100)
    assert page.readouts["dew_point_depth"] is None
    assert "no part" in page.sentence.lower()
    assert "and still there is water: " in page.sentence
    assert page.sentence.endswith("gather between inner membrane and insulation.")


def test_strips_are_the_page_itself(tmp_path):
    page = open_page(ID, tmp_path)
    assert strips_are_the_page(page, every=12) == {"dry", "damp", "wet"}


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_arithmetic_ends_where_the_page_does(system, tmp_path):
    """With water at the gain, summer and several wet planes too; without at the humidity, and at the wood if it is."""
    page = open_page(ID, tmp_path, system)
    left, right = (page.controls["T_out"].min, page.controls["T_out"].max)
    several = {"T_out": left, "RH_in": 70, "M_in": page.controls["M_in"].scale.right}
    for moves in ({}, {"T_out": left}, {"T_out": right}, several, {"T_out": 0.6 * right}, {"Outer": "open-sheet"}):
        go(page, **moves)
        gain, steps = page.readouts["gain"], page.steps(page.state)
        if gain:
            assert steps[-1].result == page.show(gain, "vapor flux"), moves
        else:
            humid = page.show(page.readouts["highest_relative_humidity"], "relative humidity")
            assert page.show(0.0, "vapor flux") in [each.result for each in steps]
            if page.verdict.finding("wood-moisture"):
                assert f"at the {humid} of its face" in steps[-1].words
                assert steps[-1].result.endswith("moisture content")
            else:
                assert steps[-1].result == humid
        for name, control in page.controls.items():
            go(page, **{name: control.choice.start if control.options else control.scale.start})


def test_ends_and_checks(tmp_path):
    page = open_page(ID, tmp_path)
    assert to_both_ends(page)
    check_replies(page)


@pytest.mark.parametrize("seed", [None, *range(12)])
def test_a_face_at_risk_has_water_or_is_damp(seed):
    """Lesson 5's third check: where no drop forms the answer says what the page would, and offers that belief."""
    found = questions.checks("where-it-gets-wet", seed)[2]
    g = found.given
    roof = asked.vault("OSB", 1.0)
    if g["outer"] != "OSB":
        roof = asked.vault("open membrane", 1.0).replace("outer layer", FixedMembrane(to_si(g["outer"], "perm")))
    state = steady.profile(roof, asked.outside(70, g["indoor_rh"]), asked.outside(g["outdoor"], 80))
    judged = of_steady(state)
    beliefs = [each.belief for each in found.choices]
    if judged.state == "wet":
        assert "takes up" in found.right.reply
        assert "no-drops-no-problem" not in beliefs
    else:
        assert judged.state == "damp"
        assert not state.wet_planes
        wood = judged.worst.what == "wood-moisture"
        tail = f"the wood would settle at {judged.worst.value:.0f} % MC." if wood else "mold can grow there."
        assert found.right.reply.endswith(f"It is damp all the same: {tail}")
        assert "no-drops-no-problem" in beliefs


def test_both_halves_of_one_check_are_drawn():
    """A roof that passes and whose wood is over its caution; one that fails and is dry again by fall."""
    seen = set()
    for seed in range(12):
        found = questions.check("where-it-gets-wet/passes", seed)
        seen.add(found.given["failed"])
        (held,) = (each.text for each in found.choices if each.belief == "one-check-decides")
        assert held == ("It will rot. It failed." if found.given["failed"] else "It is fine. It passed.")
    assert seen == {False, True}


@pytest.mark.parametrize("seed", [None, 1, 5])
def test_in_july_there_is_no_water_where_the_fill_is_at_the_dew_point(seed):
    g = questions.check("where-it-gets-wet/summer_line", seed).given
    outdoors = asked.outside(g["outdoor"], g["outdoor_rh"])
    state = steady.profile(roof("variable"), asked.outside(g["indoor"], 50), outdoors)
    assert not state.wet_planes
    fill = slice(state.face("insulation", 0), state.face("insulation", 1) + 1)
    assert state.temperature[fill].min() < outdoors.dew_point < state.temperature[fill].max()


def test_both_kinds_of_face_at_risk_are_drawn():
    drawn = {len(questions.checks("where-it-gets-wet", seed)[2].choices) for seed in range(12)}
    assert drawn == {3, 4}


def test_the_checks_with_their_fixed_numbers():
    passes, water, face, july, joists = asked.fixed("where-it-gets-wet")
    mild = steady.profile(asked.vault("OSB"), asked.outside(70, 40), asked.outside(36, 80))
    wood = next(each.value for each in mild.verdict.findings if each.what == "wood-moisture")
    assert not mild.wet_planes
    assert passes.answer.startswith("No water gathers that day.")
    assert f"settle at {wood:.0f} %" in asked.said(passes)
    assert "7.9 in. from the room" in water.prompt  # as the page has it
    assert july.answer.startswith("No.")
    assert joists.answer.endswith(f"{100 * wood_moisture(0.88, to_si(66, 'degF')):.0f} % MC.")
    assert water.answer.startswith("No")
    state = steady.profile(asked.vault("OSB"), asked.outside(70, 40), asked.outside(20, 80))
    assert round(from_si(state.gain, "g/m2/day"), 1) == 1.8
    assert face.answer.startswith("The inner face of the outer layer")


def test_the_prediction_and_its_numbers():
    open_, tight = (steady.profile(roof(1.0, outer), *(vault.air(*a) for a in asked.WINTER)) for outer in (50.0, 1.5))
    assert not open_.wet_planes
    assert [each.outer_layer for each in tight.wet_planes] == ["outer layer"]
    assert open_.dew_point_depth == pytest.approx(tight.dew_point_depth, rel=1e-6)
    mild = verdict(roof(1.0, "OSB"), (70, 40), (36, 80))
    assert (mild.state, mild.worst.what) == ("damp", "wood-moisture")
    assert f"that wood would settle at {mild.worst.value:.0f} %" in asked.reveal("where-it-gets-wet")
    assert gain(roof(1.0, "OSB"), (70, 40), (36, 80)) == 0


def test_an_arrow_is_drawn_where_the_face_is_wet_and_nowhere_else(tmp_path):
    page = open_page(ID, tmp_path)
    picture = page.draws()
    for outer in ("open-sheet", "osb", "closed-sheet"):
        for cold in (page.controls["T_out"].min, 20, page.controls["T_out"].max):
            page.controls["Outer"].value, page.controls["T_out"].value = outer, cold
            picture.redraw(page.result.views[0])
            shown = [each.get_visible() for each in (*picture.section.arrows, *picture.section.supplies)]
            face = page.state.profile.face("outer layer", 0)
            assert any(shown) == (face in [plane.node for plane in page.state.profile.wet_planes])
