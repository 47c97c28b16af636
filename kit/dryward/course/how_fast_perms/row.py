"""The scene of layers in a row: a pipe from the room to outdoors with a valve for each, as open as its perms."""

from __future__ import annotations

import math
from typing import Any

from dryward import language
from dryward.panels.stage import Page
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Axes, Place, Point, Scene
from dryward.units import amounts, to_si

message = language.beside(__file__)

#: Dots a minute for a fluid ounce a day: one scale for all scenes of the lesson.
DOTS = 10
#: A layer of so many perms is as wide as the pipe; a valve is open in proportion to its perms.
BORE = to_si(8.0, "perm")
#: Along the pipe: where the valves are, and how far each reaches to both sides of its throat.
VALVES, REACH = (0.2, 0.5, 0.8), 0.085
#: Ends of the scale for one sheet in place of the row [kg/(s m2 Pa)].
_LEAST, _MOST = to_si(0.2, "perm"), to_si(10.0, "perm")
#: Where the scale has ticks [perm]; the first and the last have their numbers.
_PRINTED = (0.25, 0.5, 1.0, 2.0, 4.0, 8.0)
#: Left, top, right and bottom of the pipe, of the steps of pressure under it, and of the scale, in each shape [px].
_PIPES = {"wide": (130.0, 150.0, 770.0, 310.0), "tall": (64.0, 150.0, 400.0, 270.0)}
_STEPS = {"wide": (130.0, 400.0, 770.0, 610.0), "tall": (64.0, 340.0, 400.0, 560.0)}
_SCALES = {"wide": (850.0, 130.0, 890.0, 610.0), "tall": (466.0, 120.0, 498.0, 580.0)}
_LOOKS = ("board", "membrane", "covering")


def opening(permeance: float) -> float:
    """How far a valve stands open [-]: in proportion to the perms, 0.015 to 1."""
    return min(max(permeance / BORE, 0.015), 1.0)


def on_scale(permeance: float) -> Place:
    """The place of a permeance on the scale."""
    return ("one", 0.5, math.log(permeance / _LEAST) / math.log(_MOST / _LEAST))


def draw(scene: Scene, state: Any) -> None:
    """The pipe from a warm room to a winter day, its valves and its two dials; under it the place of the steps."""
    shape = scene.shape if scene.shape in _PIPES else "tall"
    _, high = scene.size
    left, top, right, bottom = _PIPES[shape]
    scenery.sky(scene, "winter")
    wall = left + 0.62 * (right - left)
    scene.shape_of([(0, 0), (wall, 0), (wall, high), (0, high)], "room")
    scene.line([(wall, 0), (wall, top - 8)], "frame")
    scene.line([(wall, bottom + 8), (wall, high)], "frame")
    pipe = scene.box("pipe", left, top, right, bottom)
    # Along it for the dots, so that they scatter over its width.
    scene.axes["bore"] = Axes((left, bottom), (0.0, top - bottom), (right - left, 0.0))
    scene.shape_of(pipe.corners((-0.04, 1.04), (0, 1)), "pane")
    for x, kind, permeance in zip(VALVES, _LOOKS, state.permeances, strict=True):
        half = 0.5 * opening(permeance)
        for edge, throat in ((1.0, 0.5 + half), (0.0, 0.5 - half)):
            tip = 0.25 * REACH
            cut = [
                pipe.at(x - REACH, edge),
                pipe.at(x - tip, throat),
                pipe.at(x + tip, throat),
                pipe.at(x + REACH, edge),
            ]
            scene.filled(cut, f"layer-{kind}", kind)
    for d in (0.0, 1.0):
        scene.line([pipe.at(-0.04, d), pipe.at(1.04, d)], "membrane")
    _dial(scene, pipe.at(0.0, 1.0), 0.13 * (right - left), 0.85)
    _dial(scene, pipe.at(1.0, 1.0), 0.13 * (right - left), 0.15)
    steps = scene.box("steps", *_STEPS[shape])
    scene.shape_of(steps.corners((0, 1), (0, 1)), "gauge")
    scale = scene.box("one", *_SCALES[shape])
    scene.shape_of(scale.corners((0, 1), (0, 1)), "gauge")


