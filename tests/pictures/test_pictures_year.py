"""The year of wood moisture when the wood is wetter than the chart is high."""

from dataclasses import replace

import numpy as np
import pytest

from dryward.pictures.year import MoistureYear, YearGraph, told_apart

DAYS = np.arange(0.0, 365.0)
BANDS = ((20.0, "caution"), (28.0, "decay"))
#: What stands under the moisture in a report.
STRIPS = {"brought": np.full(12, 0.1), "carried": np.full(12, 0.1), "temperature": 5 + DAYS / 50}


def drawn(moisture, bands=BANDS, **keys):
    picture = YearGraph("us", paper=True, size=(480, 380))
    picture.render(MoistureYear(DAYS, (("deck", moisture),), bands, **{**STRIPS, **keys}))
    return picture


def words(picture):
    return [text.get_text() for ax in picture.figure.axes for text in ax.texts if text.get_visible()]


@pytest.mark.parametrize(("start", "side"), [(50, "left"), (300, "right")])
def test_a_line_that_leaves_the_chart_says_so(start, side):
    picture = drawn(np.where(start > DAYS, 15.0, 900.0))
    assert any("above the chart" in text for text in words(picture))
    assert picture.lines.over.get_ha() == side
    assert picture.lines.over.get_position()[0] == start
    assert not any("above the chart" in text for text in words(drawn(np.full(365, 15.0))))


def test_lines_that_would_merge_are_one():
    assert list(BANDS) == told_apart(BANDS, 5.0)
    moisture, near = np.full(365, 15.0), ((20.0, "caution"), (20.4, "decay"))
    assert [text for text in words(drawn(moisture, near)) if "%" in text] == ["20 % caution"]
    assert [text for text in words(drawn(moisture)) if "%" in text] == ["20 % caution", "28 % decay"]


def test_bars_of_a_flood_stay_in_their_axis():
    brought = np.full(12, 20.0)
    picture = drawn(np.full(365, 15.0), brought=brought, carried=brought)
    ax = picture.bars[0][0].axes
    assert abs(picture.bars[0][0].get_height()) <= ax.get_ylim()[1]


def test_named_years_stand_under_the_axis_and_the_last_one_counts():
    days = np.arange(1, 2 * 365 + 1.0)
    first, last = 30.0 * np.exp(-(((days - 50) / 40) ** 2)), 22.0 * np.exp(-(((days - 365 - 95) / 40) ** 2))
    view = MoistureYear(days, (("sheathing", 8 + first + last), ("deck", 9 + last)), BANDS, years=("first", "year 3"))
    picture = YearGraph("us")
    picture.render(view)
    ticks = [text.get_text() for text in picture.figure.axes[0].get_xticklabels()]
    assert ticks == ["first", "year 3"]
    # Over the bars of the months the curve has the letters, and the bars the years.
    barred = replace(view, brought=np.full(24, 0.1), carried=np.full(24, 0.1))
    picture.render(barred)
    curve, bars = ([text.get_text() for text in ax.get_xticklabels()] for ax in picture.figure.axes)
    assert "".join(curve) == 2 * "JFMAMJJASOND"
    assert bars == ["first", "year 3"]
    said = picture.alt(view)
    assert "over 730 days, first, then year 3: " in said
    assert "in the last year peaks at 30.0 % in April" in said
    assert "The deck peaks at 31.0 % in April." in said
    assert "It is over caution, 20 %; decay, 28 %, in the last year." in said
    unnamed = picture.alt(MoistureYear(days, (("sheathing", 8 + first + last),), BANDS))
    assert "peaks at 38.0 % in February" in unnamed  # and in the whole of it where no year has a name
    assert picture.signature(view) != picture.signature(
        MoistureYear(days, view.planes, BANDS, years=("first", "year 4"))
    )


def test_the_peak_is_in_the_month_of_the_calendar():
    """The last hour of February is still February and the next is March, whatever month the run began in."""
    days = np.arange(1, 8761) / 24
    for hour, month in ((59 * 24 - 1, "February"), (59 * 24, "March"), (8759, "December")):
        assert f"in {month} and ends" in YearGraph("us").alt(MoistureYear(days, (("", np.eye(1, 8760, hour)[0]),)))
    april = MoistureYear(days, (("", np.eye(1, 8760, 30 * 24)[0]),), first_month=3)
    assert "in May and ends" in YearGraph("us").alt(april)
