"""Lesson 8: the page against the steady state, its known numbers, which face goes in, its ends."""

import re
from types import SimpleNamespace

import asked
import pytest
from lesson_page import check_replies, first_visit, open_page, strips_are_the_page, to_both_ends

from dryward import building, units
from dryward.building import FixedMembrane, library
from dryward.course.the_film_that_changes import film_in_vault
from dryward.course.the_film_that_changes.scene import FilmBetweenFaces, LaminateFaces
from dryward.physics import steady
from dryward.teaching import beliefs, guide, lessons, vault
from dryward.verdict import of_steady
from dryward.weather import Air

ID = "the-film-that-changes"
FILM = "inner membrane"
OUTER = {"open-sheet": "vented-vault", "fiberboard": "vented-vault-fiberboard", "osb": "vented-vault-osb"}
OUTER["closed-sheet"] = "vented-vault-closed"
DAYS = {"winter": (70, 20, 0.80), "summer": (75, 85, 0.75), "desert": (75, 95, 0.15)}


def film(kind):
    """The film of an option, from the library or by its perms."""
    if kind in ("fixed", "open-sheet"):
        return FixedMembrane(units.to_si(1.0 if kind == "fixed" else 50.0, "perm"))
    if kind == "variable":
        return library.membrane("teaching-variable")
    laminate = library.membrane("teaching-laminate")
    return laminate if kind == "flipped" else laminate.flipped()  # sensitive sheet to the room, or outward


def profile(at):
    """The steady state of what the controls say."""
    room, outside, humidity = DAYS[at.Weather]
    roof = building.preset(OUTER[at.Outer]).replace(FILM, film(at.Film))
    indoor, outdoor = Air(units.to_si(room, "degF"), at.RH_in), Air(units.to_si(outside, "degF"), humidity)
    return steady.profile(roof, indoor, outdoor)


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize("kind", ["variable", "direction-dependent"])
def test_every_place_is_the_physics(system, kind, tmp_path):
    page = open_page(ID, tmp_path, system)
    page.controls["Film"].value = kind
    for name, value, *_ in to_both_ends(page):
        page.controls[name].value = value
        found = profile(page.at)
        for readout, side in (("inside_face", 0), ("outside_face", 1)):
            there = found.relative_humidity[found.face(FILM, side)]
            assert page.readouts[readout] == pytest.approx(there, rel=1e-6)
        step = found.vapor_pressure[found.face(FILM, 0)] - found.vapor_pressure[found.face(FILM, 1)]
        assert page.readouts["permeance"] == pytest.approx(found.vapor_flux_in / step, rel=1e-3)
        assert page.readouts["gain"] == pytest.approx(found.gain, rel=1e-6)
        assert page.readouts["state"] == of_steady(found).state
        assert ("no water gathers" in page.sentence or "all of it can leave" in page.sentence) == (not found.wet_planes)


def go(page, **values):
    """Set several controls."""
    for name, value in values.items():
        page.controls[name].value = value
    return page.readouts


def test_known_numbers_of_the_variable_film(tmp_path):
    page = open_page(ID, tmp_path)
    for humidity, mean, perm in ((20, 17, 0.50), (40, 27, 0.50), (50, 32, 0.58), (60, 37, 0.81), (70, 42, 1.10)):
        found = go(page, Weather="winter", RH_in=humidity)
        assert 100 * found["mean"] == pytest.approx(mean, abs=0.5)
        assert units.from_si(found["permeance"], "perm") == pytest.approx(perm, rel=0.02)
    found = go(page, RH_in=40)
    assert 100 * found["inside_face"] == pytest.approx(41, abs=0.5)
    assert 100 * found["outside_face"] == pytest.approx(14, abs=0.5)
    found = go(page, Weather="summer", RH_in=50)
    assert 100 * found["inside_face"] == pytest.approx(75, abs=0.5)
    assert 100 * found["outside_face"] == pytest.approx(86, abs=0.5)
    assert units.from_si(found["permeance"], "perm") == pytest.approx(13, rel=0.02)
    found = go(page, Weather="desert", RH_in=40)
    assert 100 * found["inside_face"] == pytest.approx(38, abs=0.5)
    assert units.from_si(found["permeance"], "perm") == pytest.approx(0.6, rel=0.02)


