"""One verdict: its limits and their sources, what each method makes of a result, and the words for it."""

import dataclasses
import importlib
import itertools
import math
import re
from pathlib import Path

import numpy as np
import pytest

from dryward import building, verdict, weather
from dryward.building import Assembly, FixedMembrane, Layer, Material
from dryward.checks import BadFile, OutOfRange, UnknownName
from dryward.physics import hourly, limits, monthly, steady
from dryward.units import to_si
from dryward.verdict import DAMP, DRY, LATER, NEVER, STATES, UNKNOWN, WET, WITHIN, Finding, Place, words
from dryward.verdict.findings import class_of_surface, critical_humidity, sensitivity
from dryward.verdict.findings import verdict as of_findings
from dryward.weather import Air

PRESETS = sorted(building.presets())
ROWS = verdict.criteria()
#: Unit of a limit -> the least and the most that a limit of that kind can sensibly be.
SANE = {
    "% MC": (10.0, 40.0),
    "of 6": (0.5, 6.0),
    "kg/m2": (0.001, 2.0),
    "kg/(s m2)": (0.0, to_si(1.0, "g/m2/day")),
    "": (0.5, 1.0),
}
OSB = building.preset("vented-vault-osb").layer("outer layer").substance
FORBIDDEN = re.compile(r"\bsafe|certif", re.IGNORECASE)


def rank(state):
    return STATES.index(state)


def rises(states):
    ranks = [rank(each) for each in states]
    return ranks == sorted(ranks)


# --- the limits ----------------------------------------------------------------------------------------------


@pytest.mark.parametrize("id", ROWS)
def test_a_limit_says_where_it_is_from_and_is_sane(id):
    row = ROWS[id]
    assert row.id == id
    for text in (row.what, row.source, row.where, row.how_read):
        assert text.strip() == text != ""
    low, high = SANE[row.unit]
    assert low <= row.caution <= high
    assert row.caution > 0.0
    assert row.caution <= row.damage
    assert row.damage <= high or math.isinf(row.damage)
    assert not FORBIDDEN.search(" ".join((row.what, row.source, row.where, row.how_read, row.note)))
    # Whoever wrote it down says how sure it is: read, remembered, chosen, or what the word means.
    assert re.search(r"read in|from memory|chosen|definition", row.how_read)


@pytest.mark.parametrize("id", ROWS)
def test_a_state_rises_with_a_worse_value_and_turns_at_the_limits(id):
    row = ROWS[id]
    top = row.damage if math.isfinite(row.damage) else 3.0 * row.caution
    values = np.sort(np.concatenate([np.linspace(0.0, 2.0 * top, 200), [row.caution, top]]))
    states = row.state(values)
    assert rises(states)
    assert [row.state(float(each)) for each in values] == states.tolist()
    assert row.state((1.0 - 1e-6) * row.caution) == DRY
    # What stands at a limit has reached it, on whichever side of it the last bit fell.
    for limit, there in ((row.damage, WET), (row.caution, WET if row.caution == row.damage else DAMP)):
        if math.isfinite(limit):
            assert {row.state(np.nextafter(limit, beyond)) for beyond in (0.0, limit, np.inf)} == {there}
    if math.isfinite(row.damage):
        assert row.state(row.damage) == WET
    reach = [row.reach(each) for each in values]
    assert reach == sorted(reach)


def test_an_unknown_limit_is_one_sentence():
    with pytest.raises(UnknownName, match='There is no criterion "wood-moister"; did you mean wood-moisture'):
        verdict.criterion("wood-moister")


@pytest.mark.parametrize(
    ("row", "sentence"),
    [
        ("a,what,kg/m2,1,2,,where,read in it,", "The row a of the criteria lacks its source or how it was read"),
        ("a,what,kg/m2,1,2,somewhere,where,,", "The row a of the criteria lacks its source or how it was read"),
        ("a,what,kg/m2,much,2,somewhere,where,read in it,", "The row a of the criteria has a limit that is no number"),
    ],
)
def test_a_row_without_its_source_or_with_no_number_is_refused(row, sentence, tmp_path, monkeypatch):
    criteria = importlib.import_module("dryward.verdict.findings")  # the package has a function of that name
    (tmp_path / "data").mkdir()
    head = "id,what,unit,caution,damage,source,where,how_read,note"
    (tmp_path / "data" / "criteria.csv").write_text(f"{head}\n{row}\n", encoding="utf-8")
    monkeypatch.setattr(criteria.resources, "files", lambda _: tmp_path)
    with pytest.raises(BadFile, match=sentence):
        criteria.criteria.__wrapped__()


# --- findings --------------------------------------------------------------------------------------------------


def found(id, value, state=None, **more):
    limit = ROWS[id]
    return Finding(id, Place("deck"), value, limit, state or limit.state(value), **more)


def test_the_worst_finding_comes_first_and_gives_its_state():
    made = of_findings("year", [found("mold-index", 2.0), found("wood-moisture", 29.0), found("free-water", 0.1)])
    assert [each.what for each in made.findings] == ["wood-moisture", "mold-index", "free-water"]
    assert (made.state, made.worst.state, made.worst.quantity) == (WET, WET, "moisture of wood")
    assert made.finding("mold-index").value == 2.0
    assert made.finding("growth") is None
    nothing = of_findings("year", [])
    assert (nothing.state, nothing.worst, nothing.lasted) == (DRY, None, None)


