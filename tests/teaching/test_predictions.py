"""The right choice of each prediction is right, and the numbers of its reveal are the kit's."""

import pytest

from dryward import air
from dryward.course.clear_night.questions import below_air
from dryward.course.how_fast_perms import questions as how_fast_perms
from dryward.course.twelve_months import questions as twelve_months
from dryward.course.vent_space.questions import RAFTER, power
from dryward.physics import monthly, steady
from dryward.physics.airleak import LONG_SHARE, Leak, brought, orifice_flow
from dryward.teaching import lessons
from dryward.teaching.vault import FILM, face, film_state, gain, plane, roof, verdict
from dryward.teaching.vault import air as some_air
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
    leak = brought(orifice_flow(1.0, to_si(1, "in2")), some_air(70, 40), cold, LONG_SHARE)
    past, stays = leak.excess * 150 * DAY, leak.stays * 150 * DAY
    drive = pressure(70, 40) - air.saturation_vapor_pressure(cold)

    def diffused(*perms):
        return to_si(how_fast_perms.in_a_row(*perms), "perm") * to_si(32, "ft2") * drive * 150 * DAY

    told = lessons.lesson("the-hole-and-the-ceiling", "si").prediction.reveal
    for kilograms, behind in ((past, "past"), (stays, "stays"), (diffused(40, 7), "drywall"), (diffused(40, 7, 1), "")):
        assert f"{kilograms:.3g} kg" in told, behind
    assert past / diffused(40, 7) == pytest.approx(3.64, abs=0.01)
    assert diffused(40, 7) / stays == pytest.approx(2.7, abs=0.05)
    assert stays / diffused(40, 7, 1) == pytest.approx(2.5, abs=0.05)
    for number in ("3.6 times", "2.7 times", "2.5 times", "0.86 perm"):
        assert number in reveal("the-hole-and-the-ceiling")
    assert how_fast_perms.in_a_row(40, 7, 1) == pytest.approx(0.86, abs=0.005)


def test_vent_space():
    """More vent does not fix it, and more vent that also pulls leaves more behind than before."""
    cold, house = to_si(20.0, "degF"), to_si(20_000.0, "ft3")
    leak = Leak.from_blower_door(3.0, house, 0.2, area=to_si(600.0, "ft2"))
    still, pulled = (leak.moisture(push, some_air(70, 40), cold) for push in (4.0, 6.0))
    through = max(steady.profile(roof(), some_air(70, 40), some_air(20, 80)).vapor_flux_out, 0.0)
    loads = [from_si(each.excess - each.stays + through, "g/m2/day") for each in (still, pulled)]
    small, wide = (power(gap, 20, RAFTER, (20, 80)) for gap in (1, 2))
    lesson = lessons.lesson("vent-space", "si").prediction
    assert f"{loads[0]:.0f} g/m² day" in lesson.prompt
    assert loads[0] > 2 * wide
    for number in (f"{loads[1]:.0f}", f"{loads[0] - small:.1f}", f"{loads[1] - wide:.0f}"):
        assert f"{number} g/m² day" in lesson.reveal, number
    assert loads[1] - wide > loads[0] - small


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
