"""What is said to each bet, and to who still holds a belief: whoever sets the page so reads these numbers on it."""

import re

import pytest
from asked import outside, pressure
from lesson_page import open_page

from dryward.course.your_readings import beats
from dryward.teaching import lessons
from dryward.teaching.vault import film_state, roof
from dryward.units import from_si, to_si

#: A number with its unit in braces, or a bare percent.
_NUMBER = re.compile(r"\{(-?[\d.]+) ([^{}]+)\}|(?<![\d.])(\d+) (%)")


def set_to(page, **values):
    """Set controls, the others at the bet's case, and give the readouts."""
    for name, value in values.items():
        page.controls[name].value = value
    return page.readouts


def air(page):
    """Lesson 1: the bet's two airs, the cold one heated, the most there can be in the room, and fog twice."""
    warm = dict(set_to(page, T=70, RH=30, T_2=30, RH_2=80))
    cold = dict(set_to(page, T=30, RH=80))
    heated = set_to(page, RH=18, T=70)
    assert round(warm["humidity_ratio"] / warm["humidity_ratio_2"], 1) == 1.7
    assert round(100 * cold["vapor_pressure"] / pressure(70, 100)) == 18
    fog = set_to(page, T=75, RH=95, T_2=30, RH_2=95)
    assert 5 < fog["humidity_ratio"] / fog["humidity_ratio_2"] < 6
    return {
        "Pa": [warm["vapor_pressure"], cold["vapor_pressure"], pressure(70, 100)],
        "degF": [70, 30, 75, *(from_si(each["dew_point"], "degF") for each in (cold, heated))],
        "%": [30, 80, 18, 95, 100],
    }


def house(page):
    """Lesson 2: the bet's day with the fan as it is and twice as fast, and the numbers of the glass."""
    slow = dict(set_to(page, T_out=20, RH_out=90, Water=21, Fresh_air=45))
    fast = dict(set_to(page, Fresh_air=90))
    less = dict(set_to(page, Fresh_air=30))
    assert less["state"] == "damp"
    assert fast["state"] == "dry"
    before, after = (dict(set_to(page, Fresh_air=45, Water=each)) for each in (11, 40))
    assert after["dew_point"] > before["dew_point"] + 10
    assert after["state"] == "wet"
    humidity = [100 * each["relative_humidity"] for each in (slow, fast, less)]
    return {"%": [90, *humidity, 100 * slow["outdoor_warmed"]], "degF": [70, 20]}


def layers(page):
    """Lesson 4: the bet's board, boards of R-5, an inch of foam in the deep bay, and the wood."""
    bare, board = dict(page.readouts), dict(set_to(page, R_out=10))
    thick = page.state.wall.layer("outer board").thickness
    assert (board["gain"], set_to(page, R_out=5)["gain"]) == (0, 0)
    foil = dict(set_to(page, Wall="2x6-foil"))
    inch = dict(set_to(page, Wall="2x12-foam", R_out=6.3))
    assert page.state.wall.layer("foam").thickness == pytest.approx(to_si(1, "in"), rel=0.01)
    whole = set_to(page, Wall="2x6-usual", R_out=0)["whole"]
    return {
        "degF": [20, 70, 16, *(from_si(each["face"], "degF") for each in (bare, board, inch))],
        "g/m2/day": [from_si(each["gain"], "g/m2/day") for each in (bare, foil, inch)],
        "in": [5.5, from_si(thick, "in")],
        "R": [10, 5, 6.3, 20, from_si(bare["total"], "R"), from_si(whole, "R")],
        "%": [100 * board["share"], 25],
    }


def inside(page):
    """Lesson 16: the empty and the filled cavity, and with a little wool a drier and a damper room."""
    empty, full = dict(page.readouts), dict(set_to(page, R_in=22))
    wool, damp = (dict(set_to(page, R_in=5.5, RH_in=rh)) for rh in (50, 70))
    return {
        "degF": [0, *(from_si(each["film_temperature"], "degF") for each in (empty, full))],
        "%": [50, 70, *(100 * each["inside_face"] for each in (empty, full))],
        "perm": [from_si(each["permeance"], "perm") for each in (empty, full, wool, damp)],
        "R": [5.5, 22],
    }