def test_wood_and_water_come_before_a_mere_humidity_of_the_same_state():
    humid = dataclasses.replace(found("face-humidity", 0.99), state=DAMP)
    assert of_findings("steady", [humid, found("wood-moisture", 20.5)]).worst.what == "wood-moisture"
    assert of_findings("steady", [humid, found("wood-moisture", 12.0)]).worst.what == "face-humidity"


def test_nothing_worked_out_is_not_known_yet():
    made = verdict.unknown("year")
    assert (made.state, made.findings, words.sentence(made)) == (UNKNOWN, (), "Not known yet.")


# --- one steady state ------------------------------------------------------------------------------------------


def airs_at_random(count, seed):
    random = np.random.default_rng(seed)
    low, high = np.array([15.0, 0.1, -30.0, 0.1]), np.array([27.0, 0.9, 40.0, 0.99])
    return random.uniform(low, high, (count, 4))


@pytest.mark.parametrize("id", PRESETS)
def test_a_sweep_judges_as_one_state_at_a_time(id):
    assembly, cases = building.preset(id), airs_at_random(300, PRESETS.index(id))
    columns = dict(
        zip(
            ("indoor_temperature", "indoor_relative_humidity", "outdoor_temperature", "outdoor_relative_humidity"),
            cases.T,
            strict=True,
        )
    )
    swept = verdict.states_of_sweep(steady.sweep(assembly, Air(21.0, 0.4), Air(0.0, 0.8), **columns))
    alone = [verdict.of_steady(steady.profile(assembly, Air(a, b), Air(c, d))).state for a, b, c, d in cases]
    assert swept.tolist() == alone
    assert set(alone) == set(STATES)


def cut(assembly, name, shares):
    """The assembly with one layer drawn in pieces."""
    place = assembly.index(name)
    layer = assembly.layers[place]
    pieces = tuple(
        dataclasses.replace(layer, thickness=layer.thickness * share, name=f"{name} {k}" if k else name)
        for k, share in enumerate(shares)
    )
    return dataclasses.replace(assembly, layers=(*assembly.layers[:place], *pieces, *assembly.layers[place + 1 :]))


#: Two halves, and three unlike parts.
CUTS = ((0.5, 0.5), (0.2, 0.5, 0.3))


def whole(layer):
    """Whether a layer is the same in pieces: a material whose permeability no humidity changes.

    One that answers to humidity takes the mean of its two faces, so that its
    pieces are finer physics, not another drawing.
    """
    return isinstance(layer.substance, Material) and isinstance(layer.substance.vapor_permeability, int | float)


CUTTABLE = [(id, layer.name) for id in PRESETS for layer in building.preset(id).layers if whole(layer)]


@pytest.mark.parametrize(("id", "name"), CUTTABLE)
def test_a_steady_state_is_judged_the_same_with_a_layer_in_pieces(id, name):
    assembly = building.preset(id)
    for t_in, rh_in, t_out, rh_out in airs_at_random(25, 5):
        airs = Air(t_in, rh_in), Air(t_out, rh_out)
        one = verdict.of_steady(steady.profile(assembly, *airs))
        for shares in CUTS:
            two = verdict.of_steady(steady.profile(cut(assembly, name, shares), *airs))
            assert two.state == one.state
            if one.worst.what == two.worst.what != "steady-gain":  # a plane may lie in another piece
                assert two.worst.value == pytest.approx(one.worst.value, rel=1e-6)


@pytest.mark.parametrize("id", PRESETS)
def test_more_humidity_in_the_room_is_never_better_in_winter(id):
    values = np.linspace(0.05, 0.95, 60)
    for outdoors in (-20.0, -7.0, 5.0, 12.0):
        assembly = building.preset(id)
        along = limits.dry_range(assembly, Air(21.0, 0.4), Air(outdoors, 0.8), "indoor_relative_humidity", values)
        assert rises(along.states), (outdoors, along.states)


def osb_vault(outdoors, rh=0.4):
    return steady.profile(building.preset("vented-vault-osb"), Air(21.0, rh), Air(outdoors, 0.8))


def test_each_plane_is_told_with_the_rate_that_is_its_own():
    assembly = building.preset("vented-vault").replace("inner membrane", FixedMembrane(to_si(100.0, "perm")))
    state = steady.profile(assembly, Air(21.0, 0.7), Air(-29.0, 0.8))
    judged = verdict.of_steady(state)
    gains = [each for each in judged.findings if each.what == "steady-gain"]
    assert len(gains) == len(state.wet_planes) > 2
    assert sorted(each.value for each in gains) == sorted(plane.rate for plane in state.wet_planes)
    assert sum(each.value for each in gains) == pytest.approx(state.gain)
    assert judged.worst.value == max(plane.rate for plane in state.wet_planes)
    assert {each.place.side for each in gains} == {"", "outer"}  # inside the fill, and at the face behind it
    assert all(each.frost == (plane.temperature < 0) for each, plane in zip(gains, state.wet_planes, strict=False))


