"""Wrong numbers that circulate: the kit must not have caught them.

Each was seen while the sources were read; the right value beside it comes
from the source that its test names.
"""

import pytest

from dryward import building
from dryward.building import codes
from dryward.building.library import wood_moisture
from dryward.units import from_si, to_si


def test_wood_moisture_without_the_slipped_digit():
    """Wood Handbook 2010, Table 4-2: 13.56 % at 60 °C and 80 %.

    With -2.73e-7 in place of -2.73e-6 in K the same equation gives more than
    a tenth of a point more.
    """
    t, h = 60.0, 0.8
    k = 0.805 + 0.000736 * t - 2.73e-7 * t**2
    k1, k2 = 6.27 - 0.00938 * t - 0.000303 * t**2, 1.91 + 0.0407 * t - 0.000293 * t**2
    w = 349 + 1.29 * t + 0.0135 * t**2
    kh = k * h
    wrong = 18 / w * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2))
    right = float(wood_moisture(h, t))
    assert right == pytest.approx(0.1356, abs=5e-5)
    assert wrong - right > 0.001


@pytest.mark.parametrize(("zone", "copied", "right"), [("4A", 10, 15), ("5", 15, 20), ("6", 20, 25), ("7", 25, 30)])
def test_the_unvented_table_is_not_one_row_off(zone, copied, right):
    """IRC Table R806.5; several web notes copy it one row off."""
    assert from_si(codes.required("unvented-insulation", zone=zone), "R") == pytest.approx(right)
    assert codes.judge("unvented-insulation", zone=zone, value=to_si(copied, "R")).answer == "not met"


def test_one_three_hundredth_asks_for_both_conditions():
    """IRC R806.2 since 2012: high vents and, in zones 6 to 8, a retarder; before 2009 either."""
    facts = {"vented_area": 100.0, "free_area": 100.0 / 300, "upper_depth": 0.5, "zone": "6"}
    only_retarder = {"upper_share": 0.2, "permeance": to_si(0.7, "perm")}
    only_vents = {"upper_share": 0.45, "permeance": to_si(7, "perm")}
    for part in (only_retarder, only_vents):
        assert codes.judge("vent-area", edition=2021, **facts, **part).answer == "not met"
    assert codes.judge("vent-area", edition=2006, **facts, **only_retarder).answer == "met"


def test_class_1_ends_at_a_tenth_of_a_perm():
    """IRC Table R702.7(1): 0.1 perm is 5.72 ng/(s m2 Pa); some copies print 57."""
    assert codes.retarder_class(5.7e-12) == "I"
    assert codes.retarder_class(57e-12) == "II"


def test_concrete_by_the_inch_and_by_the_slab():
    """UAF Extension EEM-00259: 3.2 perm-in.; four inches are 0.8 perm, not the 1.25 quoted beside it."""
    slab = building.material("concrete").permeability_at(0.5) / to_si(4, "in")
    assert from_si(slab, "perm") == pytest.approx(0.8, abs=0.005)
