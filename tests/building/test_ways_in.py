"""One way in for numbers: a writing means the same in Python, in a file, in a page's field and as an argument."""

import dataclasses
import gzip
import os
from argparse import Namespace
from importlib.resources import files

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryward import units, weather
from dryward.building import Assembly, FixedMembrane, Framing, Layer, Material, assembly, material, preset
from dryward.building.job import Job, Place, Room, Tightness, Vent, job_text, load_job, parse_job, save_job
from dryward.checks import BadFile, NotUnderstood, OutOfRange
from dryward.panels.desk import house
from dryward.panels.desk.draft import Draft
from dryward.physics.airleak import Leak
from dryward.physics.ventspace import VentSpace
from dryward.report.setting import setting

WRITINGS = [
    (name, text) for name, each in units.QUANTITIES.items() for text in (*each.examples, *each.more) if text != "7"
]
ROOF = preset("vented-vault")
BOARD = {"id": "own", "name": "own", "density": 640, "specific_heat": 1090, "conductivity": 0.16}

#: Entries of a job by quantity: the table and key of the file, the field of the page, and what takes it in Python.
ENTRIES = {
    "temperature": ("room", "temperature", Room),
    "relative humidity": ("room", "relative_humidity", Room),
    "volume": ("tightness", "volume", Tightness),
    "share": ("tightness", "share", Tightness),
    "length": ("tightness", "height", Tightness),
    "air flow": ("room", "fresh_air", Room),
    "mass flow": ("room", "production", Room),
    "air changes at 50 Pa": ("tightness", "ach50", Tightness),
    "vent opening": ("vent", "inlet_area", Vent),
    "azimuth": ("", "azimuth", None),
    "number": ("", "absorptance", None),
}
#: The same of a layer, an assembly and what it is made of: the text of the file and what takes it in Python.
OF_A_ROOF = {
    "thermal resistance": ("[[layer]]\nair_space = {{ thermal_resistance = '{}' }}", None),
    "permeance": (
        "[[layer]]\nmembrane = {{ permeance = '{}' }}",
        lambda text: FixedMembrane(text).level,
    ),
    "slope": ("slope = '{}'\n[[layer]]\nmaterial = 'spruce'\nthickness = 0.02", None),
    "density": (None, lambda text: Material("a", "a", text, 1090, 0.16, 5e-11).density),
    "specific heat": (None, lambda text: Material("a", "a", 640, text, 0.16, 5e-11).specific_heat),
    "conductivity": (None, lambda text: Material("a", "a", 640, 1090, text, 5e-11).conductivity),
    "permeability": (None, lambda text: Material("a", "a", 640, 1090, 0.16, text).vapor_permeability),
}
HEAD = 'format = "dryward assembly"\nversion = 2\n'


def outcome(way):
    """The number a way gives, or that it refused it for its own narrower range."""
    try:
        return way()
    except (OutOfRange, BadFile) as refused:
        if "it must be" not in str(refused):
            raise
        return None


@pytest.mark.parametrize(("name", "text"), [each for each in WRITINGS if each[0] in ENTRIES])
def test_a_job_takes_the_same_writings_everywhere(name, text):
    part, key, kind = ENTRIES[name]
    value = units.quantity(text, name)
    full = Job(ROOF, tightness=Tightness(3.0), vent=Vent())
    written = job_text(full).splitlines()
    heading = written.index(f"[{part}]") if part else 0
    place = next(k for k in range(heading, len(written)) if written[k].startswith(f"{key} = "))
    written[place] = f"{key} = {text!r}" if "'" not in text else f'{key} = """{text}"""'

    def held(job):
        return getattr(getattr(job, part) if part else job, key)

    def python():
        more = {} if kind is not Tightness or key == "ach50" else {"ach50": 3.0}
        return getattr(kind(**more, **{key: text}), key) if kind else getattr(Job(ROOF, **{key: text}), key)

    def file():
        return held(parse_job("\n".join(written)))

    def field(system):
        return held(house.changed(full, f"{part}.{key}".lstrip("."), text, system))

    ways = [outcome(python), outcome(file)]
    # In a field a text without a unit is meant in the unit shown there.
    bare = text.replace(",", ".").replace("/", "").replace(".", "").isdigit()
    if not bare or name in ("azimuth", "number", "air changes at 50 Pa"):
        ways += [outcome(lambda: field("us")), outcome(lambda: field("si"))]
    assert all(way is None for way in ways) or ways == [pytest.approx(value, rel=1e-12)] * len(ways)
    if name not in ("temperature", "length"):  # freezing rooms, and houses of no height, are refused
        assert ways[0] is not None


@pytest.mark.parametrize(("name", "text"), [each for each in WRITINGS if each[0] in OF_A_ROOF])
def test_a_roof_takes_the_same_writings_everywhere(name, text):
    inside, python = OF_A_ROOF[name]
    value = units.quantity(text, name)
    found = [] if python is None else [python(text)]
    if inside:

        def file():
            made = assembly.parse(HEAD + inside.format(text))
            first = made.layers[0]
            return made.slope if name == "slope" else getattr(first, name.replace(" ", "_"))

        found.append(outcome(file))
    if text.replace(" ", "").replace("-", "") == "R38":  # more than an air space can have
        assert found == [None]
    else:
        assert found == [pytest.approx(value)] * len(found)