def test_the_state_hangs_on_all_planes_together():
    """Many planes that each gather less than counts are wet all the same when their sum counts."""
    state = osb_vault(-7.0)
    limit = ROWS["steady-gain"].damage
    share = dataclasses.replace(state.wet_planes[0], rate=0.4 * limit)
    for count, judged in ((2, DAMP), (3, WET)):
        split = dataclasses.replace(state, wet_planes=(share,) * count)
        assert verdict.of_steady(split).state == judged


def test_wood_in_a_state_that_never_ends_is_damp_at_most():
    for rh in (0.9, 0.99, 1.0):
        panel = Assembly("panel", [Layer(OSB, 0.011, "panel")], 0.13, 0.04)
        judged = verdict.of_steady(steady.profile(panel, Air(20.0, rh), Air(20.0, rh)))
        assert judged.finding("wood-moisture").state in (DRY, DAMP)
        assert judged.finding("wood-moisture").value < ROWS["wood-moisture"].damage
    assert verdict.of_steady(osb_vault(2.2)).finding("wood-moisture").state == DAMP


def test_between_dry_and_wet_lies_damp_wood_and_then_mold():
    """The OSB vault as it gets milder: water, wood above 20 %, a face where mold can grow, neither."""
    states = [verdict.of_steady(osb_vault(t)) for t in (-7.0, 2.2, 4.4, 10.0)]
    assert [each.state for each in states] == [WET, DAMP, DAMP, DRY]
    assert [each.worst.what for each in states[:3]] == ["steady-gain", "wood-moisture", "face-humidity"]
    assert states[1].worst.place.layer == "outer layer"
    assert states[0].left_out == ("time", "storage", "leak", "sun", "rain")


def test_too_cold_for_mold_is_no_finding_against_it():
    """90 % behind an open sheet in frost is dry; as humid and a little warmer it is damp."""
    assembly = building.preset("vented-vault").replace("inner membrane", FixedMembrane(to_si(50.0, "perm")))
    cold = verdict.of_steady(steady.profile(assembly, Air(21.0, 0.4), Air(-7.0, 0.8)))
    frozen = cold.finding("face-humidity")
    assert (cold.state, frozen.state, math.isinf(frozen.criterion.caution)) == (DRY, DRY, True)
    assert frozen.value > 0.88
    osb = verdict.of_steady(osb_vault(4.4)).finding("face-humidity")  # 91 % at 5 degC
    assert (osb.state, osb.place.layer) == (DAMP, "insulation")
    assert abs(osb.value - frozen.value) < 0.01
    assert osb.criterion.caution == pytest.approx(critical_humidity(4.9, 0.85), abs=0.01)


def test_a_face_rises_with_the_vapor_that_reaches_it():
    for substance in (None, OSB, building.material("eps"), FixedMembrane(1e-10)):
        for temperature in (-5.0, 3.0, 15.0, 25.0):
            most = 1000.0
            judged = [verdict.of_face(temperature, most * part, most, substance) for part in np.linspace(0.1, 1.2, 56)]
            assert rises(each.state for each in judged)
            assert [each.state == WET for each in judged] == [part >= 1.0 for part in np.linspace(0.1, 1.2, 56)]
            assert judged[-1].worst.frost == (temperature < 0.0)
    assert verdict.of_face(15.0, 950.0, 1000.0, OSB).finding("wood-moisture").state == DAMP
    assert verdict.of_face(15.0, 950.0, 1000.0).finding("wood-moisture") is None


@pytest.mark.parametrize(
    ("method", "id"),
    [
        ("winter", "winter-water"),
        ("night", "night-frost"),
        ("night", "night-melt"),
        ("vent", "vent-share"),
        ("window", "window-edge"),
        ("window", "window-glass"),
    ],
)
def test_an_amount_rises_with_its_value(method, id):
    top = ROWS[id].damage if math.isfinite(ROWS[id].damage) else 2.0 * ROWS[id].caution
    judged = [verdict.of_amount(method, id, value) for value in np.linspace(0.0, 2.0 * top, 50)]
    assert rises(each.state for each in judged)
    assert judged[0].state == DRY
    assert judged[-1].state == (WET if math.isfinite(ROWS[id].damage) else DAMP)
    assert {each.method for each in judged} == {method}


# --- surfaces ----------------------------------------------------------------------------------------------------


def test_mold_needs_less_humidity_the_warmer_it_is():
    warmth = np.linspace(-20.0, 50.0, 300)
    for name in ("very sensitive", "resistant"):
        lowest = sensitivity(name).lowest_humidity
        level = critical_humidity(warmth, lowest)
        assert (np.diff(level) < 5e-4).all()  # the published cubic has a bump of 0.04 % near 20 degC
        assert (level[warmth > 20.0] == lowest).all()
    assert critical_humidity(0.0) == 1.0
    assert critical_humidity(-1.0) > 1.0


