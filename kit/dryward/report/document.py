"""What the report says and shows, before it is HTML or PDF."""

import datetime
import struct
from collections.abc import Iterator
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

import dryward
from dryward import units
from dryward.building import Assembly, Layer, codes, library
from dryward.physics.hourly import Hours
from dryward.pictures.live import LivePicture, static
from dryward.pictures.profile import SectionAndProfile
from dryward.pictures.section import SteadyRoof
from dryward.pictures.year import MoistureYear, MonthBars, MonthlyWater, YearGraph
from dryward.report.check import CAN, CANNOT_TELL, MET, NOT_MET, Check, Number, Review
from dryward.report.moisture_checks import BALANCE
from dryward.report.sentences import for_client, for_inspector
from dryward.report.setting import Setting, inputs, setting
from dryward.teaching import words
from dryward.verdict import DAMP, DRY, LATER, NEVER, UNKNOWN, WET, WITHIN, criterion
from dryward.verdict.words import MUCH

#: Name, substance, thickness, R, permeance and origin of a layer, as they are printed.
LayerRow: TypeAlias = tuple[str, str, str, str, str, str]
Floats: TypeAlias = NDArray[np.float64]
#: Cautions that belong on every report.
CAUTIONS = (
    "falls",
    "lead-and-asbestos",
    "wet-and-moldy",
    "fuel-burning",
    "wires-and-lights",
    "loads-and-fire",
    "not-a-permit",
    "keep-the-fan",
)
#: Signs that black-and-white paper keeps, by answer; and what they mean.
MARKS = {
    **dict.fromkeys((DRY, MET, WITHIN, CAN), "✓"),
    **dict.fromkeys((DAMP, LATER), "◆"),
    **dict.fromkeys((WET, NOT_MET, NEVER), "▲"),
    **dict.fromkeys((UNKNOWN, CANNOT_TELL), "?"),
}
LEGEND = "✓ dry, met or dries; ◆ damp or slow; ▲ wet, not met or does not dry; ? not known"
#: Size of a picture that stands beside another [px], and pixels per inch of all.
_HALF, _DPI = (480, 380), 200
#: Which edition of a code is used; each row names its own.
EDITION = "of the newest edition whose text was read, unless another was asked for"
DISCLAIMER = (
    "A calculation for teaching and planning. It is no permit, no test report, no engineer's seal and no inspection. "
    "The locally adopted code and the building official rule; a licensed designer signs."
)


@dataclass(frozen=True)
class Picture:
    """A picture of the page: PNG bytes, the words for those who cannot see it, its pixels."""

    png: bytes
    alt: str
    title: str
    width: int
    height: int


@dataclass(frozen=True)
class Document:
    """All that is printed."""

    title: str
    file: str
    date: str
    version: str
    headline: str
    state: str
    #: What stands in small print under the headline.
    limits: str
    inputs: tuple[tuple[str, str], ...]
    layers: tuple[LayerRow, ...]
    pictures: tuple[Picture, ...]
    #: Of the physics, and the code rows.
    checks: tuple[Check, ...]
    rows: tuple[Check, ...]
    client: tuple[str, ...]
    inspector: tuple[str, ...]
    cautions: tuple[tuple[str, str], ...]
    notes: tuple[str, ...]
    #: Of the layers' values, each once, with the layers it belongs to.
    sources: tuple[str, ...]
    unit_system: str
    disclaimer: str = DISCLAIMER


def document(review: Review, unit_system: str = "us", file: str = "", date: datetime.date | None = None) -> Document:
    """The printed page of a review."""
    here = setting(review.job)
    return Document(
        title=review.job.assembly.name,
        file=file,
        date=(date or datetime.date.today()).isoformat(),
        version=dryward.__version__,
        headline=review.headline,
        state=review.state,
        limits=review.limits,
        inputs=inputs(here, unit_system, review.hourly),
        layers=tuple(_layer(layer, unit_system) for layer in review.job.assembly.layers),
        pictures=_pictures(review, here, unit_system),
        checks=tuple(each for each in review.checks if not each.id.startswith("code-")),
        rows=tuple(each for each in review.checks if each.id.startswith("code-")),
        client=for_client(review, unit_system),
        inspector=for_inspector(review, unit_system),
        cautions=tuple((each.title, each.text) for each in _cautions()),
        notes=(*designs(review), *review.notes, units.grain_of_water(), f"Code rows: {EDITION}; {codes.locally()}."),
        sources=sources(review.job.assembly),
        unit_system=unit_system,
    )


def designs(review: Review) -> Iterator[str]:
    """The states of all design years, in a sentence; nothing where they were not run."""
    if review.designs:
        leak = "" if review.leaky is None else " with the assumed leak"
        yield f"Design years{leak}: {'; '.join(f'{design}: {each.state}' for design, each in review.designs)}."


def _cautions() -> list[words.Caution]:
    known = {each.id: each for each in words.cautions()}
    return [known[id] for id in CAUTIONS if id in known]


