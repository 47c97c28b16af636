"""How layers are drawn and named."""

from itertools import pairwise

import numpy as np
import pytest
from drawn import board, crowded, cut, gap, overlapping, profile_state, roof

from dryward import building
from dryward.pictures import section
from dryward.pictures.drawing import stairs
from dryward.pictures.section import SectionAndProfile


def test_each_kind_of_layer():
    made = roof()
    kinds = [section.layer_kind(made, layer) for layer in made.layers]
    assert kinds == ["board", "air", "membrane", "fibrous", "board", "vent", "covering"]
    foam = [section.layer_kind(crowded(), layer) for layer in crowded().layers]
    assert foam[4] == "foam"
    assert foam[-1] == "covering"


def test_the_shelf_of_the_library_decides_before_the_weight():
    heavy = board("heavy fiber", 4, 20, 1, 240, "fibrous insulation")
    assert section.layer_kind(building.Assembly("wall", [heavy, gap("air", 1)]), heavy) == "fibrous"


@pytest.mark.parametrize("what", ["fibrous", "foam", "board", "covering", "air", "vent"])
def test_strokes_stay_in_their_box(what):
    strokes = section.pattern(what, 10, 70, 20, 220, 17)
    assert strokes
    for stroke in strokes:
        assert stroke[:, 0].min() >= 10
        assert stroke[:, 0].max() <= 70
        assert stroke[:, 1].min() >= 20
        assert stroke[:, 1].max() <= 220


def test_kinds_differ_without_color():
    drawn = [
        np.concatenate(section.pattern(k, 0, 60, 0, 200, 17)).tobytes()
        for k in ("fibrous", "foam", "board", "covering")
    ]
    assert len(set(drawn)) == 4


def test_no_leader_crosses_a_name_of_its_side():
    items = [(k, x, 80.0) for k, x in enumerate((5, 12, 40, 60, 300, 330, 380, 395))]
    rows, near, count = stairs(items, 200)
    at = {key: x for key, x, _ in items}
    left = sorted((k for k in rows if k in near), key=at.get)
    right = sorted((k for k in rows if k not in near), key=at.get)
    assert all(rows[a] > rows[b] for a, b in pairwise(left))
    assert all(rows[a] < rows[b] for a, b in pairwise(right))
    assert count == max(rows.values()) + 1
    for a in left:
        for b in right:
            if rows[a] == rows[b]:
                assert at[a] + 80 <= at[b] - 80


@pytest.mark.parametrize("name", [getattr(p, "id", p) for p in building.presets()])
def test_every_preset_is_named_whole_on_a_projector(name):
    picture = SectionAndProfile("si", projector=True)
    picture.paint(profile_state(building.preset(name)))
    assert cut(picture) == []
    assert overlapping(picture) == []