def test_every_kind_of_material_has_a_class_or_none():
    materials = [each for things in building.by_category().values() for each in things if isinstance(each, Material)]
    kinds = {each.category: class_of_surface(each) for each in materials}
    assert kinds["wood panels and sheathing"] == "sensitive"
    assert kinds["fibrous insulation"] == "medium resistant"
    assert kinds["roof coverings and cladding"] is None
    assert class_of_surface(FixedMembrane(1e-10)) is None


# --- twelve months ------------------------------------------------------------------------------------------------


def twelve(assembly, place="cold", rh=0.5):
    return monthly.balance(assembly, weather.demo_climate(place), Air(21.0, rh))


@pytest.mark.parametrize(("id", "name"), CUTTABLE)
def test_months_are_judged_the_same_with_a_layer_in_pieces(id, name):
    assembly = building.preset(id)
    for place, rh in (("cold", 0.6), ("hot-humid", 0.5)):
        one = verdict.of_months(twelve(assembly, place, rh))
        for shares in CUTS:
            two = verdict.of_months(twelve(cut(assembly, name, shares), place, rh))
            assert (two.state, two.dries, two.worst.what) == (one.state, one.dries, one.worst.what)
            assert two.worst.value == pytest.approx(one.worst.value, rel=0.01)


def test_how_a_year_of_months_ends_is_whether_it_dries():
    endings = {"no wetting": WITHIN, "dries": WITHIN, "holds": LATER, "grows": NEVER}
    seen = set()
    for id, (place, rh), inner in itertools.product(
        ("vented-vault", "vented-vault-osb", "vented-vault-closed"), (("cold", 0.3), ("cold", 0.6)), (0.05, 1.0, 50.0)
    ):
        months = twelve(building.preset(id).replace("inner membrane", FixedMembrane(to_si(inner, "perm"))), place, rh)
        judged = verdict.of_months(months)
        assert judged.dries == endings[months.ending]
        assert (judged.finding("growth") is not None) == (months.growth >= ROWS["growth"].caution)
        if months.ending == "grows" and months.growth >= ROWS["growth"].damage:
            assert judged.state == WET
        seen.add(months.ending)
    assert {"no wetting", "dries"} <= seen
    assert seen & {"holds", "grows"}


def test_what_the_year_holds_is_told_before_what_a_month_would_bring():
    """With a more open inner membrane the same thing is told of more water, in more months, never of less."""
    cold, before = weather.demo_climate("cold"), (0.0, 0.0)
    kinds = []
    for perm in (1.0, 3.0, 5.0, 9.0, 10.0, 20.0, 100.0):
        roof = building.preset("vented-vault-osb").replace("inner membrane", FixedMembrane(to_si(perm, "perm")))
        judged = verdict.of_months(monthly.balance(roof, cold, Air(21.0, 0.4)))
        found, said = judged.worst, words.sentence(judged, "us")
        assert (judged.state, found.what) == (DAMP, "wood-moisture")
        kinds.append(found.if_it_lasted)
        month = words.month(found.when)
        if found.if_it_lasted:
            assert f"would settle at {found.value:.0f} % moisture content if {month} lasted; " in said
            assert f"{found.lasted:.0f} of the 12 months would take it over 20 %" in said
        else:
            assert f"reaches {found.value:.0f} % moisture content in {month}, over 20 % in " in said
            assert (found.value, found.lasted) >= before
            before = found.value, found.lasted
    assert kinds == sorted(kinds, reverse=True)
    assert len(set(kinds)) == 2


def test_a_humid_face_says_why_it_counts_or_not():
    cold = words.told(_face(-5.0, 0.98), "steady")
    warm, dry = words.told(_face(20.0, 0.98), "steady"), words.told(_face(20.0, 0.6), "steady")
    assert cold.endswith("humidity, in the deck, too cold there for mold")
    assert warm.endswith("humidity, in the deck, and mold can grow")
    assert dry.endswith("humidity, in the deck, below the 80 % at which mold can start there")


def _face(temperature, humidity):
    from dryward.verdict.judgment import _face_humidity

    return _face_humidity(Place("deck"), temperature, humidity)


def test_an_end_that_another_finding_makes_wet_is_told_of_the_whole():
    water = ROWS["free-water"]
    worst = Finding("free-water", Place("deck"), 11.4, water, WET)
    judged = of_findings("year", [worst])
    one = judged.deciding(verdict.Decides("", "leak", 0.0, 11.4, (WET, WET)))
    assert words.decides(one, "si").endswith("is 0 g/m² to 11.4 kg/m², and the whole wet at both ends")
    other = judged.deciding(verdict.Decides("", "leak", 0.6, 11.4, (WET, WET)))
    assert words.decides(other, "si").endswith("is 600 g/m² to 11.4 kg/m², wet at both ends")
    flat = judged.deciding(verdict.Decides("", "leak", 0.0, 0.0, (DRY, WET)))
    assert words.decides(flat, "si").endswith("stays 0 g/m², but by another check the whole goes from dry to wet")