def push(page):
    """Lesson 3: the bet's day, and a cool, damp place beside a warm room."""
    winter = dict(set_to(page, T_in=70, RH_in=35, T_out=20, RH_out=90))
    assert (winter["push"] > 0, page.sentence.startswith("Vapor goes out, from low RH to high RH")) == (True, True)
    assert set_to(page, T_out=60)["push"] < 0
    desert = dict(set_to(page, T_in=75, RH_in=50, T_out=95, RH_out=15))
    assert page.sentence.startswith("Vapor goes out, from cold to warm")
    assert set_to(page, RH_out=45)["push"] < 0
    return {
        "Pa": [winter["inside"], winter["outside"], winter["push"], desert["push"]],
        "degF": [70, 20, 60, 75, 95],
        "%": [35, 90, 50, 15, 45],
    }


def wet(page):
    """Lesson 5: the line and the face behind both outer layers, the film's warmth, and the OSB at 36 degF."""
    osb = dict(set_to(page, T_out=20, RH_in=40, M_in=1, Outer="osb"))
    profile = page.state.profile
    film_at = profile.temperature[profile.face("inner membrane", "outer")]
    open_sheet = dict(set_to(page, Outer="open-sheet"))
    assert open_sheet["gain"] == 0
    assert open_sheet["dew_point_depth"] == pytest.approx(osb["dew_point_depth"], abs=to_si(0.1, "in"))
    assert set_to(page, Outer="osb", T_out=36)["gain"] == 0
    assert "settle at 22 %" in page.sentence
    line, face = (from_si(osb[each], "in") for each in ("dew_point_depth", "wet_plane"))
    return {
        "in": [line, face - line, 12],
        "perm": [50, 1.5],
        "g/m2/day": [from_si(osb["gain"], "g/m2/day")],
        "degF": [20, from_si(film_at, "degF"), from_si(outside(70, 40).dew_point, "degF"), 36],
        "%": [22],
    }


def perms(page):
    """Lesson 6: the bet's row and what each takes; a panel and two rolls; a tenth of the film missing."""
    row = page.state
    taken = [100 * row.together / each for each in row.permeances]
    assert from_si(row.together, "perm") == pytest.approx(0.46, abs=0.005)
    day = row.flow * 86400 * 1000 * 0.3048**2 / 1000
    assert from_si(day, "fl oz") == pytest.approx(4.6, abs=0.05)
    kinds = ("plywood-dry", "plywood-wet", "felt-wet", "synthetic")
    found = [set_to(page, Outer=each)["together"] for each in kinds]
    cut = set_to(page, Outer="open-sheet", Gap_share=10)["cut"]
    return {"perm": [1, 0.46, *(from_si(each, "perm") for each in found)], "%": [10, 100 * cut, *taken]}


def map_of_roofs(page):
    """Lesson 7: the four roofs of the bet, and the roof of ten to one on two days."""
    volumes = []
    for outer, inner in ((1.5, 1), (0.1, 0.1)):
        gain = set_to(page, M_in=inner, M_out=outer)["gain"]
        volumes.append(from_si(gain * 86400 * 1000 * 0.3048**2 / 1000, "fl oz"))
    assert volumes == pytest.approx([5.9, 0.85], rel=0.01)
    tight = page.readouts["gain"]
    assert set_to(page, M_out=50)["gain"] == set_to(page, M_in=1)["gain"] == set_to(page, M_out=10)["gain"] == 0
    deep = set_to(page, T_out=0)["gain"]
    return {
        "perm": [50, 10, 1.5, 0.1],
        "g/m2/day": [from_si(each, "g/m2/day") for each in (tight, deep)],
        "degF": [20, 0],
        "%": [40],
    }


