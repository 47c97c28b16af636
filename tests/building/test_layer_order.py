"""Layers the wrong way round are named; what may lie where it lies is not.

The right assemblies are common practice, no source: each is one that a rule of
thumb about sides would get wrong.
"""

import dataclasses

import pytest

from dryward import building
from dryward.building import AirSpace, Assembly, Layer, Material, layer_order
from dryward.building.assembly import WALL

#: Thickness of what is not a sheet, where the case does not say it [m].
THICK = {"cellulose-dense": 0.3, "glass-fiber-batt": 0.14, "teaching-insulation": 0.3, "eps": 0.15, "xps": 0.15,
         "polyiso-fiber-faced": 0.1, "mineral-wool-board": 0.1, "wood-fiber-board": 0.1, "concrete": 0.2,
         "brick": 0.24, "face-brick": 0.09, "straw-bale": 0.4}  # fmt: skip


def made(words, slope=35.0):
    """An assembly from ids of the library, inside first; ``id:0.2`` is 0.2 m thick."""
    layers = []
    for word in words.split():
        id, _, thick = word.partition(":")
        thing = building.substance(id)
        sheet = not isinstance(thing, (Material, AirSpace))
        layers.append(Layer(thing, None if sheet else float(thick or THICK.get(id, 0.0127))))
    return Assembly("case", layers, slope=slope)


def roof(words):
    return made(words, 35.0)


def wall(words):
    return made(words, 90.0)


INNER = "latex-paint-7-perm gypsum-board service-cavity teaching-fixed-1-perm "
RIGHT = {
    "wood boards as a ceiling": roof(
        "varnish wood-boards teaching-variable cellulose-dense vapor-open-underlayment vent-space wood-boards "
        "asphalt-felt-30 metal-roofing"
    ),
    "interior boards of several kinds": roof(
        "latex-paint-two-coats wood-wool-cement-board fiber-cement plywood cellulose-dense fiberboard-250 vent-space "
        "wood-boards clay-tile"
    ),
    "shingles outside, on a wall": wall(INNER + "glass-fiber-batt plywood building-paper drained-cavity wood-shingles"),
    "shingles on both faces of a wall": wall(
        "wood-shingles gypsum-board glass-fiber-batt plywood asphalt-felt-15 wood-shingles"
    ),
    "metal lining in a metal barn": wall("metal-roofing polyethylene-6-mil glass-fiber-batt metal-roofing"),
    "glass-mat gypsum sheathing": wall(
        INNER + "glass-fiber-batt gypsum-sheathing-glass-mat fluid-applied-open mineral-wool-board vent-space "
        "vinyl-siding"
    ),
    "plain gypsum sheathing behind brick": wall(
        "latex-paint-7-perm gypsum-board kraft-facing glass-fiber-batt gypsum-board asphalt-paper drained-cavity "
        "face-brick"
    ),
    "all insulation over the deck": roof(
        "wood-boards self-adhered-underlayment polyiso-fiber-faced plywood synthetic-underlayment asphalt-shingles"
    ),
    "synthetic sheet on the deck under the insulation": roof(
        "wood-boards synthetic-underlayment wood-fiber-board vapor-open-underlayment vent-space wood-boards slate"
    ),
    "an old covering under new insulation": roof(
        "gypsum-board glass-fiber-batt:0.05 wood-boards asphalt-shingles polyiso-fiber-faced plywood asphalt-felt-30 "
        "asphalt-shingles"
    ),
    "insulation over the roofing sheet": made("concrete built-up-roofing xps", 2.0),
    "bitumen sheet as vapor barrier": made("concrete bitumen-felt polyiso-fiber-faced single-ply-roofing", 2.0),
    "wrap on the sheathing, insulation outside": wall(
        "latex-paint-7-perm gypsum-board air-space-wall gypsum-board spun-polyolefin mineral-wool-board drained-cavity "
        "bevel-siding"
    ),
    "a double wall with its wrap in the middle": wall(
        "latex-paint-7-perm gypsum-board glass-fiber-batt osb spun-polyolefin cellulose-dense:0.25 fiberboard-250 "
        "drained-cavity bevel-siding"
    ),
    "a partition": wall("latex-paint-7-perm gypsum-board glass-fiber-batt gypsum-board latex-paint-7-perm"),
    "a papered partition": wall("paper-wallpaper gypsum-board glass-fiber-batt gypsum-board vinyl-wallpaper"),
    "masonry insulated inside, old plaster and paper left": wall(
        "latex-paint-7-perm gypsum-board eps paper-wallpaper gypsum-plaster brick lime-plaster mineral-paint"
    ),
    "masonry insulated outside, painted": wall("gypsum-plaster brick eps resin-render latex-paint-two-coats"),
    "painted wood siding": wall(INNER + "glass-fiber-batt osb spun-polyolefin bevel-siding oil-paint-two-coats"),
    "straw bales in clay": wall("clay-plaster straw-bale clay-plaster"),
    "a roof without insulation": roof("latex-paint-7-perm gypsum-board vent-space wood-boards asphalt-shingles"),
    "a wall without insulation": wall("gypsum-plaster brick"),
    "batts in the service cavity": roof(
        "latex-paint-7-perm gypsum-board glass-fiber-batt:0.04 teaching-variable cellulose-dense vapor-open-50-perm "
        "vent-space wood-boards asphalt-shingles"
    ),
    "nothing but a sheet of metal": made("metal-roofing"),
}