def test_water_held_at_wood_is_moisture_and_elsewhere_it_is_free():
    at_wood = verdict.of_months(
        twelve(building.preset("vented-vault-osb").replace("inner membrane", FixedMembrane(2e-10)))
    )
    bare = verdict.of_months(
        twelve(building.preset("vented-vault-closed").replace("inner membrane", FixedMembrane(2e-10)))
    )
    assert at_wood.finding("wood-moisture").place.layer == "outer layer"
    assert at_wood.finding("wood-moisture").lasted >= 1
    assert 1 <= at_wood.finding("wood-moisture").when <= 12
    water = bare.finding("free-water")
    assert (water.place.layer, water.place.beside) == ("insulation", "outer layer")
    assert "time" not in bare.left_out
    full = 100.0 * OSB.water_content(1.0) / OSB.density
    assert at_wood.finding("wood-moisture").value <= full


# --- an hourly year -------------------------------------------------------------------------------------------------

COLD = weather.demo("cold")
WOOL = Material("wool", "wool", 30.0, 840.0, 0.04, 1.6e-10)


def wall(inner, outer, thick=0.03):
    """Wool and a wooden board between two sheets."""
    layers = (
        Layer(FixedMembrane(inner), name="in"),
        Layer(WOOL, 0.1, "fill"),
        Layer(OSB, thick, "board"),
        Layer(FixedMembrane(outer), name="out"),
    )
    return Assembly("wall", layers)


def year(assembly, room=Air(20.0, 0.4), outdoors=COLD, **options):
    return verdict.of_year(hourly.simulate(assembly, outdoors, room, **options))


@pytest.mark.parametrize(
    ("id", "rh", "leak"),
    [("vented-vault-closed", 0.45, 2e-4), ("vented-vault-osb", 0.45, 2e-4), ("vented-vault-fiberboard", 0.4, None)],
)
def test_a_year_is_judged_the_same_with_a_layer_in_pieces(id, rh, leak):
    assembly = building.preset(id)
    options = {"years": 2, "surface": hourly.Surface(), "leak": leak and hourly.AirFlow(leak, long_share=0.3)}
    one = year(assembly, Air(21.0, rh), **options)
    for name in [layer.name for layer in assembly.layers if whole(layer)]:
        for shares in CUTS:
            two = year(cut(assembly, name, shares), Air(21.0, rh), **options)
            assert (two.state, two.dries, two.worst.what) == (one.state, one.dries, one.worst.what), name
            assert two.worst.value == pytest.approx(one.worst.value, rel=0.03), name
            assert two.worst.place == one.worst.place, name


@pytest.mark.parametrize("hours", [1, 24, 8759])
def test_a_run_shorter_than_a_year_says_nothing_of_drying(hours):
    judged = year(wall(2e-11, 1e-14), Air(20.0, 0.6), Air(0.0, 0.9), hours=hours)
    assert judged.state in STATES
    assert (judged.dries, judged.toward, judged.repeats, judged.years) == (None, None, False, 1)
    assert judged.finding("growth") is judged.finding("carry-over") is None
    assert judged.finding("wood-moisture").lasted <= hours
    assert "dry" not in words.does_it_dry(judged)


def test_a_run_that_grows_is_wet_from_the_second_year_on():
    """A board that takes in and cannot give off: whatever its moisture is by then."""
    case = wall(2e-11, 1e-14), Air(20.0, 0.6), Air(0.0, 0.9)
    one, two, three = (year(*case, years=count) for count in (1, 2, 3))
    assert (one.dries, one.finding("growth")) == (None, None)
    for judged in (two, three):
        assert (judged.state, judged.dries, judged.worst.what) == (WET, NEVER, "growth")
        assert judged.finding("wood-moisture").state != WET
        assert not judged.repeats
        assert re.fullmatch(r"Wet: each year adds \d+ g/m²\.", words.sentence(judged, "si"))
    assert [each.years for each in (one, two, three)] == [1, 2, 3]


@pytest.mark.parametrize(
    ("inner", "outer", "toward"), [(1e-14, 5e-12, "outward"), (5e-12, 1e-14, "inward"), (5e-11, 5e-11, "both ways")]
)
def test_a_run_that_dries_down_says_whither(inner, outer, toward):
    board = {"board": 140.0}
    judged = year(wall(inner, outer), Air(20.0, 0.3), Air(20.0, 0.3), years=1, initial=board)
    assert (judged.dries, judged.toward) == (WITHIN, toward)
    assert judged.start is None
    assert judged.finding("wood-moisture").when < 24 * 31
    assert words.does_it_dry(judged).startswith("what gathers leaves within the year")


def test_what_still_leaves_and_does_not_fade_is_damp():
    case = wall(1e-14, 5e-12, 0.03), Air(20.0, 0.4), Air(5.0, 0.6)
    for count in (2, 3):
        judged = year(*case, years=count, initial={"board": 100.0})
        carried = judged.finding("carry-over")
        assert (carried.state, judged.dries) == (DAMP, LATER)
        assert carried.value >= ROWS["carry-over"].caution
        assert not judged.repeats