def test_python_takes_the_writings_of_the_trade():
    fill = Layer("cellulose-dense", "12 in")
    assert fill.substance is material("cellulose-dense")
    assert fill.thickness == pytest.approx(0.3048)
    assert weather.Air("70 F", "40 %") == weather.Air(units.to_si(70, "degF"), 0.4)
    roof = Assembly("roof", [fill], "R-0.61", "R-0.17", "100 perm", slope="4/12")
    assert (roof.interior_film, roof.slope) == (units.to_si(0.61, "R"), pytest.approx(18.435, abs=1e-3))
    assert Framing("a tenth", material("spruce"), ("x",)).share == 0.1
    space = VentSpace("1-1/2 in", "16 ft", "4/12", "10 in2", "10 in2")
    assert (space.height, space.inlet_area) == (pytest.approx(0.0381), units.to_si(10, "in2"))
    known = Leak.from_blower_door(3.0, units.to_si(20000, "ft3"), 0.2, area=units.to_si(600, "ft2"))
    assert Leak.from_blower_door("3 ACH50", "20000 ft3", "a fifth", area="600 ft2") == known


def test_the_command_line_takes_the_same():
    from dryward.cli import check

    plain = dict.fromkeys(("place", "epw", "zone", "humidity", "room_temperature", "years", "design"))
    args = Namespace(**{**plain, "humidity": "40", "room_temperature": "70 degF"}, steady=False, spread=0)
    assert check.changed(Job(ROOF), args).room.temperature == pytest.approx(units.to_si(70, "degF"))
    args.room_temperature = "140 F"
    with pytest.raises(OutOfRange, match=r"Room temperature is 140 °F; it must be 50 to 95 °F\."):
        check.changed(Job(ROOF), args)


@given(st.floats(0.01, 2), st.sampled_from(["in", "ft", "mm", "cm", "m"]))
def test_what_is_written_in_any_unit_is_that_many_of_it(value, unit):
    assert units.quantity(f"{value!r} {unit}", "length") == pytest.approx(units.to_si(value, unit))
    assert units.quantity(value, "length") is value  # a number is SI already


@pytest.mark.parametrize(
    ("text", "name", "sentence"),
    [
        ("20,000 ft3", "volume", 'The volume "20,000 ft3" has a comma that may mean thousands or a decimal; write it '),
        ("12", "length", 'The length "12" has no unit; write it like "3/4 in" or "19 mm".'),
        ("4/0", "slope", 'The slope "4/0" is not understood; write it like "4/12" or "18 deg".'),
        ("a few", "share", 'The share "a few" is not understood; write it like "20 %" or "a fifth".'),
        ("5'6", "length", 'The length "5\'6" is not understood; write it like'),
        ("two", "share", 'The share "two" is not understood'),
    ],
)
def test_what_may_mean_two_things_is_refused(text, name, sentence):
    with pytest.raises(NotUnderstood) as caught:
        units.quantity(text, name)
    assert str(caught.value).startswith(sentence)


def test_a_thickness_without_a_unit_is_told_to_be_in_meters():
    with pytest.raises(BadFile, match=r"not 12; a number without a unit is in meters\.$"):
        assembly.parse(HEAD + "[[layer]]\nmaterial = 'spruce'\nthickness = 12")


def test_a_roof_is_named_on_its_page():
    job = house.changed(Job(ROOF), "name", "  Barn, north bay ", "us")
    assert job.assembly.name == "Barn, north bay"
    assert parse_job(job_text(job)).assembly.name == "Barn, north bay"
    with pytest.raises(OutOfRange, match=r"The roof needs a name\."):
        house.changed(job, "name", "  ", "us")


def weather_file(folder):
    """One of the kit's own weather files, in a folder."""
    packed = files("dryward.evidence").joinpath("data/typical-year-45N-8E.epw.gz").read_bytes()
    (folder / "town.epw").write_bytes(gzip.decompress(packed))
    return folder / "town.epw"


def test_a_saved_roof_and_its_weather_file_can_be_moved_together(tmp_path, monkeypatch):
    home, away = tmp_path / "home", tmp_path / "away"
    home.mkdir()
    away.mkdir()
    epw = weather_file(home)
    draft = Draft(Job(ROOF), folder=home)
    draft.change(dataclasses.replace(draft.job, place=house.file_place(draft.job.place, "town.epw")))
    draft.save("barn.toml")
    assert 'id = "town.epw"' in (home / "barn.toml").read_text()
    for name in ("barn.toml", "town.epw"):
        os.rename(home / name, away / name)
    monkeypatch.chdir(home)  # which holds neither
    job, _ = load_job(away / "barn.toml")
    assert setting(job).hours.temperature.size == 8760
    assert job.place.path == away / "town.epw"
    assert setting(parse_job(job_text(job))).hours is not None  # as it goes to another process
    assert not epw.exists()


def test_a_weather_file_elsewhere_is_named_whole(tmp_path):
    home, other = tmp_path / "home", tmp_path / "other"
    home.mkdir()
    other.mkdir()
    epw = weather_file(other)
    save_job(Job(ROOF, Place("file", str(epw))), home / "barn.toml")
    assert load_job(home / "barn.toml")[0].place.path == epw
