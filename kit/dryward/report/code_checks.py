"""Rows of the code: what they ask about an assembly, read off its layers, and how it stands to them."""

import dataclasses
import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from dryward import units
from dryward.building import AirSpace, Assembly, Layer, codes
from dryward.building.assembly import WALL
from dryward.building.codes import Ruling
from dryward.building.library import DRY_CUP, WET_CUP
from dryward.building.substances import HIGHEST, Material
from dryward.checks import begun
from dryward.language import called, listed, listing, message
from dryward.physics.ventspace import ratio_provided
from dryward.report.check import CANNOT_TELL, NOT_MET, Check, Edition, Number
from dryward.report.setting import Setting
from dryward.units import to_si

#: Depth of the studs the rows know, and how far a depth may lie from it [m].
_STUDS, _NEAR = {"2x4": to_si(3.5, "in"), "2x6": to_si(5.5, "in")}, to_si(0.25, "in")
#: Insulating sheathing: a core of R-2 or more, from memory, of what insulates [W/(m K)].
_LEAST_CORE, _INSULATES = to_si(2.0, "R"), 0.06
#: A responsive retarder lets more through than this in the wet cup.
_RESPONSIVE = to_si(1.0, "perm")
_FOAM = "foam insulation"
#: Foams that hold air back only from some density or thickness on; common practice, no source.
_AIR_NOT_KNOWN = ("spray-foam-open-cell", "cork-board")
#: Shelves of what the reader typed or a file brought along.
_OWN = ("own", "")


def _at(layer: Layer, humidity: float) -> float:
    """Permeance of a layer at the mean humidity of a cup test."""
    if isinstance(layer.substance, Material):
        return layer.substance.permeability_at(humidity) / layer.thickness
    if not isinstance(layer.substance, AirSpace):
        # The dry cup has 0 and 50 % at its faces, the wet one 50 and 100 %; the damper face to the room.
        return layer.substance.permeance(humidity + 0.25, humidity - 0.25)
    return layer.permeance


def cavity(assembly: Assembly) -> Layer:
    """The main insulation: the one between the framing, otherwise the thickest in R."""
    framed = assembly.framing.layers if assembly.framing else ()
    between = [layer for layer in assembly.inner_layers if layer.name in framed] or assembly.inner_layers
    return max(between, key=lambda layer: layer.thermal_resistance)


def _room_side(assembly: Assembly) -> tuple[Layer, ...]:
    return assembly.inner_layers[: assembly.inner_layers.index(cavity(assembly))]


def _outside(assembly: Assembly) -> tuple[Layer, ...]:
    return assembly.inner_layers[assembly.inner_layers.index(cavity(assembly)) + 1 :]


def warm_side(assembly: Assembly) -> float:
    """Permeance of the tightest layer on the room side, at a mean RH of 25 % [kg/(s m2 Pa)]; inf where none."""
    return min((_at(layer, DRY_CUP) for layer in _room_side(assembly)), default=math.inf)


def _insulates(layer: Layer) -> bool:
    made = layer.substance
    return (
        isinstance(made, Material)
        and made.conductivity_at(0.0) < _INSULATES
        and layer.thermal_resistance >= _LEAST_CORE * (1 - 1e-9)
    )


def retarder(assembly: Assembly) -> dict[str, object]:
    """What the row of the interior vapor retarder asks about a frame wall; the stud only where the framing is told."""
    tightest = min(_room_side(assembly), key=lambda layer: _at(layer, DRY_CUP))
    outside = _outside(assembly)
    depth = cavity(assembly).thickness or 0.0
    studs = [name for name, size in _STUDS.items() if assembly.framing and abs(depth - size) <= _NEAR]
    level = min((_at(layer, DRY_CUP) for layer in outside), default=math.inf)
    return {
        "permeance": _at(tightest, DRY_CUP),
        "responsive": _at(tightest, WET_CUP) > _RESPONSIVE * (1 + 1e-9),
        "wall": studs[0] if studs else None,
        "exterior_insulation": sum(layer.thermal_resistance for layer in outside if _insulates(layer)),
        "vented_cladding_over": _under_cladding(assembly, outside),
        "outer_permeance": level if level <= HIGHEST else None,
    }


def _under_cladding(assembly: Assembly, outside: tuple[Layer, ...]) -> str:
    """What a vented cladding hangs over: a word of the table, or "none"."""
    if not any(layer.vented for layer in assembly.layers):
        return "none"
    boards = [layer.substance for layer in outside if isinstance(layer.substance, Material)]
    if not boards:
        return "none"
    made = f"{boards[-1].id} {boards[-1].name}".lower()
    for kind in ("fiberboard", "gypsum"):
        if kind in made:
            return kind
    return "panel" if boards[-1].category == "wood panels and sheathing" else "none"


