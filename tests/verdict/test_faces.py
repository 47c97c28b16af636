"""Many faces at once are judged by the rule of one face."""

import numpy as np
import pytest

from dryward import air, building
from dryward.verdict import of_face, states_of_faces

WARMTH = np.linspace(-30.0, 50.0, 33)
#: Of what may be there: dry to far over full, and the edges of the rule themselves.
SHARES = (0.1, 0.5, 0.7, 0.79, 0.8, 0.81, 0.85, 0.88, 0.9, 0.92, 0.94, 0.945, 0.95, 0.97, 0.99, 0.999, 1.0, 1.01, 3.0)
SUBSTANCES = {
    "nobody knows": None,
    "wood": building.material("teaching-osb"),
    "a paper-faced board": building.material("gypsum-board"),
    "fibers": building.material("teaching-insulation"),
    "foam": building.material("eps"),
    "air": building.AirSpace(0.1),
}


@pytest.mark.parametrize("substance", SUBSTANCES.values(), ids=SUBSTANCES)
def test_many_faces_at_once_are_as_one_after_the_other(substance):
    most = air.saturation_vapor_pressure(WARMTH)
    found = states_of_faces(WARMTH, np.outer(SHARES, most), most, substance)
    alone = [
        [of_face(float(t), share * full, full, substance).state for t, full in zip(WARMTH, most.tolist(), strict=True)]
        for share in SHARES
    ]
    assert found.tolist() == alone
    assert set(found.ravel()) == {"dry", "damp", "wet"}


def test_cold_wood_is_damp_by_its_moisture_where_no_mold_grows():
    wood = building.material("teaching-osb")
    assert states_of_faces([-10.0], 0.97, 1.0, wood).tolist() == ["damp"]
    assert states_of_faces([-10.0], 0.97, 1.0).tolist() == ["dry"]
