"""What the report says and shows, before it is HTML or PDF."""

import datetime
import struct
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TypeAlias, cast

import numpy as np
from numpy.typing import NDArray

import dryward
from dryward import units
from dryward.building import Assembly, Layer, Material, codes, library
from dryward.checks import begun
from dryward.language import called, listing, message
from dryward.physics.hourly import Hours
from dryward.pictures.drawing import LivePicture
from dryward.pictures.exhibits import static
from dryward.pictures.section import SectionAndProfile, SteadyRoof
from dryward.pictures.year import MoistureYear, MonthBars, MonthlyWater, YearGraph
from dryward.report.check import CAN, CANNOT_TELL, MET, NOT_MET, Check, Number, Review, designed, worded
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
#: Signs that black-and-white paper keeps, by answer.
MARKS = {
    **dict.fromkeys((DRY, MET, WITHIN, CAN), "✓"),
    **dict.fromkeys((DAMP, LATER), "◆"),
    **dict.fromkeys((WET, NOT_MET, NEVER), "▲"),
    **dict.fromkeys((UNKNOWN, CANNOT_TELL), "?"),
}
#: Size of a picture that stands beside another [px], and pixels per inch of all.
_HALF, _DPI = (480, 380), 200
#: Units of plain numbers by the names of their messages.
_UNITS = {
    "% MC": "mass-percent",
    "of 6": "of-six",
    "days": "days",
    "h": "hours",
    "years": "years",
    "of what passed": "of-what-passed",
}


def legend() -> str:
    """What the signs mean."""
    return message("report.legend")


def newest_edition() -> str:
    """Which edition of a code is used; each row names its own."""
    return message("report.newest-edition")


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
    disclaimer: str


def document(review: Review, unit_system: str = "us", file: str = "", date: datetime.date | None = None) -> Document:
    """The printed page of a review."""
    here = setting(review.job)
    edition = message("report.code-rows-are", edition=newest_edition(), locally=codes.locally())
    return Document(
        title=called(review.job.assembly.name),
        file=file,
        date=(date or datetime.date.today()).isoformat(),
        version=dryward.__version__,
        headline=units.read_in(review.headline, unit_system),
        state=review.state,
        limits=review.limits,
        inputs=inputs(here, unit_system, review.hourly),
        layers=tuple(_layer(layer, unit_system) for layer in review.job.assembly.layers),
        pictures=_pictures(review, here, unit_system),
        checks=tuple(each.read_in(unit_system) for each in review.checks if not each.of_the_codes),
        rows=tuple(each.read_in(unit_system) for each in review.checks if each.of_the_codes),
        client=for_client(review, unit_system),
        inspector=for_inspector(review, unit_system),
        cautions=tuple(
            (message("report.caution", title=each.title), words.shown(each.text, unit_system)) for each in _cautions()
        ),
        notes=(*designs(review), *review.notes, units.grain_of_water(), edition),
        sources=sources(review.job.assembly),
        unit_system=unit_system,
        disclaimer=message("report.disclaimer"),
    )


def designs(review: Review) -> Iterator[str]:
    """The states of all design years, in a sentence; nothing where they were not run."""
    if review.designs:
        years = [
            message("report.labelled", label=designed(id), amount=worded(each.state)) for id, each in review.designs
        ]
        yield message("report.design-years", list=_after_each_other(years), leak=review.leaky is not None)


def _cautions() -> list[words.Caution]:
    known = {each.id: each for each in words.cautions()}
    return [known[id] for id in CAUTIONS if id in known]


def amount(number: Number, unit_system: str) -> str:
    """A number of a check, as it is printed."""

    def said(value: float | None) -> str:
        if value is None or value in (float("inf"), float("-inf")):
            return message("report.not-in-the-run" if number.unit == "days" else "report.straight-to-the-air")
        if number.quantity:
            if number.quantity == "opening":
                return units.opening(value, unit_system)
            # What rounding of the machine leaves over is nothing.
            small = number.quantity == "area density" and abs(value) < 1e-6
            if number.quantity == "area density" and abs(value) >= MUCH:
                return units.show_in(value, {"us": "lb/ft2", "si": "kg/m2"}[unit_system], 1)
            if number.quantity == "vapor flux" and value < 0:
                return message("report.takes-in", amount=units.show(-value, number.quantity, unit_system))
            return units.show(0.0 if small else value, number.quantity, unit_system)
        if number.id == BALANCE and abs(value) < 1e-6:
            return message("report.books-balance")
        return (
            message(f"report.amount-{_UNITS[number.unit]}", number=_bare(value, number.unit))
            if number.unit
            else _bare(value, "")
        )

    shown = said(number.value)
    if number.low is None or number.high is None:
        return shown
    low, high = said(number.low), said(number.high)
    if low == high == shown:
        return shown
    unit = shown.partition(" ")[2]
    if unit and low.endswith(f" {unit}"):
        low = low.removesuffix(f" {unit}")
    return message("report.band", shown=shown, low=low, high=high)