@pytest.mark.parametrize("id", ["unvented-vault-foam-above-deck", "vented-vault-closed"])
@pytest.mark.parametrize("start", [0.3, 0.8])
def test_the_start_settles_and_is_no_growth(id, start):
    """A roof that starts dry takes in what it will hold, one that starts damp gives it off: neither decides."""
    options = {"weather": weather.demo("cold"), "indoor": Air(21.0, 0.4), "initial": Air(20.0, start)}
    settled = verdict.of_year(hourly.simulate(building.preset(id), **options, years=6))
    for count in (2, 3, 4):
        judged = verdict.of_year(hourly.simulate(building.preset(id), **options, years=count))
        assert judged.finding("growth") is judged.finding("carry-over") is None, count
        assert judged.dries != NEVER
        if count > 2:
            assert judged.state == settled.state, count


def test_wet_all_year_and_every_year_does_not_dry():
    judged = year(wall(5e-10, 5e-10), Air(20.0, 0.98), Air(20.0, 0.98), years=5, until_it_repeats=True)
    found = judged.finding("wood-moisture")
    assert (judged.repeats, found.lasted, judged.dries) == (True, 8760.0, NEVER)
    assert words.does_it_dry(judged) == "it stays so all year"


def test_the_last_bit_of_a_sum_decides_nothing():
    """A face that drips holds for weeks just what it is judged by: which hours count hangs not on how it is added."""
    run = hourly.simulate(building.preset("vented-vault-closed"), weather.demo("very-cold"), Air(25.0, 0.6), hours=2000)
    limit = ROWS["free-water"].caution
    at_the_limit = (np.abs(run.free_water - limit) < 1e-12 * limit).sum()
    assert at_the_limit > 10, "a face of this roof drips"
    judged = [
        verdict.of_year(dataclasses.replace(run, free_water=np.nextafter(run.free_water, towards)))
        for towards in (0.0, np.inf)
    ]
    for less, more in zip(judged[0].findings, judged[1].findings, strict=True):
        assert (less.place, less.state, less.lasted) == (more.place, more.state, more.lasted)


@pytest.mark.parametrize("hours", [5000, 12000, 17520, 20000])
def test_what_ran_off_is_that_of_the_judged_hours(hours):
    run = hourly.simulate(
        building.preset("vented-vault-closed"), weather.demo("very-cold"), Air(25.0, 0.6), hours=hours,
        leak=hourly.AirFlow(2e-4, long_share=1.0), surface=hourly.Surface(),
    )  # fmt: skip
    off = 3600.0 * run.runoff[-8760:].sum()
    assert off > 1.0
    assert sum(each.ran_off for each in verdict.of_year(run).findings) == pytest.approx(off, rel=0.01)


@pytest.mark.parametrize("other", [None, 3.0, "roof", wall(1e-11, 1e-11), Air(20.0, 0.4)], ids=str)
@pytest.mark.parametrize("judge", [verdict.of_year, verdict.of_months, verdict.of_steady])
def test_what_is_no_result_gets_a_sentence(judge, other):
    with pytest.raises(OutOfRange, match=r"^The \w+ of \w+\.\w+ must be given, not "):
        judge(other)


GAP = Layer(building.AirSpace(0.18), 0.02, "gap")
WRAP = Layer(building.FixedMembrane(1e-10), name="wrap")


VENTED = dataclasses.replace(GAP, substance=building.AirSpace(0.18, vented=True))
BOARD = Layer(building.material("osb"), 0.012, "board")


@pytest.mark.parametrize(
    "layers",
    [
        [BOARD, WRAP, GAP], [GAP, WRAP, BOARD], [GAP], [WRAP, GAP, WRAP], [BOARD, GAP],
        [BOARD, WRAP, VENTED], [WRAP, VENTED, WRAP], [BOARD, VENTED],
    ],
)  # fmt: skip
def test_an_air_space_may_lie_anywhere(layers):
    """The outermost, the innermost, alone, between two sheets."""
    body = Assembly("body", layers)
    judged = verdict.of_year(hourly.simulate(body, weather.demo("cold"), Air(21.0, 0.4), hours=200))
    assert judged.state in STATES


def test_a_year_that_repeats_says_so():
    judged = year(wall(5e-10, 5e-10), Air(20.0, 0.4), Air(20.0, 0.4), years=5, until_it_repeats=True)
    assert (judged.state, judged.repeats, judged.dries, judged.start) == (DRY, True, WITHIN, 0.8)
    assert 2 <= judged.years <= 5


def test_what_was_not_counted_is_told():
    framed = dataclasses.replace(building.preset("wood-frame-wall"))
    plain = year(wall(5e-11, 5e-11), hours=24)
    leaking = year(wall(5e-11, 5e-11), hours=24, leak=hourly.AirFlow(1e-4))
    assert plain.left_out == ("rain", "leak")
    assert leaking.left_out == ("rain",)
    assert ("framing" in year(framed, hours=24).left_out) == bool(framed.framing)
    assert words.left_out(plain) == "rain and air leaks"


def test_siding_is_held_to_its_own_limit_and_its_dew_is_no_finding():
    judged = year(building.preset("wood-frame-wall"), Air(21.0, 0.4), years=1, surface=hourly.Surface())
    siding = judged.finding("cladding-moisture")
    assert siding.place.layer == "siding"
    assert siding.state != WET
    assert all(each.place.layer != "siding" for each in judged.findings if each.what in ("free-water", "mold-index"))


