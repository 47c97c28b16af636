"""Rows of the code: what they ask about an assembly, read off its layers, and how it stands to them."""

import dataclasses
import math
from collections.abc import Iterator
from dataclasses import dataclass

from dryward import units
from dryward.building import AirSpace, Assembly, Layer, codes
from dryward.building.assembly import WALL
from dryward.building.codes import Ruling
from dryward.building.materials import Material
from dryward.building.membranes import DRY_CUP, HIGHEST, WET_CUP
from dryward.language import listed
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
    words = f"{boards[-1].id} {boards[-1].name}".lower()
    for kind in ("fiberboard", "gypsum"):
        if kind in words:
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


def unvented(assembly: Assembly) -> dict[str, object]:
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
    question = "Are the vent openings as large as the code ratio asks?"
    if job.vent is None:
        what = "No openings were given for the vent space."
        return Check("vents", question, CANNOT_TELL, what, change="Type the net free area at eave and ridge.")
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
        f"The openings come to 1/{provided[0]:.0f} of the roof area.",
        _openings(length, high + low, ruling, edition),
        "Open the eave and the ridge, a little more low than high. First make the ceiling airtight."
        if ruling.answer == NOT_MET
        else "",
        limits="A code ratio, not physics: how much a vent space carries follows from weather, leaks and gap.",
        numbers=(
            Number("Free area, eave and ridge together", high + low, "opening"),
            Number("Gap", gap.thickness or 0.0, "length"),
        ),
        source=_place(ruling),
        data=Openings(provided[0], ruling),
    )


def _openings(length: float, free: float, ruling: Ruling, edition: Edition) -> str:
    """Why the row is met or not, for a foot and a meter of eave; the roof is looked at in a strip that wide."""
    have = f"the openings have {units.opening(free)} of eave, high and low together"
    first = f"{ruling.instead}. " if ruling.instead else ""
    if ruling.conditions:
        return (
            f"{first}{have[0].upper()}{have[1:]}. "
            f"That is between 1/300 and 1/150 of the roof area, which asks for {ruling.conditions}. "
            "The high openings are taken as at the ridge: check on site."
        )
    row, said = ("plain", "") if ruling.answer == "met" else ("reduced", "Even ")
    asked = codes.required(f"vent-area-{row}", edition=edition)
    return f"{first}{said}1/{1 / asked:.0f} of the roof area is {units.opening(asked * length)} of eave; {have}."


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


#: What the row of the foam leaves to be shown.
_FOAM_ALSO = "that the foam is air-impermeable and without gaps must be shown; "


def _unvented(assembly: Assembly, zone: str | None, edition: Edition) -> Iterator[tuple[Ruling, str | None]]:
    """The rows of an unvented roof, each with what it leaves to be shown."""
    foam = air_impermeable(assembly)
    for ruling in codes.unvented_roof(zone, edition, **unvented(assembly)):
        if ruling.rule != "unvented-insulation":
            yield ruling, None
        elif foam.known and not foam.doubtful:
            yield ruling, _FOAM_ALSO
        else:
            yield _without_foam(ruling, foam, zone, edition), _FOAM_ALSO if foam.known else None


def _without_foam(ruling: Ruling, foam: AirImpermeable, zone: str | None, edition: Edition) -> Ruling:
    """The row of the foam where none is drawn, or none that is known to be tight to air."""
    least = codes.required(ruling.rule, zone, edition) if zone else None
    if least is None or ruling.answer == "met":
        return ruling
    asks = f"the row asks for {units.show(least, 'thermal resistance', 'us')} of it"
    names = listed([layer.name for layer in foam.doubtful])
    if foam.doubtful and foam.at_most >= least * (1 - 1e-9):
        why = f"whether {names} is air-impermeable is not known here; {asks}"
        return dataclasses.replace(ruling, answer="cannot tell", why=why)
    if foam.doubtful:
        have = units.show(foam.at_most, "thermal resistance", "us")
        why = f"even if {names} is air-impermeable there is only {have} at or above the deck; {asks}"
    else:
        why = f"no air-impermeable insulation is drawn at or above the deck; {asks}"
        if foam.inside:
            why += f"; {listed([layer.name for layer in foam.inside])} lies on the room side of other insulation"
    if codes.required("diffusion-port-area", zone, edition) is not None:
        why += "; in an attic of this zone a vapor diffusion port is another way"
    return dataclasses.replace(ruling, answer="not met", why=why)


def _finding(ruling: Ruling, also: str | None = None) -> Check:
    title = codes.rules().get(ruling.rule, ruling.rule)
    return Check(
        f"code-{ruling.rule}",
        f"{title[:1].upper()}{title[1:]}",
        ruling.answer,
        f"{ruling.answer.capitalize()}: {ruling.reason}.",
        limits=f"{also or ''}{codes.locally()}",
        source=_place(ruling),
        data=ruling,
    )


#: Codes by the letters the trade knows them by.
_CODES = {"International Residential Code": "IRC", "International Energy Conservation Code, residential": "IECC"}


def _place(ruling: Ruling) -> str:
    """Code, section, edition and how it was read, as one phrase."""
    code = " ".join(part for part in (_CODES.get(ruling.source, ruling.source), ruling.section) if part)
    edition = f"edition{'s' if ' to ' in ruling.edition else ''} {ruling.edition}" if ruling.edition else ""
    return ", ".join(part for part in (code, edition, ruling.how_read) if part) or codes.locally()