def test_it_opens_at_the_wrong_time_on_a_wet_site(tmp_path):
    page = open_page(ID, tmp_path)
    dry = dict(go(page, Weather="winter", Outer="osb", RH_in=40))
    assert "wrong time" not in page.sentence
    wet = go(page, RH_in=65)
    assert "opens at the wrong time" in page.sentence
    assert units.from_si(dry["gain"], "g/m2/day") == pytest.approx(0.7, rel=0.02)
    assert units.from_si(wet["gain"], "g/m2/day") == pytest.approx(4.3, rel=0.02)
    assert units.from_si(wet["permeance"], "perm") == pytest.approx(1.0, rel=0.05)  # 1.04, printed as 1.0


def test_tight_and_opening_are_one_rule(tmp_path):
    page = open_page(ID, tmp_path)
    for weather in DAYS:
        for kind in ("variable", "direction-dependent", "flipped"):
            for humidity in (15, 40, 55, 70):
                found = go(page, Weather=weather, Film=kind, RH_in=humidity)
                times = found["permeance"] / film(kind).permeance(0.0, 0.0)
                word = "tight" if times <= 1.5 else "opening" if times <= 3 else "open"
                assert f"the film is {word}," in page.sentence
                assert not (times <= 1.5 and "It opens" in page.sentence)
    go(page, Weather="desert", Film="variable", RH_in=40)
    assert "the film is tight, 0.611 perm" in page.sentence
    go(page, Weather="winter", Film="direction-dependent")
    assert "the film is tight, 0.471 perm" in page.sentence


@pytest.mark.parametrize(
    ("near", "far", "toward", "outward"), [(0.75, 0.25, 1.54, 0.83), (1.0, 0.5, 1.82, 1.31), (0.5, 0.0, 0.67, 0.40)]
)
def test_known_numbers_of_the_film_with_two_faces(near, far, toward, outward):
    both = film("flipped"), film("direction-dependent")
    assert units.from_si(both[0].permeance(near, far), "perm") == pytest.approx(toward, rel=0.02)
    assert units.from_si(both[1].permeance(near, far), "perm") == pytest.approx(outward, rel=0.02)


def test_the_picture_follows_the_kind_of_film(tmp_path):
    page = open_page(ID, tmp_path)
    assert isinstance(page.views(page.state), FilmBetweenFaces)
    go(page, Film="direction-dependent")
    right = page.views(page.state)
    assert isinstance(right, LaminateFaces)
    assert right.permeance_flipped == pytest.approx(page.readouts["permeance"])
    go(page, Film="flipped")
    wrong = page.views(page.state)
    assert wrong.permeance == pytest.approx(page.readouts["permeance"])
    assert wrong.permeance == pytest.approx(right.permeance, rel=1e-6)


def test_between_the_sheets_as_much_arrives_as_leaves(tmp_path):
    page = open_page(ID, tmp_path)
    go(page, Film="direction-dependent", RH_in=60)
    state, laminate = page.views(page.state), film("direction-dependent")
    near, middle, far = state.facing
    through = laminate.sensitive.at_mean((near + middle) / 2) * (near - middle)
    assert through == pytest.approx(laminate.backing.level * (middle - far), rel=1e-6)
    near, middle, far = state.flipped
    through = laminate.sensitive.at_mean((middle + far) / 2) * (middle - far)
    assert through == pytest.approx(laminate.backing.level * (near - middle), rel=1e-6)


def test_an_open_sheet_on_the_room_side_gathers_water_behind_osb(tmp_path):
    page = open_page(ID, tmp_path)
    film_gain = go(page, Weather="winter", Outer="osb")["gain"]
    assert go(page, Film="open-sheet")["gain"] > 10 * film_gain