def test_water_that_ran_off_counts_and_is_told():
    judged = year(
        building.preset("vented-vault-closed"), Air(21.0, 0.45), years=1, leak=hourly.AirFlow(2e-4, long_share=0.3)
    )
    water = judged.finding("free-water")
    assert judged.state == water.state == WET
    assert 0.0 < water.ran_off < water.value
    assert f"and {words.amount(water.ran_off, 'kg/m2', 'si')} run off" in words.sentence(judged, "si")
    assert water.frost
    assert "of frost gather between insulation and outer layer" in words.how_wet(judged, "si")


# --- words ------------------------------------------------------------------------------------------------------------

PLACES = {
    Place(): "in the whole assembly",
    Place("deck"): "in the deck",
    Place("deck", "inner"): "in the deck",
    Place("deck", "inner", "insulation"): "between insulation and deck",
    Place("deck", "outer", "covering"): "between deck and covering",
    Place("deck", "inner", "room air"): "at the inner face of the deck",
    Place("deck", "outer", "outdoor air"): "at the outer face of the deck",
}


@pytest.mark.parametrize(("place", "said"), PLACES.items())
def test_a_place_in_words(place, said):
    assert words.where(place) == said


METHODS = ("year", "months", "steady", "face", "winter", "night", "vent", "window")
#: What a number of a unit looks like to each reader.
SHOWN = {
    ("kg/m2", "us"): r"[\d.]+ gr/ft²",
    ("kg/m2", "si"): r"[\d.]+ g/m²",
    ("kg/m2", None): r"[\d.]+ gr/ft² \([\d.]+ g/m²\)",
    ("kg/(s m2)", "us"): r"[\d.e-]+ gr/ft² day",
    ("kg/(s m2)", "si"): r"[\d.e-]+ g/m² day",
    ("kg/(s m2)", None): r"[\d.e-]+ gr/ft² day \([\d.e-]+ g/m² day\)",
    "% MC": r"\d+ % moisture content",
    "of 6": r"[\d.]+ of 6",
    "": r"\d+ %",
}


@pytest.mark.parametrize("system", ["us", "si", None])
@pytest.mark.parametrize("id", ROWS)
def test_every_kind_of_finding_has_words_in_both_unit_systems(id, system):
    """With every place and every method, dry, damp and wet: one sentence, one state, its number with its unit."""
    row = ROWS[id]
    top = row.damage if math.isfinite(row.damage) else 1.5 * row.caution
    number = re.compile(SHOWN.get((row.unit, system)) or SHOWN[row.unit])
    for place, method, value in itertools.product(PLACES, METHODS, (0.5 * row.caution, row.caution, 1.2 * top)):
        if "moisture" in id and not place.layer:
            continue  # moisture is always of a layer
        lasted = {"year": 30 * 24.0, "months": 2.0}.get(method)
        when = {"year": 24 * 31, "months": 2}.get(method)
        one = Finding(id, place, value, row, row.state(value), lasted, when, ran_off=0.1 * value)
        judged = of_findings(method, [one], dries=WITHIN, toward="outward", left_out=("rain", "leak"), years=1)
        said = words.sentence(judged, system)
        assert said.startswith(f"{judged.state.capitalize()}: ")
        assert said.endswith(".")
        assert number.search(said), said
        assert not re.search(r"[{}]|None|nan|\binf\b|  |\.\.", said), said
        assert not FORBIDDEN.search(said)
        body = said.removeprefix(f"{judged.state.capitalize()}: ")
        assert not re.search(r"\b(damp|wet)\b", body), body
        # A place stands in the words of all that have one.
        if id in ("free-water", "steady-gain", "face-humidity"):
            assert PLACES[place] in said
        elif id == "mold-index":  # which of the two faces of a gap it grows on
            assert (f"at the {place.side} face of the {place.layer}" if place.side else PLACES[place]) in said
        elif "moisture" in id:
            assert f"the {place.layer}" in said
        if when is not None and id in ("wood-moisture", "cladding-moisture", "free-water"):
            assert " in February" in said


def test_frost_and_soaked_wood_are_called_so():
    frozen = of_findings("year", [found("free-water", 0.3, lasted=48.0, when=0, frost=True)])
    assert words.sentence(frozen, "si") == (
        "Damp: up to 300 g/m² of frost gather in the deck in January, over the caution level for 2 days."
    )
    soaked = of_findings("year", [found("wood-moisture", 78.0, lasted=8760.0, when=100, full=True)])
    assert words.sentence(soaked) == (
        "Wet: the deck is soaked: it holds all it can, 78 % moisture content, over 20 % all year."
    )


def test_soaked_wood_is_told_by_its_water_and_not_by_a_moisture_that_none_has():
    """By hand: 8 kg/m2 on 100 m2 are 800 L, on 92.9 m2 196 gallons of 3.785 L."""
    soaked = of_findings("year", [found("wood-moisture", 122.4, lasted=8760.0, when=100, unbound=8.0)])
    water, place = "of water or frost in its pores, on", "Wet: the deck is soaked, most in January: it holds"
    said = {system: words.sentence(soaked, system).replace("\N{NO-BREAK SPACE}", " ") for system in ("us", "si", None)}
    assert said["us"] == f"{place} 200 gallons {water} 1000 ft², over 20 % all year."
    assert said["si"] == f"{place} 800 L {water} 100 m², over 20 % all year."
    assert "200 gallons" in said[None]
    assert "800 L" in said[None]
    assert words.shown(soaked.worst, "us") == words.reading(122.4) == "over 45 %, soaked"
    damp = of_findings("year", [found("wood-moisture", 40.0, lasted=8760.0, when=100, unbound=0.7)])
    assert "peaks at 40 % moisture content" in words.sentence(damp, "us")