#: Case -> assembly and the layers that must be named.
WRONG = {
    "shingles toward the room": (
        roof("asphalt-shingles cellulose-dense gypsum-board"),
        ["asphalt shingles", "gypsum board"],
    ),
    "covering inside of the insulation": (
        roof("latex-paint-7-perm gypsum-board asphalt-shingles cellulose-dense plywood"),
        ["asphalt shingles"],
    ),
    "covering and deck inside": (
        roof("gypsum-board wood-boards clay-tile cellulose-dense vapor-open-underlayment"),
        ["clay roof tile"],
    ),
    "wood shingles inside and none outside": (
        wall("wood-shingles glass-fiber-batt plywood asphalt-felt-15"),
        ["wood shingles"],
    ),
    "vinyl siding inside as well": (
        wall("vinyl-siding gypsum-board glass-fiber-batt osb spun-polyolefin vinyl-siding"),
        ["vinyl siding"],
    ),
    "roofing sheet under the ceiling": (
        made("gypsum-board single-ply-roofing cellulose-dense plywood bitumen-felt", 2.0),
        ["single-ply roofing sheet"],
    ),
    "underlayment inside": (
        roof("latex-paint-7-perm gypsum-board synthetic-underlayment cellulose-dense plywood asphalt-shingles"),
        ["synthetic roof underlayment"],
    ),
    "outer membrane inside": (
        roof("gypsum-board service-cavity vapor-open-underlayment cellulose-dense wood-boards metal-roofing"),
        ["vapor-open roof underlayment, 3 layers"],
    ),
    "weather barrier inside": (
        wall("gypsum-board spun-polyolefin glass-fiber-batt osb bevel-siding"),
        ["spun polyolefin weather barrier"],
    ),
    "vent space inside": (
        roof("latex-paint-7-perm gypsum-board vent-space teaching-fixed-1-perm cellulose-dense wood-boards slate"),
        ["vent space"],
    ),
    "vent space in the middle, most insulation beyond": (
        roof("gypsum-board glass-fiber-batt:0.05 vent-space cellulose-dense plywood asphalt-shingles"),
        ["vent space"],
    ),
    "gypsum board outside of a roof": (roof("wood-boards cellulose-dense gypsum-board"), ["gypsum board"]),
    "ceiling outside of a wall": (
        wall("plywood glass-fiber-batt gypsum-board latex-paint-7-perm"),
        ["gypsum board", "latex paint, 7 perm"],
    ),
    "wallpaper outside": (
        roof("gypsum-board teaching-fixed-1-perm cellulose-dense vinyl-wallpaper vent-space wood-boards slate"),
        ["vinyl wallpaper"],
    ),
    "wallpaper under the deck": (
        roof("gypsum-board teaching-fixed-1-perm cellulose-dense paper-wallpaper plywood asphalt-shingles"),
        ["paper wallpaper"],
    ),
    "retarder paint on the outer face": (
        roof("gypsum-board cellulose-dense vapor-retarder-paint vent-space wood-boards slate"),
        ["vapor-retarder paint"],
    ),
    "ceiling tile outside": (
        roof("gypsum-board cellulose-dense acoustic-tile vent-space wood-boards slate"),
        ["mineral-fiber ceiling tile"],
    ),
    "wallpaper over the siding": (
        wall("gypsum-board glass-fiber-batt osb vinyl-siding paper-wallpaper"),
        ["paper wallpaper"],
    ),
}


@pytest.mark.parametrize("case", RIGHT)
def test_what_may_lie_there_is_left_alone(case):
    assert layer_order.warnings(RIGHT[case]) == ()


@pytest.mark.parametrize("case", WRONG)
def test_what_lies_wrong_is_named(case):
    built, names = WRONG[case]
    assert [each.layer for each in layer_order.misplaced(built)] == names
    said = " ".join(layer_order.warnings(built))
    assert all(name.lower() in said.lower() for name in names)
    assert "listed from inside to outside" in said


@pytest.mark.parametrize("id", building.presets())
def test_a_preset_is_right_and_warns_when_it_is_turned_round(id):
    built = building.preset(id)
    assert layer_order.warnings(built) == ()
    (said,) = layer_order.warnings(dataclasses.replace(built, layers=built.layers[::-1]))
    assert said.startswith("The layers look turned round: ")
    outermost = built.layers[-1]
    assert outermost.name in said
    assert "gypsum board" in said
    assert "paint" in said


@pytest.mark.parametrize("id", building.presets())
def test_the_outermost_layer_moved_inside_is_named(id):
    """Each preset with nothing else wrong than its covering as the room's face."""
    built = building.preset(id)
    moved = dataclasses.replace(built, layers=(built.layers[-1], *built.layers[:-1]))
    assert built.layers[-1].name in [each.layer for each in layer_order.misplaced(moved)]


def test_a_layer_is_pointed_at_by_both_its_names():
    built = roof("asphalt-shingles cellulose-dense gypsum-board")
    built = built.replace("asphalt shingles", rename="covering")
    assert layer_order.misplaced(built)[0].called == "covering (asphalt shingles)"
    assert layer_order.misplaced(built)[1].called == "gypsum board"


def test_an_own_material_insulates_by_its_conductivity():
    own = Material("own-material", "own", 40, 1400, 0.04, 1e-10, category="own")
    shingles, board = (building.material(id) for id in ("asphalt-shingles", "gypsum-board"))
    built = Assembly("own", [Layer(shingles, 0.006), Layer(own, 0.2), Layer(board, 0.0127)])
    assert [each.side for each in layer_order.misplaced(built)] == ["room", "weather"]
    solid = dataclasses.replace(own, conductivity=0.5)
    assert layer_order.misplaced(Assembly("own", [Layer(board, 0.0127), Layer(solid, 0.2)])) == ()


def test_a_wall_begins_at_its_slope():
    flat = "gypsum-board glass-fiber-batt gypsum-board"
    assert layer_order.misplaced(made(flat, WALL)) == ()
    assert [each.layer for each in layer_order.misplaced(made(flat, WALL - 1))] == ["gypsum board (2)"]