@pytest.mark.parametrize(("humidity", "state"), [(40, "dry"), (50, "damp")])
def test_a_july_that_never_ends_is_damp_behind_the_open_film(humidity, state, tmp_path):
    """At 50 % in the room the face behind the film is at 86 %, above the 85 % at which mold can start on the fill."""
    page = open_page(ID, tmp_path)
    go(page, Weather="summer", RH_in=humidity)
    assert page.readouts["state"] == state
    assert page.readouts["gain"] == 0
    assert ("mold can grow" in page.sentence) == (state == "damp")
    assert "86 % mold can grow" in " ".join(lessons.lesson(ID).limits)


def test_the_year_is_open_in_summer(tmp_path):
    page = open_page(ID, tmp_path)
    view = page.views(page.state)
    assert view.months[0] < 1.05 * min(view.months)
    assert max(view.months) in view.months[5:8]


@pytest.mark.parametrize("humidity", [30, 40, 50])
def test_a_desert_has_the_same_months_and_no_hump(humidity, tmp_path):
    """Who reads a calendar off the bars finds none in the dots."""
    page = open_page(ID, tmp_path)
    go(page, RH_in=humidity)
    view = page.views(page.state)
    assert max(view.dry_months) < 2 * min(view.dry_months)
    assert max(view.months) > 4 * min(view.months)
    july = {"months": view.months[6], "dry": view.dry_months[6]}
    assert july["months"] > 3 * july["dry"]


def test_the_free_page_opens_where_the_film_decides(tmp_path):
    """One sheet of fixed perms and the variable film are not the same to this roof."""
    page = open_page(ID, tmp_path)
    states = [go(page, Film=each) and page.readouts["state"] for each in ("variable", "fixed")]
    assert states == ["dry", "damp"]


def test_strips_are_the_page_itself(tmp_path):
    page = open_page(ID, tmp_path)
    go(page, Outer="osb", RH_in=30)
    assert strips_are_the_page(page) >= {"dry", "wet"}


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))


def test_the_checks_with_their_fixed_numbers():
    opens, site, dry, face, over = asked.fixed("the-film-that-changes")
    assert over.answer == "Only the one of two sheets."
    assert "from 0.61 perm to 1.03 perm" in asked.said(over)  # as the page has it with 60 % in the room
    assert dry.answer == "It is tight, as in a dry winter."
    assert "about 13 perm" in opens.answer
    assert "from 0.5 perm to 1.04 perm" in asked.said(site)
    assert "0.99 gr/ft² day to 6.2 gr/ft² day" in asked.said(site)  # 0.7 and 4.3 g/m2 a day
    assert face.answer == "The sensitive sheet."


def test_the_prediction_and_its_numbers():
    summer, winter = vault.film_state(vault.roof(), (75, 40), (85, 75)), vault.film_state(vault.roof(), *asked.WINTER)
    assert [round(each) for each in summer[:3]] == [68, 84, 76]
    assert [round(each) for each in winter[:2]] == [41, 14]
    assert (round(summer[3], 1), round(winter[3], 2)) == (9.8, 0.5)


@pytest.mark.parametrize("outer", OUTER)
@pytest.mark.parametrize("humidity", [40, 50])
def test_the_right_way_round_is_the_better_one_in_january_and_in_july(outer, humidity, tmp_path):
    """Tighter while the room pushes vapor out, more open while the heat pushes it in."""
    page = open_page(ID, tmp_path)
    right, wrong = (go(page, Weather="winter", Film=each, Outer=outer, RH_in=humidity) for each in SIDES)
    assert right["permeance"] < 0.9 * wrong["permeance"]
    assert right["gain"] <= wrong["gain"]
    assert right["flow"] < wrong["flow"]
    right, wrong = (go(page, Weather="summer", Film=each, Outer=outer, RH_in=humidity) for each in SIDES)
    assert right["permeance"] > 1.02 * wrong["permeance"]
    assert right["flow"] >= 0.999 * wrong["flow"]