def _dial(scene: Scene, foot: Point, size: float, share: float) -> None:
    """A dial on the pipe, its hand at a share of the way round."""
    radius = 0.5 * size
    x, y = foot[0], foot[1] - 1.35 * radius
    scene.line([(x, y), foot], "eave")
    scene.circle((x, y), radius, "machine")
    for k in range(7):
        c, s = _round(k / 6)
        scene.line(
            [(x + 0.78 * radius * c, y + 0.78 * radius * s), (x + 0.93 * radius * c, y + 0.93 * radius * s)], "thin"
        )
    c, s = _round(share)
    scene.line([(x, y), (x + 0.7 * radius * c, y + 0.7 * radius * s)], "membrane")


def _round(share: float) -> Point:
    angle = math.radians(150 + 240 * share)
    return math.cos(angle), math.sin(angle)


def given(page: Page, state: Any) -> dict[str, Any]:
    """The layers with their perms, the push, and the scale for one sheet in place of them."""
    names = ("row-drywall", "row-film", "row-sheet")
    tags = [
        scenery.tag(
            message(name, permeance=vault.perms(permeance, page.unit_system)),
            ("pipe", x, 0.0 if side == "under" else 1.0),
            "permeance",
            side,
        )
        for name, x, permeance, side in zip(names, VALVES, state.permeances, ("under", "over", "under"), strict=True)
    ]
    push = page.show(state.push, "pressure", 2 if page.unit_system == "us" else 0)
    tags += [
        scenery.tag(message("row-push", push=push), ("steps", 0.02, 0.12), "vapor pressure", "right", minor=True),
        scenery.tag(message("row-pressure"), ("steps", 0.5, 0.0), "vapor pressure", "under", minor=True),
        scenery.tag(message("row-one"), ("one", 0.5, 0.0), "", "under"),
    ]
    for each in (_PRINTED[0], _PRINTED[-1]):
        text = vault.perms(to_si(each, "perm"), page.unit_system)
        tags.append(scenery.tag(text, ("one", 1.0, on_scale(to_si(each, "perm"))[2]), "", "right", minor=True))
    ticks = [on_scale(to_si(each, "perm"))[2] for each in _PRINTED]
    return {"marks": [scenery.ticks(ticks, "one", 0.35)], "tags": tags}


def shows(page: Page, state: Any) -> dict[str, Any]:
    """Vapor through all the throats, the pressure that is left along the pipe, and the one sheet that does as much."""
    taken = [state.together / each for each in state.permeances]
    left, points = 1.0, [("steps", 0.0, 1.0)]
    tags = []
    for x, share in zip(VALVES, taken, strict=True):
        points.append(("steps", x - 0.3 * REACH, left))
        left -= share
        points.append(("steps", x + 0.3 * REACH, max(left, 0.0)))
        text = message("row-takes", share=page.show(share, "relative humidity"))
        tags.append(scenery.tag(text, ("steps", x, left + 0.5 * share), "vapor pressure", "right", minor=True))
    points.append(("steps", 1.0, max(left, 0.0)))
    here = on_scale(state.together)
    tags += [
        scenery.tag(vault.perms(state.together, page.unit_system), here, "permeance", "left"),
    ]
    marks = [
        scenery.line("vapor pressure", *points),
        scenery.line("permeance", ("one", -0.3, here[2]), ("one", 1.3, here[2])),
    ]
    return {"marks": marks, "tags": tags, "flows": _vapor(state)}


def _vapor(state: Any) -> list[dict[str, Any]]:
    """Dots in lanes, which come together in each throat."""
    lanes = (-0.36, -0.18, 0.0, 0.18, 0.36)
    rate = vault.dots(state.flow, DOTS) / len(lanes)
    flows = []
    for lane in lanes:
        way: list[Place] = [("bore", 0.5 + lane, -0.1)]
        for x, permeance in zip(VALVES, state.permeances, strict=True):
            way += [
                ("bore", 0.5 + lane, x - REACH),
                ("bore", 0.5 + 0.75 * lane * opening(permeance), x),
                ("bore", 0.5 + lane, x + REACH),
            ]
        flows.append(scenery.flow(rate, *way, ("bore", 0.5 + lane, 1.12)))
    return flows


def passes(state: Any, page: Page) -> str:
    """What passes in a day, on the roof that is told with it."""
    return amounts.on_a_roof(state.flow, page.unit_system)