def _is_foam(layer: Layer) -> bool:
    return isinstance(layer.substance, Material) and layer.substance.category == _FOAM


def _open_question(layer: Layer) -> bool:
    """Whether it insulates and nobody here knows if air passes it."""
    made = layer.substance
    return isinstance(made, Material) and _insulates(layer) and (made.id in _AIR_NOT_KNOWN or made.category in _OWN)


@dataclass(frozen=True)
class AirImpermeable:
    """What is drawn of air-impermeable insulation at or above the deck."""

    #: Foam outside all other insulation, and what may be as tight to air but is not known here to be.
    known: tuple[Layer, ...]
    doubtful: tuple[Layer, ...]
    #: Foam on the room side of other insulation, where it does not count.
    inside: tuple[Layer, ...]

    @property
    def resistance(self) -> float:
        """Of what is known to be air-impermeable [m2 K/W]; 0 where nothing is."""
        return sum(layer.thermal_resistance for layer in self.known)

    @property
    def at_most(self) -> float:
        """The same with what may be [m2 K/W]."""
        return self.resistance + sum(layer.thermal_resistance for layer in self.doubtful)


def air_impermeable(assembly: Assembly) -> AirImpermeable:
    """The insulation that the rows of an unvented roof ask about."""
    counts = [_is_foam(layer) or _open_question(layer) for layer in assembly.layers]
    others = [place for place, layer in enumerate(assembly.layers) if _insulates(layer) and not counts[place]]
    first = others[-1] + 1 if others else 0
    foam = [layer for layer, fits in zip(assembly.layers, counts, strict=True) if fits]
    outside = [layer for layer in assembly.layers[first:] if layer in foam]
    return AirImpermeable(
        tuple(layer for layer in outside if not _open_question(layer)),
        tuple(layer for layer in outside if _open_question(layer)),
        tuple(layer for layer in foam if layer not in outside),
    )


def unvented(assembly: Assembly) -> dict[str, Any]:
    """What the rows of an unvented rafter roof ask about it; without foam its R is 0 and its permeance is not asked."""
    foam, inside = air_impermeable(assembly), warm_side(assembly)
    tight = min((_at(layer, DRY_CUP) for layer in (*foam.known, *foam.doubtful)), default=None)
    ids = [layer.substance.id for layer in assembly.layers]
    return {
        # What may be air-impermeable is neither none nor known.
        "resistance": foam.resistance if foam.known or not foam.doubtful else None,
        "inner_permeance": min(inside, HIGHEST),
        "foam_permeance": tight if tight is None or tight <= HIGHEST else None,
        "shingle_gap": 0.0 if "wood-shingles" in ids else None,
        "tile": ids[-1] == "clay-tile",
    }


@dataclasses.dataclass(frozen=True)
class Openings:
    """The vent openings of a roof."""

    #: Roof area over free area, high and low together [-].
    ratio: float
    ruling: Ruling


def vents(setting: Setting, edition: Edition = None) -> Check | None:
    """Are the openings of the vent space as large as the code ratio asks, in an edition or the newest that was read?"""
    job = setting.job
    gap = next((layer for layer in job.assembly.layers if layer.vented), None)
    if gap is None or job.assembly.slope >= WALL:
        return None
    question = message("report.question-vents")
    if job.vent is None:
        what, change = message("report.openings-not-given"), message("report.give-the-openings")
        return Check("vents", question, CANNOT_TELL, what, change=change)
    length = job.vent.length
    high, low = job.vent.outlet_area, job.vent.inlet_area
    provided = ratio_provided(length, high, low)
    ruling = codes.judge(
        "vent-area",
        zone=job.place.zone or None,
        edition=edition,
        vented_area=length,
        free_area=high + low,
        permeance=warm_side(job.assembly),
        upper_share=high / (high + low),
        upper_depth=0.0,
    )
    return Check(
        "vents",
        question,
        ruling.answer,
        message("report.openings-come-to", ratio=units.number(provided[0], 0)),
        _openings(length, high + low, ruling, edition),
        message("report.open-eave-and-ridge") if ruling.answer == NOT_MET else "",
        limits=message("report.vents-limits"),
        numbers=(
            Number("free-area", high + low, "opening"),
            Number("gap", gap.thickness or 0.0, "length"),
        ),
        source=_place(ruling),
        data=Openings(provided[0], ruling),
    )


