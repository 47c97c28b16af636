"""The right choice of each prediction is right, and the numbers of its reveal are the kit's."""

import pytest

from dryward import air
from dryward.physics import monthly, steady
from dryward.physics.airleak import brought, orifice_flow
from dryward.physics.ventspace import carrying_limit
from dryward.teaching import lessons
from dryward.teaching.questions.by_lesson import how_fast_perms, twelve_months
from dryward.teaching.questions.by_lesson.clear_night import below_air
from dryward.teaching.questions.roof import FILM, face, film_state, gain, plane, roof, verdict
from dryward.teaching.questions.roof import air as some_air
from dryward.units import DAY, from_si, to_si

WINTER = (70, 40), (20, 80)


def reveal(id):
    return lessons.lesson(id).prediction.reveal


def pressure(fahrenheit, percent):
    return some_air(fahrenheit, percent).vapor_pressure


def test_read_the_air():
    assert f"{pressure(70, 30):.0f} Pa" in reveal("read-the-air")
    assert f"{pressure(30, 80):.0f} Pa" in reveal("read-the-air")


def test_winter_house():
    brought_in = air.relative_humidity(to_si(70.0, "degF"), pressure(20, 90))
    assert f"{100 * brought_in:.1f} %" in reveal("winter-house")


def test_which_way_vapor_goes():
    assert f"{pressure(70, 35):.0f} Pa" in reveal("which-way-vapor-goes")
    assert f"{pressure(20, 90):.0f} Pa" in reveal("which-way-vapor-goes")


def test_temperature_through_layers():
    inside = (("room film and drywall", 0.5, 1.1), ("batt", 5.5, 20))
    outside = ("sheathing and outer film", 0.5, 0.8)
    bare = plane((*inside, outside), 70, 20, "batt")
    boarded = plane((*inside, ("board", 2, 10), outside), 70, 20, "batt")
    assert bare == pytest.approx(22, abs=0.5)
    assert boarded == pytest.approx(37, abs=0.6)


def test_where_it_gets_wet():
    open_, tight = (steady.profile(roof(1.0, outer), *(some_air(*a) for a in WINTER)) for outer in (50.0, 1.5))
    assert not open_.wet_planes
    assert [each.outer_layer for each in tight.wet_planes] == ["outer layer"]
    assert open_.dew_point_depth == pytest.approx(tight.dew_point_depth, rel=1e-6)
    mild = verdict(roof(1.0, "OSB"), (70, 40), (36, 80))
    assert (mild.state, mild.worst.what) == ("damp", "wood-moisture")
    assert f"that wood would settle at {mild.worst.value:.0f} %" in reveal("where-it-gets-wet")
    assert gain(roof(1.0, "OSB"), (70, 40), (36, 80)) == 0


def test_how_fast_perms():
    assert how_fast_perms.in_a_row(1, 1) == 0.5


def test_open_out_tight_in():
    gains = [gain(roof(inner, outer), *WINTER) for outer, inner in ((50.0, 1), (50.0, 0.1), ("OSB", 1), (0.1, 0.1))]
    assert gains[:2] == [0, 0]
    assert gains[2] == max(gains) == pytest.approx(1.8, abs=0.05)
    assert gains[3] == pytest.approx(0.269, abs=0.0005)
    states = [
        verdict(roof(inner, outer), *WINTER).state for outer, inner in ((50.0, 1), (50.0, 0.1), (1.5, 1), (0.1, 0.1))
    ]
    assert states == ["dry", "dry", "wet", "wet"]


def test_the_film_that_changes():
    summer, winter = film_state(roof(), (75, 50), (85, 75)), film_state(roof(), *WINTER)
    assert [round(each) for each in summer[:3]] == [75, 86, 80]
    assert [round(each) for each in winter[:2]] == [41, 14]
    assert (round(summer[3]), round(winter[3], 2)) == (13, 0.5)


def test_july():
    assert f"{pressure(85, 75) - pressure(75, 50):.0f} Pa" in reveal("july")
    assert gain(roof(0.06), (75, 50), (85, 75)) == pytest.approx(2.6, abs=0.1)
    assert face(roof(0.06), (75, 50), (85, 75), FILM, 1)[1] == pytest.approx(100, abs=1e-6)
    assert pressure(85, 75) - pressure(75, 50) > 2 * (pressure(70, 40) - pressure(20, 80))
    for inner, state, humid in ((0.06, "wet", 100), (3.0, "damp", 92), ("variable", "damp", 86)):
        july = roof(inner), (75, 50), (85, 75)
        assert verdict(*july).state == state
        assert round(face(*july, FILM, 1)[1]) == humid
        assert state == "wet" or f"{humid} %" in reveal("july")


def test_the_hole_and_the_ceiling():
    cold = to_si(20.0, "degF")
    leak = brought(orifice_flow(1.0, to_si(1, "in2")), some_air(70, 40), cold).deposit * 150 * DAY
    drive = pressure(70, 40) - air.saturation_vapor_pressure(cold)

    def diffused(*perms):
        return to_si(how_fast_perms.in_a_row(*perms), "perm") * to_si(32, "ft2") * drive * 150 * DAY

    assert leak == pytest.approx(29, abs=0.5)
    assert diffused(40, 7) == pytest.approx(8.6, abs=0.1)
    for ratio, layers in ((3, (40, 7)), (24, (40, 7, 1)), (100, (40, 7, 0.2))):
        assert leak / diffused(*layers) == pytest.approx(ratio, rel=0.15)


def test_vent_space():
    most = carrying_limit(to_si(1.5, "in"), to_si(20, "ft/min"), to_si(16, "ft"), some_air(20, 80))
    assert from_si(most, "g/m2/day") == pytest.approx(37, rel=0.06)
    assert 2 * from_si(most, "g/m2/day") / 1.5 * 2 < 128


def test_clear_night():
    assert below_air(20, 20.0) == pytest.approx(9.9, abs=0.1)


def test_twelve_months():
    found = monthly.balance(roof(3.0, "OSB"), twelve_months.demo_climate("cold"), some_air(70, 40))
    assert found.month[0] in (10, 11, 12)
    assert found.peak_month in (2, 3)
    assert twelve_months.demo_climate("cold").coldest == 1


def test_your_readings():
    assert f"{pressure(21, 90):.0f} Pa" in reveal("your-readings")
    assert pressure(21, 90) < pressure(70, 15)


def test_inside_the_film():
    for inside, warm, perms in ((5.5, 61, 0.73), (22.0, 46, 3.1)):
        built = roof("variable", "open membrane", inside)
        assert face(built, (70, 50), (0, 80), FILM)[0] == pytest.approx(warm, abs=0.5)
        assert film_state(built, (70, 50), (0, 80))[3] == pytest.approx(perms, rel=0.02)
    assert film_state(built, (70, 50), (0, 80))[0] == pytest.approx(86, abs=0.5)
    assert gain(built, (70, 50), (0, 80)) == pytest.approx(1.87, abs=0.005)
    states = [verdict(roof("variable", "open membrane", r), (70, 50), (0, 80)).state for r in (5.5, 22.0)]
    assert states == ["dry", "wet"]