SIDES = "direction-dependent", "flipped"


def test_words_sheet_and_belief_say_the_same_side(tmp_path):
    page = open_page(ID, tmp_path)
    options = [dict(each) if isinstance(each, dict) else each for each in page.controls["Film"].frame()["options"]]
    assert "sensitive one outward" in str(options)
    assert "sensitive sheet belongs outward" in beliefs.belief("same-both-ways").right
    assert "sensitive sheet belongs outward" in guide.sheet(ID)
    assert "sensitive sheet belongs outward" in lessons.lesson(ID).worked.text
    for text in (lessons.lesson(ID).takeaway, *lessons.lesson(ID).notes.traps):
        assert "not to a direction" not in text


def test_what_the_sheet_tells_of_both_sides_is_on_the_page(tmp_path):
    page = open_page(ID, tmp_path)
    (trap,) = (each for each in lessons.lesson(ID).notes.traps if "belongs outward" in each)
    for each in SIDES:
        gain = go(page, Weather="winter", Film=each, Outer="osb", RH_in=40)["gain"]
        assert units.show(gain, "vapor flux", "us") in trap
    asked = lessons.read(lessons.lesson(ID).folder).still
    told = dict(asked)["same-both-ways"]
    for each in SIDES:
        open_ = go(page, Weather="winter", Film=each, Outer="open-sheet", RH_in=60)["permeance"]
        assert f"{{{units.from_si(open_, 'perm'):.2f} perm}}" in told


# --- the beats ---------------------------------------------------------------------------


def played(tmp_path, system="us"):
    """The lesson as it is met for the first time, and how to go to a beat and lay all its bets alike."""
    page = first_visit(ID, tmp_path, system)
    page.hear({"kind": "instructor", "value": True})

    def go_to(beat, choice=0):
        page.hear({"kind": "beat", "number": [each.id for each in page.stage.beats].index(beat)})
        page.stage.again()
        while page.stage.open_bet:
            page.hear({"kind": "bet", "choice": choice})
        return page.stage.live()

    return page, go_to


def at(day, humidity, kind="variable", outer="open-sheet"):
    """The state of a case, worked again."""
    return profile(SimpleNamespace(Weather=day, RH_in=humidity, Film=kind, Outer=outer))


def perms(found, kind="variable"):
    """What the film has in a state."""
    return units.from_si(film(kind).permeance(*faces(found)), "perm")


def faces(found):
    """Humidity on its room side and on its other side."""
    return [float(found.relative_humidity[found.face(FILM, side)]) for side in (0, 1)]


def ounces(found, kind="variable"):
    """Fluid ounces a day through 1000 ft2 of the film, by hand: gr/(h ft2 in. Hg), a gallon is 8.345 lb."""
    inside, outside = (found.vapor_pressure[found.face(FILM, side)] for side in (0, 1))
    return perms(found, kind) * (inside - outside) / 3386.389 * 24 * 1000 / 7000 / 8.345 * 128


def shown(text, unit="fl oz"):
    """The amounts of a text in a unit, as they are written."""
    return [float(each) for each in re.findall(rf"([\d.]+)\s{unit}", text.replace("\N{NO-BREAK SPACE}", " "))]


def test_january_and_july_are_the_physics(tmp_path):
    page, go_to = played(tmp_path)
    told = go_to("first")["told"]
    january, july = at("winter", 0.4), at("summer", 0.4)
    assert [round(perms(each), 1) for each in (january, july)] == [0.5, 9.8]
    assert page.stage.beat.bets[0].right(page.stage.states) == "a"
    assert "20 times as open" in told
    assert shown(told)[-1] == pytest.approx(ounces(january), rel=0.02)
    assert 16 * shown(told, "pints")[0] == pytest.approx(-ounces(july), rel=0.02)


