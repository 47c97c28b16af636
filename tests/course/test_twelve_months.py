"""Lesson 13: the page against the monthly balance, and its ends."""

import subprocess
import sys

import asked
import numpy as np
import pytest
from lesson_page import check_replies, first_visit, open_page, to_beat, to_both_ends

from dryward import building, units
from dryward.building import FixedMembrane
from dryward.course.twelve_months import beats, lumber
from dryward.course.twelve_months import questions as twelve_months
from dryward.course.where_it_gets_wet.page import roof_with
from dryward.physics import drying, monthly
from dryward.pictures import months, scenery
from dryward.teaching import lessons, vault
from dryward.teaching.vault import roof
from dryward.units import from_si, to_si
from dryward.verdict import STATES, criterion, of_months
from dryward.verdict.words import amount, how_long, how_wet
from dryward.weather import Air, demo_climate

ID = "twelve-months"
PRESETS = {"open-sheet": "vented-vault", "fiberboard": "vented-vault-fiberboard", "osb": "vented-vault-osb"}
PRESETS["closed-sheet"] = "vented-vault-closed"


def year(at):
    """The balance of the roof on the sliders, built here again."""
    roof = building.preset(PRESETS[at.Outer]).replace("inner membrane", FixedMembrane(at.M_in))
    return monthly.balance(roof, demo_climate(at.Place), Air(units.to_si(70, "degF"), at.RH_in))


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for name, value, *_ in to_both_ends(page):
        page.controls[name].value = value
        found = year(page.at)
        assert page.readouts["peak"] == pytest.approx(found.peak)
        assert page.readouts["left"] == pytest.approx(found.left)
        assert page.readouts["growth"] == pytest.approx(found.growth)
        assert page.readouts["peak_month"] == found.peak_month
        assert page.verdict == of_months(found)
        says_how_the_year_ends(page, found)
        says_what_the_state_hangs_on(page)
        page.controls[name].value = value


def says_how_the_year_ends(page, found):
    """Nothing gathers, all of it leaves, or so much is left."""
    ends = {
        "no wetting": "No month adds water to this roof",
        "dries": "the last of it is gone in",
        "grows": "are left when the next winter comes, and the second year adds to it.",
        "holds": "are left when the next winter comes, and the second year ends the same.",
    }
    assert [ending for ending, words in ends.items() if words in page.sentence] == [found.ending]
    if found.planes:
        assert page.show(found.peak, "area density") in page.sentence
        assert (page.show(found.left, "area density") in page.sentence) or found.ending == "dries"


def says_what_the_state_hangs_on(page):
    """The worst finding with its number, and its months; never a month that would last as one that did."""
    worst, system = page.verdict.worst, page.unit_system
    assert how_long(page.verdict) in page.sentence
    if worst.what == "wood-moisture" and worst.place.side:
        shown = amount(worst.value, worst.criterion.unit, system)
        assert f"would settle at {shown} if " in page.sentence
        assert "reaches" not in page.sentence
    else:
        assert how_wet(page.verdict, system).lower() in page.sentence.lower()


def test_it_opens_where_the_prediction_is_answered(tmp_path):
    page = open_page(ID, tmp_path)
    assert page.state.months.month[0] == 11  # from November on
    assert page.readouts["peak_month"] == 3  # not January: near the end of winter
    assert "the last of it is gone in June" in page.sentence


def test_to_dry_back_is_not_enough(tmp_path):
    """A roof whose water is gone by fall has the state of its worst months."""
    page = open_page(ID, tmp_path)
    seen = set()
    for outer, state in (("osb", "damp"), ("closed-sheet", "wet"), ("open-sheet", "dry")):
        page.controls["Outer"].value = outer
        assert page.readouts["left"] == 0
        assert page.readouts["state"] == state
        seen.add(page.readouts["state"])
    assert seen == set(STATES)


def test_the_most_open_ceiling_is_damp_by_what_its_wood_holds(tmp_path):
    """Nearly a kilogram a square meter that dries back by fall: its OSB stands far over 20 % by then."""
    page = open_page(ID, tmp_path)
    page.controls["M_in"].value = 100
    assert page.readouts["peak"] == pytest.approx(0.973, rel=0.01)
    osb = building.preset("vented-vault-osb").layer("outer layer")
    weight = osb.substance.density * osb.thickness
    before = 100 * osb.substance.water_content(0.80) / osb.substance.density
    assert page.verdict.worst.value == pytest.approx(before + 100 * page.readouts["peak"] / weight)
    assert page.verdict.worst.value > criterion("wood-moisture").caution
    assert "The outer layer reaches 27 % moisture content in March, over 20 % in 5 of 12 months." in page.sentence
    assert any("the wood stands at 80 % RH, and all that gathers" in limit for limit in lessons.lesson(ID).limits)


