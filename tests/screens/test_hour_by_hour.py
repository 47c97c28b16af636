"""Lesson 14: the page against the hourly run, what it says of soaked wood, and its known numbers."""

import pytest
from lesson_page import check_replies, open_page, places

from dryward import building, units, weather
from dryward.physics import hourly
from dryward.physics.airleak import Leak
from dryward.physics.ventspace import VentSpace
from dryward.weather import Air

ID = "hour-by-hour"
HOURS = 8760


def run(at):
    """Two years of the roof on the sliders, put together here again."""
    roof = building.preset("vented-vault-osb").replace("inner membrane", building.membrane("teaching-variable"))
    gap = roof.layer("vent space").thickness
    house = Leak.from_blower_door(
        at.ACH50 * 3600, units.to_si(20_000, "ft3"), 0.2, area=units.to_si(600, "ft2")
    )  # fmt: skip
    vent = VentSpace(gap, units.to_si(16, "ft"), roof.slope, 0.01, 0.01)
    return hourly.simulate(
        roof, weather.demo(at.Place), Air(units.to_si(70, "degF"), at.RH_in), years=2, initial=Air(20.0, 0.65),
        vent=vent, leak=house, surface=hourly.Surface(azimuth=0.0),
    )  # fmt: skip


def test_every_place_is_the_hourly_run(tmp_path):
    page = open_page(ID, tmp_path)
    page.filling.drop()
    seen = {}
    for at in places(page):
        key = at.Place, at.RH_in, at.ACH50
        seen.setdefault(key, run(at).layer("outer layer").moisture_content)
        moisture, last = seen[key], seen[key][-HOURS:]
        assert page.readouts["peak"] == pytest.approx(last.max())
        assert page.readouts["change"] == pytest.approx(last[-1] - last[0])
        assert page.readouts["over"] == pytest.approx((last > 20).sum() / 24)
        assert moisture.min() <= page.readouts["today"] <= moisture.max()
        assert page.readouts["balance"] < 1e-3  # water in less water out is what is stored
        wetter = last[-1] - last[0] > 1.0
        assert ("does not come home" in page.sentence) == wetter
        # It comes home only where the strip says so too: no wetter, and never over the caution line.
        home = not wetter and last.max() < 20
        notes = {each.name: each.note for each in page.readout_list}
        assert ("it comes home" in page.sentence) == (notes["change"] == "it comes home") == home
        if not wetter and 20 <= last.max() < page.state.full:
            days = round((last > 20).sum() / 24)
            assert f"over 20 % for {days} days a year" in page.sentence
            assert ("too wet for too long" in page.sentence) == (days > 30)
            assert notes["change"] == "dries by summer"
        if last.max() < page.state.full:
            assert f"{last.max():.0f} %" in page.sentence
        page.filling.drop()


def test_the_wettest_month_is_not_the_coldest(tmp_path):
    page = open_page(ID, tmp_path)
    assert page.sentence.startswith("The sheathing is wettest in March")
    assert "Wood binds about 28 %" in page.sentence


def test_wet_for_five_months_is_not_called_home(tmp_path):
    page = open_page(ID, tmp_path)
    assert "It dries each summer, but it is over 20 % for 156 days a year: too wet for too long." in page.sentence
    page.controls["ACH50"].value = 5
    assert page.sentence.endswith("Each summer it dries out, but every winter it is soaked.")
    assert {each.name: each.note for each in page.readout_list}["change"] == "dries by summer"
    page.filling.drop()


def test_soaked_wood_is_said_in_plain_words_and_drawn_as_full(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["RH_in"].put(70)
    page.controls["ACH50"].put(5)
    page.refresh()
    full = page.state.full
    assert full == pytest.approx(78.1, abs=0.1)  # 500 kg/m3 of water in 640 kg/m3 of dry board
    assert page.readouts["peak"] > full
    assert page.sentence.startswith("The pores of the sheathing fill up, 78 % of its dry weight, and the rest drips")
    assert "free water" in page.sentence
    shown = {each.name: each.shown("us")["value"] for each in page.readout_list}
    assert shown["peak"] == "over 78 %"
    assert shown["change"] == "stays full"  # in the second year it never falls below full
    assert page.state.moisture[-HOURS:].min() > full
    assert page.views(page.state).planes[0][1].max() == pytest.approx(full)
    page.filling.drop()


def test_known_storage():
    """Seven sixteenths of OSB store 71 g/m2 for each 1 % of moisture."""
    layer = building.preset("vented-vault-osb").layer("outer layer")
    per_cent = layer.substance.density * layer.thickness * 0.01
    assert units.from_si(per_cent, "g/m2") == pytest.approx(71, rel=0.01)
    for gain, days in ((0.7, 812), (10.4, 55), (50, 11)):
        assert 8 * per_cent / units.to_si(gain, "g/m2/day") / 86400 == pytest.approx(days, rel=0.04)


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))