def test_two_julys_come_out_opposite(tmp_path):
    """The town opens the film at every humidity of a room, the desert at none; at the beat's own it is tight there."""
    page, go_to = played(tmp_path)
    told = go_to("season")["told"]
    town, desert = at("summer", 0.4), at("desert", 0.4)
    assert [bet.right(page.stage.states) for bet in page.stage.beat.bets] == ["open", "tight"]
    assert perms(desert) <= 0.75
    assert ounces(desert) > 0 > ounces(town)
    assert shown(told)[0] == pytest.approx(ounces(desert), rel=0.02)
    assert 16 * shown(told, "pints")[0] == pytest.approx(-ounces(town), rel=0.02)
    for humidity in (0.15, 0.4, 0.7):
        assert perms(at("summer", humidity)) > 1.5 > perms(at("desert", humidity))


@pytest.mark.parametrize("system", ["us", "si"])
def test_a_damp_room_opens_it_in_january(system, tmp_path):
    page, go_to = played(tmp_path, system)
    go_to("site")
    assert page.widget.frame["stage"]["control"] == "RH_in"
    assert page.widget.frame["stage"]["ask"].endswith("1 perm." if system == "us" else "m sd.")
    control, before = page.controls["RH_in"], at("winter", 0.4, outer="osb").gain
    unit, least = ("fl oz", 29.5735e-3) if system == "us" else ("mL", 1e-3)
    roof = 92.903 if system == "us" else 100.0

    def a_day(gain):
        return gain * 86400 * roof / least

    reached = False
    for humidity in (40, 15, 55, 62, 66, 70, 40, 15):
        control.value = humidity
        found, live = at("winter", humidity / 100, outer="osb"), page.stage.live()
        opened = perms(found) >= 1.0
        reached = reached or opened
        assert live["done"] == reached
        if not reached:
            assert live["told"] == ""
            continue
        assert ("Still January" in live["told"]) == opened
        amounts = shown(live["told"], unit)
        if found.wet_planes:
            # Of two figures each.
            assert amounts[0] == pytest.approx(a_day(found.gain), rel=0.05)
        else:
            # What passes the film leaves through the OSB.
            assert amounts == [pytest.approx(a_day(found.vapor_flux_in), rel=0.05)]
            assert "no frost" in live["told"]
        if opened:
            assert amounts[1] == pytest.approx(a_day(before), rel=0.05)


def test_outward_is_the_better_way_in_january_and_in_july(tmp_path):
    page, go_to = played(tmp_path)
    go_to("sides")
    assert [bet.right(page.stage.states) for bet in page.stage.beat.bets] == ["out", "out"]
    for humidity in (0.3, 0.4, 0.5, 0.6, 0.7):
        for outer in ("osb", "open-sheet"):
            for day in ("winter", "summer"):
                outward, inward = (at(day, humidity, kind, outer).vapor_flux_in for kind in SIDES)
                # Less goes in, or more comes out: positive is outward.
                assert outward < inward


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_differences_on_the_screen_are_those_of_its_numbers(system, tmp_path):
    _, go_to = played(tmp_path, system)
    live = go_to("sides")
    unit, room = "fl oz" if system == "us" else "mL", {"winter": 0.6, "summer": 0.5}
    for scene, apart, day in zip(live["scenes"], shown(live["told"], unit), ("winter", "summer"), strict=True):
        inward, outward = shown(
            " ".join(each["text"] for each in scene["tags"] if each["look"] == "vapor-pressure"), unit
        )
        assert apart == pytest.approx(abs(inward - outward), abs=1e-9)
        assert apart > 0.15 * inward, "one way round is better by what can be seen"
        if system == "us":
            for number, kind in ((outward, SIDES[0]), (inward, SIDES[1])):
                assert number == pytest.approx(abs(ounces(at(day, room[day], kind), kind)), rel=0.03)  # two figures