def film(page):
    """Lesson 8: the film in January and July, in a damp January, in the desert, and two sheets both ways round."""
    january, july = film_state(roof(), (70, 40), (20, 80)), film_state(roof(), (75, 40), (85, 75))
    assert round(july[3] / january[3]) == 20
    places = {"winter": (40, 65), "desert": (20,)}
    found = [set_to(page, Weather=day, RH_in=rh)["permeance"] for day, each in places.items() for rh in each]
    kinds = ("direction-dependent", "flipped")
    found += [set_to(page, Weather="winter", RH_in=60, Film=kind)["permeance"] for kind in kinds]
    return {
        "perm": [july[3], *(from_si(each, "perm") for each in found)],
        "%": [40, 65, 20, 60, *january[:2], *july[:2]],
    }


def readings(page):
    """Lesson 15: the fog's averages and its wood, two houses against outdoors, and both folds of one reading."""
    fog = beats.house("outdoor-air")
    warm, humid = fog.mean("cavity")
    assert fog.mean("outdoors") == pytest.approx((warm, humid))
    dials = [float(fog.cavity.moisture_content[day].mean()) for day in (slice(24), slice(-24, None))]
    shares = []
    for name, most in (("cause-air-leak", True), ("cause-blocked-vents", False)):
        page.act("sample", name)
        shares.append(100 * page.readouts["share_above_outdoors"])
        assert ("most like the room" in page.sentence) == most
    april = beats.Logger(to_si(45, "degF"))
    pins = [beats.Pins(to_si(each, "degF")).true for each in (70, 20)]
    assert [f"{each:.1f}" for each in pins] == ["17.2", "20.9"]
    return {
        "degF": [from_si(warm, "degF"), 32, 45, 70, 20],
        "%": [100 * humid, *fog.ends, *dials, april.wood, beats.DIAL, *shares],
    }


def year(page):
    """Lesson 14: the bet's year on four days of its film, then drier room air and leakier houses."""
    start = dict(set_to(page, RH_in=40, ACH50=3))
    days = page.state.run.film.moisture
    assert start["ran_off"] == 0
    leakier = [set_to(page, ACH50=each)["peak"] for each in (1, 10)]
    drier = set_to(page, ACH50=3, RH_in=20)["peak"]
    middle = [days[each] for each in (318, 14, 195)]
    return {
        "degF": [70],
        "Pa": [50],
        "%": [40, 20, start["peak"], page.state.run.lowest, days.min(), *middle, *leakier, drier],
    }


def sky(page):
    """Lesson 12: the bet's night before its frost and with it, and what melts under snow over the leaky ceiling."""
    clear = dict(set_to(page, RH_out=90, Sky=36, Snow="none"))
    snowed, tight = (dict(set_to(page, Snow=roof)) for roof in ("leaky", "tight"))
    assert tight["drip"] == 0
    far = [1.8 * clear[name] for name in ("below", "frosted")]
    return {"degF difference": [9, 36, *far], "degF": [20, from_si(clear["top"], "degF")], "kg": [snowed["drip"]]}


def vent(page):
    """Lesson 11: the leaky and the airtight ceiling, twice the vent with its pull, a bath fan, a bay that is cut."""
    leaky = dict(set_to(page, RH_out=80, Gap=1, Air=20, Leak="leaky"))
    tight, fan, cut, pulled = (
        dict(set_to(page, Gap=gap, Leak=bay))
        for bay, gap in (("airtight", 1), ("bath-fan", 1), ("cut", 1), ("leaky-and-pulled", 2))
    )
    assert cut["power"] == 0
    assert 3.5 < -leaky["rest"] / leaky["power"] < 4.5
    amounts = [leaky["load"], leaky["power"], -leaky["rest"], tight["load"], fan["load"], -pulled["rest"]]
    return {"g/m2/day": [from_si(each, "g/m2/day") for each in amounts], "in": [1, 2]}


