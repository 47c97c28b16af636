"""The scene of the map: perms inside against perms outside, where a winter day leaves water, and a small vault."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import numpy as np

from dryward import language
from dryward.course.open_out_tight_in.scene import FOLK, edged
from dryward.panels.stage import Page
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Place, Scene
from dryward.units import from_si, to_si

message = language.beside(__file__)

#: Ends of both axes, and where they have ticks and numbers [perm].
LEAST, MOST, TICKS = 0.05, 100.0, (0.1, 1.0, 10.0)
#: Left, top, right and bottom of the map, and of the small vault, in each shape [px].
_MAPS = {"wide": (118.0, 58.0, 640.0, 596.0), "tall": (116.0, 46.0, 584.0, 386.0)}
_VAULTS = {"wide": (676.0, 120.0, 984.0, 520.0), "tall": (116.0, 482.0, 584.0, 634.0)}


def share(permeance: float) -> float:
    """Where on an axis a permeance is [-]."""
    return math.log(from_si(permeance, "perm") / LEAST) / math.log(MOST / LEAST)


def place(inner: float, outer: float) -> Place:
    """A roof on the map, by its two permeances."""
    return ("map", share(inner), share(outer))


def draw(scene: Scene, state: Any) -> None:
    """The frame of the map with the line of the folk rule, and the vault that it is a map of."""
    wide, high = scene.size
    shape = scene.shape if scene.shape in _MAPS else "tall"
    scene.shape_of([(0, 0), (wide, 0), (wide, high), (0, high)], "sky-mild")
    axes = scene.box("map", *_MAPS[shape])
    scene.shape_of(axes.corners((0, 1), (0, 1)), "gauge")
    for each in TICKS:
        at = share(to_si(each, "perm"))
        scene.line([axes.at(at, 0), axes.at(at, 1)], "flake")
        scene.line([axes.at(0, at), axes.at(1, at)], "flake")
    season = vault.season(state.outdoor.temperature)
    vault.small(scene, state.roof, season, _VAULTS[shape])


def _perms(page: Page, value: float) -> str:
    return vault.perms(value, page.unit_system)


def given(page: Page, state: Any) -> dict[str, Any]:
    """The axes, the folk rule, and the two airs."""
    rise = math.log(FOLK) / math.log(MOST / LEAST)
    found = vault.airs(state.indoor, state.outdoor, page.unit_system, ("room", 0.5, 0.25), ("sky", 0.5, 0.12))
    tags = found["tags"]
    for each in TICKS:
        permeance = to_si(each, "perm")
        tags.append(scenery.tag(_perms(page, permeance), ("map", share(permeance), 0.0), "", "under", minor=True))
        if each != TICKS[0]:  # a roof to be bet on stands there
            tags.append(scenery.tag(_perms(page, permeance), ("map", 0.0, share(permeance)), "", "left", minor=True))
    tags += [
        scenery.tag(message("map-inside"), ("map", 0.7, -0.075), "permeance", "under"),
        scenery.tag(message("map-outside"), ("map", 0.18, 1.0), "permeance", "over"),
        scenery.tag(message("map-folk"), ("map", 0.6, 0.6 + rise), "", "left"),
    ]
    return {"marks": [_folk()], "tags": tags}


def _folk() -> dict[str, Any]:
    rise = math.log(FOLK) / math.log(MOST / LEAST)
    return scenery.line("folk", ("map", 0.0, rise), ("map", 1.0 - rise, 1.0))


def edge(state: Any) -> list[Place]:
    """For each permeance inside the least outside without water; no places where no roof of the map gains any."""
    gains = edged(state.inner_axis, state.outer_axis, state.gains)
    if not (np.asarray(state.gains) > 0).any():
        return []
    ways = [share(each) for each in state.outer_axis]
    found = []
    for inner, column in zip(state.inner_axis, gains.T, strict=True):
        wet = np.flatnonzero(column > 0)
        if not wet.size:
            across = 0.0
        elif wet[-1] + 1 == len(column):
            across = 1.0
        else:
            k = int(wet[-1])
            across = ways[k] + (ways[k + 1] - ways[k]) * float(column[k] / (column[k] - column[k + 1]))
        found.append(("map", share(inner), min(max(across, 0.0), 1.0)))
    return found


def shows(page: Page, state: Any) -> dict[str, Any]:
    """The region of roofs that gain water, under the line of the rule; water and vapor in the vault of this one."""
    border, system = edge(state), page.unit_system
    marks: list[dict[str, Any]] = []
    tags = []
    if border:
        start = next((k for k, (a, b) in enumerate(pairwise(border)) if b[2] > 0 or a[2] > 0), 0)
        region = border[start:]
        marks.append(scenery.area("gains", *region, ("map", 1.0, 0.0), ("map", region[0][1], 0.0)))
        tags.append(scenery.tag(message("map-gains"), ("map", 0.78, 0.3), "wet"))
    marks += [_folk(), *_here(state)]
    parts = [
        {"marks": marks, "tags": tags},
        vault.water(state.profile, state.roof, system, lens=False),
        vault.vapor(state.profile, state.roof),
    ]
    return scenery.together(parts)


def _here(state: Any) -> list[dict[str, Any]]:
    """The roof of the page, as a mark on the map."""
    _, s, d = place(state.inner, state.outer)
    return [
        scenery.area("here", ("map", s - 0.022, d), ("map", s, d + 0.02), ("map", s + 0.022, d), ("map", s, d - 0.02))
    ]