def _bare(value: float, unit: str) -> str:
    """A number without a unit of its own; a mold index knows one digit behind the point."""
    return units.number(value, 1) if unit == "of 6" else units.number(value, most=6)


def heads() -> dict[str, str]:
    """The heads of the page."""
    ids = ("client", "inspector", "inputs", "layers", "rows", "cautions")
    return {id: message(f"report.head-{id}") for id in ids} | {"checks": message("report.head-checks", legend=legend())}


def columns() -> tuple[str, ...]:
    """The heads of the table of layers."""
    return tuple(message(f"report.column-{id}") for id in ("layer", "thickness", "r", "vapor"))


def layer_cells(row: LayerRow) -> tuple[str, ...]:
    """A row of the table of layers, as it is printed."""
    name, substance, *rest = row
    whole = message("report.layer-and-substance", layer=name, substance=substance) if substance else name
    return (whole, *rest[:3])


def numbers(check: Check, unit_system: str) -> str:
    """All numbers of a check, one after the other."""
    said = [message("report.labelled", label=each.label, amount=amount(each, unit_system)) for each in check.numbers]
    return _after_each_other(said)


def _after_each_other(said: Sequence[str]) -> str:
    first, *others = said or ("",)
    for each in others:
        first = message("report.numbers", first=first, next=each)
    return first


def foot(document: Document) -> str:
    """The foot of the page: file, day and version."""
    told = {"date": document.date, "version": document.version}
    return (
        message("report.foot-of-file", file=document.file, **told) if document.file else message("report.foot", **told)
    )


def mark(check: Check) -> str:
    """A sign that black-and-white paper keeps: for the roof, near a limit, against it, not known."""
    return MARKS[check.answer]


def row_cells(row: Check) -> tuple[str, str, str]:
    """A code row as it is printed: its title, what was ruled, and where it stands with what it leaves open."""
    small = " ".join(message("report.sentence", said=each) for each in (row.source, begun(row.limits)))
    return row_title(row), row.what, small


def row_title(row: Check) -> str:
    """Mark and title of a code row."""
    return message("report.row-title", mark=mark(row), title=row.question)


def _layer(layer: Layer, system: str) -> LayerRow:
    substance = layer.substance
    permeance = layer.permeance
    if layer.vented:
        open_to = message("report.vented")
    elif permeance == float("inf"):
        open_to = message("report.open")
    else:
        open_to = units.show(permeance, "permeance", system)
    return (
        called(layer.name),
        called(substance.name) if substance.name != layer.name else "",
        units.thickness(layer.thickness, system) if layer.thickness else message("report.sheet"),
        units.r_value(layer.thermal_resistance, system) if layer.thermal_resistance else "",
        open_to,
        library.source_of(layer.substance),
    )


def sources(assembly: Assembly) -> tuple[str, ...]:
    """Where the values of the layers come from, each origin once."""
    found: dict[str, list[str]] = {}
    for layer in assembly.layers:
        found.setdefault(library.source_of(layer.substance), []).append(called(layer.name))
    return tuple(
        message("report.values-from", layers=listing(names), source=source.rstrip("."))
        for source, names in found.items()
    )


def _pictures(review: Review, here: Setting, system: str) -> tuple[Picture, ...]:
    made: list[tuple[LivePicture, object, str]] = []
    winter = review.check("winter")
    if winter is not None:
        roof = SteadyRoof(review.job.assembly, winter.data, here.winter_room, here.winter)
        made.append((SectionAndProfile(system, paper=True), roof, message("report.picture-winter")))
    months = review.check("twelve-months")
    if months is not None and months.data.planes:
        data = months.data
        water = MonthlyWater(
            tuple(m - 1 for m in data.month),
            tuple(data.condensed.sum(axis=1)),
            tuple(data.evaporated.sum(axis=1)),
            tuple(data.held.sum(axis=1)),
        )
        made.append((MonthBars(system, paper=True, size=_HALF), water, message("report.picture-twelve-months")))
    year = moisture_year(review) if review.hourly else None
    if year is not None:
        made.append((YearGraph(system, paper=True, size=_HALF), year, message("report.picture-years")))
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
    return 100.0 * held / cast(Material, layers[places[0]].substance).density


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
        planes=tuple((called(name), moisture(run, name)[::_EVERY]) for name in names),
        bands=((limit.caution, message("pictures.caution")), (limit.damage, message("pictures.decay"))),
        brought=brought,
        carried=carried,
        temperature=run.layer(names[0]).temperature[::_EVERY],
    )