def july(page):
    """Lesson 9: the push and the back of the plastic, a cooler room with both films, and the dew points of two days."""
    hot = dict(set_to(page, T_out=85, RH_out=75, T_in=75, Roof="plastic"))
    cooler = set_to(page, T_in=70)["gain"]
    film = dict(set_to(page, Roof="variable"))
    assert (film["gain"], film["state"]) == (0, "damp")
    assert set_to(page, T_in=77)["state"] == "dry"
    warmer = dict(set_to(page, Roof="plastic"))
    assert warmer["state"] == "damp"
    dews = []
    for rh in (75, 30):
        set_to(page, T_out=80, RH_out=rh)
        dews.append(from_si(page.state.outdoor.dew_point, "degF"))
    return {
        "Pa": [hot["push"]],
        "g/m2/day": [from_si(each, "g/m2/day") for each in (hot["gain"], cooler)],
        "degF": [85, 70, 77, 80, 62, *dews],
        "%": [50, 75, 30, 100 * warmer["behind"]],
    }


def hole(page):
    """Lesson 10: both waters of the bet, without a hole, with a film, with plastic, and the joints of the boards."""
    bare = dict(set_to(page, RH_in=40, M_in=5.96, Hole=1, dP=1))
    closed = dict(set_to(page, Hole=0.01))
    assert closed["state"] == "wet"
    film = dict(set_to(page, M_in=0.86))
    plastic = dict(set_to(page, M_in=0.05, Hole=1))
    assert plastic["state"] == "wet"
    joints = dict(set_to(page, Hole=0.67))
    share = bare["stays"] / (bare["stays"] + bare["by_vapor"])
    view = page.views(page.state)
    waters = [each[name] for each in (bare, closed, film, plastic, joints) for name in ("stays", "by_vapor", "carried")]
    return {
        "kg": waters,
        "%": [98, 100 * share],
        "perm": [0.86, 0.05],
        "in2": [1, 0.67, 0.01],
        "ft2": [32],
        "Pa": [1, -view.bottom],
    }


def months(page):
    """Lesson 13: the bet's roof, two tight sides, and the hot, humid town behind plastic."""
    start = dict(set_to(page, RH_in=40, M_in=3, Outer="osb"))
    assert round(from_si(start["peak"], "gr/ft2")) == 556
    tight = dict(set_to(page, M_in=0.06, Outer="closed-sheet"))
    humid = dict(set_to(page, Place="hot-humid", Outer="open-sheet"))
    assert (humid["state"], humid["peak_month"]) == ("wet", 8)
    return {
        "perm": [3, 0.06],
        "degF": [70],
        "%": [40],
        "g/m2": [1000 * each for each in (tight["dried"], humid["peak"])],
    }


CASES = {
    "read-the-air": air,
    "winter-house": house,
    "which-way-vapor-goes": push,
    "temperature-through-layers": layers,
    "where-it-gets-wet": wet,
    "how-fast-perms": perms,
    "open-out-tight-in": map_of_roofs,
    "the-film-that-changes": film,
    "the-hole-and-the-ceiling": hole,
    "inside-the-film": inside,
    "vent-space": vent,
    "clear-night": sky,
    "july": july,
    "twelve-months": months,
    "hour-by-hour": year,
    "your-readings": readings,
}


@pytest.mark.parametrize("id", CASES)
def test_each_number_of_a_reply_is_on_the_page(id, tmp_path):
    known = CASES[id](open_page(id, tmp_path))
    lesson = lessons.read(lessons.lesson(id).folder)
    told = [each.reply for each in lesson.prediction.choices] + [text for _, text in lesson.still]
    seen = {(number or bare, unit or percent) for text in told for number, unit, bare, percent in _NUMBER.findall(text)}
    assert len(seen) > 2
    for number, unit in seen:
        places = len(number.partition(".")[2])
        assert any(round(each, places) == float(number) for each in known[unit]), (number, unit, known[unit])
