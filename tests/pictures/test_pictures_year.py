"""The year of wood moisture when the wood is wetter than the chart is high."""

import numpy as np
import pytest

from dryward.pictures.year import Year, YearState, told_apart

DAYS = np.arange(0.0, 365.0)
BANDS = ((20.0, "caution"), (28.0, "decay"))
#: What stands under the moisture in a report.
STRIPS = {"brought": np.full(12, 0.1), "carried": np.full(12, 0.1), "temperature": 5 + DAYS / 50}


def drawn(moisture, **keys):
    picture = Year("us", paper=True, size=(480, 380))
    picture.render(YearState(DAYS, (("deck", moisture),), BANDS, **{**STRIPS, **keys}))
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
    high, low = words(drawn(np.full(365, 190.0))), words(drawn(np.full(365, 15.0)))
    assert [text for text in high if "%" in text] == ["20 % caution"]
    assert [text for text in low if "%" in text] == ["20 % caution", "28 % decay"]


def test_bars_of_a_flood_stay_in_their_axis():
    brought = np.full(12, 20.0)
    picture = drawn(np.full(365, 15.0), brought=brought, carried=brought)
    ax = picture.bars[0][0].axes
    assert abs(picture.bars[0][0].get_height()) <= ax.get_ylim()[1]