def test_water_behind_plastic_in_a_hot_town_is_wet_though_it_dries_back(tmp_path):
    page = open_page(ID, tmp_path)
    for name, value in (("Place", "hot-humid"), ("Outer", "open-sheet"), ("M_in", 0.06)):
        page.controls[name].value = value
    assert page.readouts["peak"] == pytest.approx(1.316, rel=0.01)
    assert page.readouts["peak_month"] == 8
    assert page.readouts["left"] == 0
    assert page.readouts["state"] == "wet"
    assert "gather between inner membrane and insulation in August" in page.sentence


def test_what_is_gained_is_dried_or_left(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH_in"].value = 70
    months = page.state.months
    assert page.readouts["left"] > 0
    assert months.condensed.sum() - months.evaporated.sum() == pytest.approx(page.readouts["left"])
    assert page.readouts["state"] == "wet"
    assert "the second year adds to it. Each year adds" in page.sentence
    running = np.cumsum(months.condensed.sum(axis=1) - months.evaporated.sum(axis=1))
    assert page.views(page.state).held == pytest.approx(tuple(running))


def test_strips_judge_the_same_years(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH_in"].value = 62
    for name, strip in page.strips(page.at, page.state).items():
        control = page.controls[name]
        start = control.value
        places = control.options or page.along(name, len(strip.states))
        for place, state in zip(places, strip.states, strict=True):
            control.value = place if control.options else control.shown(place)
            assert page.readouts["state"] == state, (name, place)
        assert len(set(strip.states)) > 1, name
        control.value = start


def test_the_page_says_that_no_leak_is_counted(tmp_path):
    page = open_page(ID, tmp_path)
    assert "leak" in page.verdict.left_out
    assert any(limit.startswith("No air leaks.") for limit in lessons.lesson(ID).limits)


@pytest.mark.parametrize("id", [ID, "hour-by-hour"])
def test_the_sources_name_the_limits_that_judge(id):
    said = " ".join(lessons.lesson(id, "si").sources)
    wood, water = criterion("wood-moisture"), criterion("free-water")
    assert f"{wood.caution:.0f} percent MC is common practice with no source. {wood.damage:.0f} percent, " in said
    assert f"DIN 4108-3, {water.damage * 1000:.0f} g/m² read in a secondary source, " in said
    assert f"{water.caution * 1000:.0f} g/m² from memory" in said
    assert (f"limit of {criterion('mold-index').damage:.0f}: ASHRAE" in said) == (id == "hour-by-hour")


def test_the_town_loads_no_sun_library():
    code = "from dryward import panels; panels.page('twelve-months')\nimport sys; print('pvlib' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))


def test_the_checks_with_their_fixed_numbers():
    adding, wettest, left, august, studs = asked.fixed("twelve-months")
    assert august.answer.startswith("On the back of the plastic")
    # 25 to 15 % of 2x6 studs at 16 in. is 574 g/m2, and two sides of 0.1 perm let 1.45 g/m2 a day out: 13 months.
    too_much, a_day = 0.1 * 445 * 0.0381 * 0.1397 / 0.4064, 2 * 0.1 * 5.721e-11 * 0.5 * 2963 * 86400
    assert too_much / a_day / 30 == pytest.approx(13, abs=0.5)
    assert studs.answer.startswith("About 13 months")
    assert from_si(to_si(adding.answer, "gr/ft2"), "g/m2") == pytest.approx(190)
    assert wettest.answer in ("February", "March", "April")
    assert left.answer.startswith("It grows")


def test_the_prediction_and_its_numbers():
    found = monthly.balance(roof(3.0, "OSB"), twelve_months.demo_climate("cold"), vault.air(70, 40))
    assert found.month[0] in (10, 11, 12)
    assert found.peak_month in (2, 3)
    assert twelve_months.demo_climate("cold").coldest == 1


# --- the beats -------------------------------------------------------------------------


def bet_on(page, number, choices):
    """Go to a beat and bet."""
    to_beat(page, number)
    for choice in choices:
        page.hear({"kind": "bet", "choice": choice})
    assert page.trouble == ""
    return page.widget.frame["stage"]["bets"], page.widget.live["stage"]


def test_the_first_bet_is_the_month_at_whose_end_the_most_is_held(tmp_path):
    page = first_visit(ID, tmp_path)
    found = year(page.at)
    bets, live = bet_on(page, 0, [2])
    assert found.peak_month == 3
    assert bets[0]["right"] == 2
    gallons = found.peak * 92.903 / 3.7854
    assert f"{gallons:.1f}\N{NO-BREAK SPACE}gallons" in live["told"]
    last = [float(each) for each in found.held.sum(axis=1)]
    assert last[last.index(max(last)) + 3] == 0.0
    assert "gone in June" in live["told"]
    held = months.held_by(found)
    bars = [mark for mark in live["scenes"][0]["marks"] if mark["look"] == "lies"]
    # The wood takes it up: no drop is drawn on it.
    (inside,) = (mark for mark in bars if mark["points"][0][0] == "slope")
    assert all(mark["kind"] not in ("drops", "frost") for mark in live["scenes"][0]["marks"])
    layers = scenery.layers_through(found.assembly)
    osb = next([a, a, b, b] for layer, _, a, b in layers if layer.name == "outer layer")
    assert [at[2] for at in inside["points"]] == osb
    bars.remove(inside)
    assert sorted(mark["points"][2][2] for mark in bars) == pytest.approx(
        sorted(each / beats.TOP for each in held.values() if each > 0)
    )


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_reply_tells_the_numbers_of_the_beat(system, tmp_path):
    """Both are rounded starts of a slider, so the two systems have their own."""
    page = first_visit(ID, tmp_path, system)
    bets, live = bet_on(page, 0, [0])
    peak, january = live["also"].split("; at the end of January ")
    assert peak in bets[0]["reply"]
    assert january in bets[0]["reply"]


def by_hand(outer, humidity_of=0.9):
    """Water that leaves a wet face on the mean days of the cold town, month by month [g/m2 day]."""
    climate, roof = demo_climate("cold"), roof_with(outer, to_si(0.06, "perm"))
    room = Air(to_si(70.0, "degF"), 0.4)
    days = [Air(float(t), float(h)) for t, h in zip(climate.temperature, climate.relative_humidity, strict=True)]
    return [
        from_si(drying.of_a_wet_face(roof, "outer layer", room, day, humidity_of).total, "g/m2/day") for day in days
    ]


def test_wet_rafters_dry_under_an_open_sheet_and_not_under_a_closed_one(tmp_path):
    page = first_visit(ID, tmp_path)
    bets, live = bet_on(page, 1, [0, 0])
    assert [each["right"] for each in bets] == [1, 0]
    closed, opened = (beats.rafters(state) for state in page.stage.states)
    # 445 kg/m3 in 1-1/2 by 11-1/4 in. at 16 in.
    assert pytest.approx(445 * 0.0381 * 0.28575 / 0.4064, rel=1e-3) == lumber.RAFTERS
    # What can leave in a year at best, with the face always wet, is less than a tenth of what is too much.
    best = sum(max(0.0, rate) * 30.4 for rate in by_hand("closed-sheet", 1.0))
    assert best < 0.12 * (lumber.START - beats.DRIED) * 10 * lumber.RAFTERS
    assert lumber.START - best / 10 / lumber.RAFTERS < closed[-1] < lumber.START
    assert opened[0] < beats.DRIED
    assert min(by_hand("open-sheet")) > 0
    assert "23 %" in bets[0]["reply"]
    assert "September" in live["told"]


def test_wet_rafters_are_so_in_each_town_and_room(tmp_path):
    """The pair does not hang on the one town: after a year the two roofs are at the two sides everywhere it is cold."""
    for place in ("very-cold", "cold", "cool-marine"):
        for rh in (0.3, 0.5):
            room = Air(to_si(70.0, "degF"), rh)
            ends = [
                min(lumber.year(roof_with(outer, to_si(0.06, "perm")), place, room))
                for outer in ("closed-sheet", "open-sheet")
            ]
            assert ends[0] > 20 > beats.DRIED > ends[1] - 1.0, (place, rh, ends)


def test_a_january_check_says_the_opposite_of_the_year(tmp_path):
    page = first_visit(ID, tmp_path)
    bets, live = bet_on(page, 2, [1, 0])
    assert [each["right"] for each in bets] == [0, 1]
    fails, passes = (state.months for state in page.stage.states)
    rows = [dict(zip(each.month, each.condensed.sum(axis=1), strict=True)) for each in (fails, passes)]
    assert rows[0][1] > 0 == rows[1][1]
    assert passes.peak > 5 * fails.peak
    plane = passes.planes[int(passes.held.max(axis=0).argmax())]
    assert (plane.inner_layer, plane.outer_layer) == ("inner membrane", "insulation"), "the back of the plastic"
    assert f"{passes.peak * 92.903 / 3.7854:.0f}\N{NO-BREAK SPACE}gallons" in live["told"]


def test_water_that_leaves_in_fall_is_not_told_as_a_good_end(tmp_path):
    """Plastic inside in a hot, humid town: the sentence says that it is too much, and not that it dries back."""
    page = open_page(ID, tmp_path)
    for name, value in (("Place", "hot-humid"), ("M_in", 0.06), ("Outer", "open-sheet")):
        page.controls[name].value = value
    assert page.readouts["state"] == "wet"
    assert page.state.months.dries_out
    assert "That is too much" in page.sentence
    assert "dries back" not in page.sentence