def amount(number: Number, unit_system: str) -> str:
    """A number of a check, as it is printed."""

    def said(value: float | None) -> str:
        if value is None or value in (float("inf"), float("-inf")):
            return "not in the run" if number.unit == "days" else "straight to the air"
        if number.quantity:
            if number.quantity == "opening":
                return units.opening(value, unit_system)
            # What rounding of the machine leaves over is nothing.
            small = number.quantity == "area density" and abs(value) < 1e-6
            if number.quantity == "area density" and abs(value) >= MUCH:
                return units.show_in(value, {"us": "lb/ft2", "si": "kg/m2"}[unit_system], 1)
            if number.quantity == "vapor flux" and value < 0:
                return f"takes in {units.show(-value, number.quantity, unit_system)}"
            return units.show(0.0 if small else value, number.quantity, unit_system)
        if number.label == BALANCE and abs(value) < 1e-6:
            return "none; the water books balance"
        return f"{_bare(value, number.unit)} {number.unit}".strip()

    shown = said(number.value)
    if number.low is None or number.high is None:
        return shown
    low, high = said(number.low), said(number.high)
    if low == high == shown:
        return shown
    unit = shown.partition(" ")[2]
    if unit and low.endswith(f" {unit}"):
        low = low.removesuffix(f" {unit}")
    return f"{shown} (band {low} to {high})"


def _bare(value: float, unit: str) -> str:
    """A number without a unit of its own; a mold index knows one digit behind the point."""
    return units.number(value, 1) if unit == "of 6" else units.number(value, most=6)


def mark(check: Check) -> str:
    """A sign that black-and-white paper keeps: for the roof, near a limit, against it, not known."""
    return MARKS[check.answer]


def row_title(row: Check) -> str:
    """Mark and title of a code row."""
    return f"{mark(row)} {row.question}."


def _layer(layer: Layer, system: str) -> LayerRow:
    substance = layer.substance
    permeance = layer.permeance
    return (
        layer.name,
        substance.name if substance.name != layer.name else "",
        units.thickness(layer.thickness, system) if layer.thickness else "sheet",
        units.r_value(layer.thermal_resistance, system) if layer.thermal_resistance else "",
        "vented"
        if layer.vented
        else ("open" if permeance == float("inf") else units.show(permeance, "permeance", system)),
        library.source_of(layer.substance),
    )


def sources(assembly: Assembly) -> tuple[str, ...]:
    """Where the values of the layers come from, each origin once."""
    found: dict[str, list[str]] = {}
    for layer in assembly.layers:
        found.setdefault(library.source_of(layer.substance), []).append(layer.name)
    return tuple(f"{', '.join(names)}: {source.rstrip('.')}." for source, names in found.items())


def _pictures(review: Review, here: Setting, system: str) -> tuple[Picture, ...]:
    made: list[tuple[LivePicture, object, str]] = []
    winter = review.check("winter")
    if winter is not None:
        roof = SteadyRoof(review.job.assembly, winter.data, here.winter_room, here.winter)
        made.append((SectionAndProfile(system, paper=True), roof, "The coldest month"))
    months = review.check("twelve-months")
    if months is not None and months.data.planes:
        data = months.data
        water = MonthlyWater(
            tuple(m - 1 for m in data.month),
            tuple(data.condensed.sum(axis=1)),
            tuple(data.evaporated.sum(axis=1)),
            tuple(data.held.sum(axis=1)),
        )
        made.append((MonthBars(system, paper=True, size=_HALF), water, "Twelve months"))
    year = moisture_year(review) if review.hourly else None
    if year is not None:
        made.append((YearGraph(system, paper=True, size=_HALF), year, "Hour by hour"))
    return tuple(_printed(picture, state, title) for picture, state, title in made)


def _printed(picture: LivePicture, state: object, title: str) -> Picture:
    png = static(picture, state, dpi=_DPI)
    width, height = struct.unpack(">II", png[16:24])  # of every PNG
    return Picture(png, picture.alt(state), title, width, height)


#: Hours between points.
_EVERY = 6
#: Curves in one picture.
_MOST = 3


def woods(review: Review) -> tuple[str, ...]:
    """Names of the layers of wood that are judged, at most three, the wettest first."""
    found = {each.place.layer: each for each in review.verdict.findings if each.what == "wood-moisture"}
    return tuple(sorted(found, key=lambda name: found[name].value, reverse=True)[:_MOST])


def moisture(run: Hours, name: str) -> Floats:
    """Moisture content of wood by the hour [mass %]; of a layer in pieces, named by its first, the mean of all."""
    layers = run.assembly.layers
    places = next(each for each in run.assembly.bodies if layers[each[0]].name == name)
    cells = np.flatnonzero(np.isin(run.cell_layer, places))
    held = run.water_content[:, cells] @ run.width[cells] / run.width[cells].sum()
    return 100.0 * held / layers[places[0]].substance.density


def moisture_year(review: Review) -> MoistureYear | None:
    """The moisture of the wood through the run; None without wood."""
    check, names = review.check("years"), woods(review)
    if check is None or not names:
        return None
    run = check.data
    brought, carried = run.monthly().in_and_out
    limit = criterion("wood-moisture")
    return MoistureYear(
        days=run.time[::_EVERY] / 24,
        planes=tuple((name, moisture(run, name)[::_EVERY]) for name in names),
        bands=((limit.caution, "caution"), (limit.damage, "decay")),
        brought=brought,
        carried=carried,
        temperature=run.layer(names[0]).temperature[::_EVERY],
    )