def test_nothing_of_the_film_is_told_before_the_bets(tmp_path):
    page = first_visit(ID, tmp_path)
    for number, beat in enumerate(page.stage.beats):
        page.hear({"kind": "beat", "number": number})
        for _ in beat.bets:
            stage = page.widget.live["stage"], page.widget.frame["stage"]
            assert not re.search(r"perm\b|fl.oz|pint|gr/ft", str(stage).replace("5.96", ""))
            assert all(not scene["marks"] and not scene["flows"] for scene in stage[0]["scenes"])
            page.hear({"kind": "bet", "choice": 0})
        assert page.stage.shown
        assert all(scene["marks"] and scene["flows"] for scene in page.widget.live["stage"]["scenes"])
        assert bool(beat.bets) == page.stage.live()["done"]


def length(mark):
    """Of a strip along its axes."""
    along = [point[1] for point in mark["points"]]
    return max(along) - min(along)


@pytest.mark.parametrize("beat", ["first", "site", "season", "sides"])
def test_the_film_is_drawn_as_it_is(beat, tmp_path):
    """Gauges are the humidity of the faces, gaps grow with the perms, dots are the flux on the one scale."""
    page, go_to = played(tmp_path)
    gaps, scenes = [], go_to(beat)["scenes"]
    for state, scene in zip(page.stage.states, scenes, strict=True):
        sheets = [state.profile, state.turned] if beat == "sides" else [state.profile]
        strips = [mark for mark in scene["marks"] if mark["look"] == "relative-humidity"]
        drawn = sorted(length(each) for each in strips)
        whole = 0.35 if beat == "sides" else 0.68
        found = sorted(faces(sheets[1])[:1] + faces(sheets[0])[1:] if beat == "sides" else faces(sheets[0]))
        assert drawn == pytest.approx([whole * each for each in found])
        if beat != "sides":
            solid = sum(length(mark) for mark in scene["marks"] if mark["look"] == "permeance")
            gaps.append((state.permeance, 1 - solid / 0.96))
        axes = "cut" if beat == "sides" else "lens"
        inner = [flow for flow in scene["flows"] if flow["points"][0][0] == axes and not flow["spread"]]
        ounces = 86400 * 92.903 / 29.5735e-3 * film_in_vault.DOTS
        rate = sum(abs(found.vapor_flux_in) for found in sheets) * ounces
        assert sum(flow["rate"] for flow in inner) == pytest.approx(rate, rel=0.01)
        # What passes the outermost face, at the same scale.
        last = [flow for flow in scene["flows"] if flow["spread"] and max(each[2] for each in flow["points"]) > 1.0]
        rate = sum(abs(found.vapor_flux_out) for found in sheets) * ounces
        assert sum(flow["rate"] for flow in last) == pytest.approx(rate, rel=0.01)
        for flow in inner:
            (_, _, start), (_, _, end) = flow["points"]
            assert (start < end) == (state.profile.vapor_flux_in > 0)
    assert gaps == sorted(gaps) or gaps == sorted(gaps, reverse=True)
    assert len({round(share, 3) for _, share in gaps}) == len(gaps)


@pytest.mark.parametrize("system", ["us", "si"])
def test_each_number_of_a_reply_of_the_stage_is_in_the_picture(system, tmp_path):
    page, go_to = played(tmp_path, system)
    number = r"(?:sd )?[\d.]*\d (?:%|perm|fl oz|mL|pints|L|m)\b|[\d.]*\d %"
    for beat in ("season", "sides"):
        tags = " ".join(each["text"] for scene in go_to(beat)["scenes"] for each in scene["tags"])
        there = set(re.findall(number, tags.replace("\N{NO-BREAK SPACE}", " ")))
        for bet in page.stage.beat.bets:
            for spot in bet.spots:
                told = set(re.findall(number, page.stage._reply(bet, spot.key).replace("\N{NO-BREAK SPACE}", " ")))
                assert len(told) >= 3
                assert told <= there, (spot.key, told - there)