@pytest.mark.parametrize(
    ("method", "lasted", "said"),
    [
        ("year", None, ""),
        ("year", 0.0, "never over 20 %"),
        ("year", 5.0, "over 20 % for less than a day"),
        ("year", 24.0, "over 20 % for 1 day"),
        ("year", 60.0 * 24, "over 20 % for 60 days"),
        ("year", 8760.0, "over 20 % all year"),
        ("months", 0.0, "over 20 % in no month"),
        ("months", 3.0, "over 20 % in 3 of 12 months"),
    ],
)
def test_how_long_in_words(method, lasted, said):
    assert words.how_long(of_findings(method, [found("wood-moisture", 21.0, lasted=lasted)])) == said


@pytest.mark.parametrize(
    ("dries", "toward", "said"),
    [
        (None, None, ""),
        (WITHIN, None, "what gathers leaves within the year"),
        (WITHIN, "inward", "what gathers leaves within the year, mostly inward"),
        (LATER, "both ways", "it needs more than a year to give its water back, both ways"),
        (NEVER, "outward", "it never gives all of it back: each year ends wetter than it began"),
    ],
)
def test_whether_it_dries_in_words(dries, toward, said):
    judged = of_findings("year", [found("wood-moisture", 21.0)], dries=dries, toward=toward)
    assert words.does_it_dry(judged) == said


def test_what_decides_in_words():
    base = of_findings("year", [found("wood-moisture", 22.0)])
    assert words.decides(base) == ""
    for what, name in (
        ("conductivity", "heat conduction of the deck"),
        ("permeance", "permeance of the deck"),
        ("sorption", "water the deck holds"),
        ("leak", "size of the air leak"),
        ("long share", "part of the air leak that seeps through the insulation"),
    ):
        turns = base.deciding(verdict.Decides("deck", what, 18.0, 31.0, (DRY, WET)))
        span = "the moisture of the deck is 18 % to 31 %"
        assert words.decides(turns, "us") == f"the {name}: within its range {span}, dry to wet"
        same = base.deciding(verdict.Decides("deck", what, 21.0, 23.0, (DAMP, DAMP)))
        assert words.decides(same).endswith(", damp at both ends")


def test_months_by_name():
    assert [words.month_of(hour) for hour in (0, 743, 744, 8759)] == ["January", "January", "February", "December"]
    assert {words.month_of(hour) for hour in range(0, 8760, 24)} == {words.month(number) for number in range(1, 13)}


def test_what_is_left_out_is_a_list():
    every = verdict.of_steady(osb_vault(-7.0))
    assert words.left_out(every) == "time, storage in the layers, air leaks, sun and rain"
    assert words.left_out(of_findings("year", [])) == ""


def test_no_text_of_this_room_promises_anything():
    room = Path(verdict.__file__).parent
    texts = [path.read_text("utf-8") for path in (*room.rglob("*.py"), *room.rglob("*.csv"))]
    assert len(texts) >= 5
    assert not any(FORBIDDEN.search(text) for text in texts)


def test_saturated_and_too_cold_for_mold_is_dry_by_both_rules():
    """No plane gathers and a face stands at just 100 %: neither rule finds mold in frost."""
    from dryward.verdict.judgment import _face_humidity

    for humidity in (0.97, 1.0):
        assert _face_humidity(Place("deck"), -12.0, humidity).state == DRY
        assert _face_humidity(Place("deck"), 20.0, humidity).state == DAMP


def test_a_run_that_is_no_whole_number_of_years_is_judged_by_its_last_year():
    vault, room, year = building.preset("vented-vault-osb"), Air(21.0, 0.45), weather.demo("very-cold")
    hours = 8760 + 3000
    run = hourly.simulate(vault, year, room, hours=hours)
    judged = verdict.of_year(run)
    found = judged.finding("wood-moisture")
    series = run.layer(found.place.layer).moisture_content
    peak = hours - 8760 + int(series[-8760:].argmax())
    assert found.when == peak % 8760
    change = run.water[-1] - run.water[hours - 8760 - 1]
    assert (judged.repeats, judged.dries) == (abs(change) < 0.02, "within the year" if change < 0.02 else None)


def test_what_still_leaves_in_the_second_year_is_no_failing():
    vault, room, year = building.preset("vented-vault-osb"), Air(21.0, 0.3), weather.demo("cold")
    run = hourly.simulate(vault, year, room, years=2, initial=Air(20.0, 0.99))
    judged = verdict.of_year(run)
    assert run.water[-1] < run.water[8759] - 0.02, "the start is still leaving"
    assert judged.dries == "within the year"
    assert "more than a year" not in words.sentence(judged)