def _openings(length: float, free: float, ruling: Ruling, edition: Edition) -> str:
    """Why the row is met or not, for a foot and a meter of eave; the roof is looked at in a strip that wide."""
    first = f"{message('report.instead', instead=ruling.instead)} " if ruling.instead else ""

    def said(system: str | None) -> str:
        have = units.opening(free, system)
        if ruling.conditions:
            id = "report.openings-between-the-ratios"
            return first + message(id, have=have, conditions=ruling.conditions)
        met = ruling.answer == "met"
        asked = codes.required(f"vent-area-{'plain' if met else 'reduced'}", edition=edition)
        told = {"share": units.number(1 / asked, 0), "asked": units.opening(asked * length, system), "have": have}
        return first + message("report.openings-enough" if met else "report.openings-too-small", **told)

    return units.InBoth.of(said)


def code_rows(setting: Setting, edition: Edition = None) -> tuple[Check, ...]:
    """What the code rows say that this job has facts for, in an edition or the newest that was read."""
    job, found = setting.job, []
    zone = job.place.zone or None
    gap = next((layer for layer in job.assembly.layers if layer.vented), None)
    wall = job.assembly.slope >= WALL
    if gap is not None and gap.thickness and not wall:
        found.append(_finding(codes.judge("vent-air-space", zone=zone, edition=edition, value=gap.thickness)))
    if gap is None and not wall:
        found += [_finding(*ruling) for ruling in _unvented(job.assembly, zone=zone, edition=edition)]
    if job.tightness is not None and "airtightness" in codes.rules():
        found.append(
            _finding(codes.judge("airtightness", zone=zone, edition=edition, value=job.tightness.ach50 / 3600))
        )
    if wall and warm_side(job.assembly) < HIGHEST:
        found.append(_finding(codes.judge("retarder", zone=zone, edition=edition, **retarder(job.assembly))))
    return tuple(found)


def _unvented(assembly: Assembly, zone: str | None, edition: Edition) -> Iterator[tuple[Ruling, bool]]:
    """The rows of an unvented roof, each with whether it leaves to be shown what the foam is."""
    foam = air_impermeable(assembly)
    for ruling in codes.unvented_roof(zone, edition, **unvented(assembly)):
        if ruling.rule != "unvented-insulation":
            yield ruling, False
        elif foam.known and not foam.doubtful:
            yield ruling, True
        else:
            yield _without_foam(ruling, foam, zone, edition), bool(foam.known)


def _without_foam(ruling: Ruling, foam: AirImpermeable, zone: str | None, edition: Edition) -> Ruling:
    """The row of the foam where none is drawn, or none that is known to be tight to air."""
    least = codes.required(ruling.rule, zone, edition, otherwise=None) if zone else None
    if least is None or ruling.answer == "met":
        return ruling
    doubtful, inside = (listed([called(layer.name) for layer in layers]) for layers in (foam.doubtful, foam.inside))
    asks = units.show(least, "thermal resistance", "us")  # as the code has it
    if foam.doubtful and foam.at_most >= least * (1 - 1e-9):
        why = message("report.foam-not-known", layers=doubtful, asks=asks)
        return dataclasses.replace(ruling, answer="cannot tell", why=why)
    if foam.doubtful:
        have = units.show(foam.at_most, "thermal resistance", "us")
        why = message("report.foam-too-thin", layers=doubtful, have=have, asks=asks)
    elif foam.inside:
        why = message("report.no-foam-but-inside", layers=inside, asks=asks)
    else:
        why = message("report.no-foam", asks=asks)
    if codes.required("diffusion-port-area", zone, edition, otherwise=None) is not None:
        why = message("report.or-a-port", why=why)
    return dataclasses.replace(ruling, answer="not met", why=why)


def _finding(ruling: Ruling, foam: bool = False) -> Check:
    locally = codes.locally()
    return Check(
        f"code-{ruling.rule}",
        begun(codes.rules().get(ruling.rule, ruling.rule)),
        ruling.answer,
        message("report.ruling", head=ruling.head, reason=ruling.reason),
        limits=message("report.foam-to-be-shown", locally=locally) if foam else locally,
        source=_place(ruling),
        data=ruling,
    )


#: Codes by the letters the trade knows them by.
_CODES = {"International Residential Code": "IRC", "International Energy Conservation Code, residential": "IECC"}


def _place(ruling: Ruling) -> str:
    """Code, section, edition and how it was read, as one phrase."""
    code = " ".join(part for part in (_CODES.get(ruling.source, ruling.source), ruling.section) if part)
    parts = [code, edition(ruling), ruling.how_read]
    return listing([part for part in parts if part]) or codes.locally()


def edition(ruling: Ruling) -> str:
    """The edition of a ruling, or the years of several; empty where it has none."""
    shown = codes.years(ruling.edition)
    return message("report.edition", edition=shown, many=codes.several(ruling.edition)) if shown else ""
