"""What stands on the printed page, before it is HTML or PDF."""

import datetime
from dataclasses import dataclass

import dryward
from dryward import units
from dryward.building import Material, codes
from dryward.pictures.months import Months, MonthsState
from dryward.pictures.printed import static
from dryward.pictures.profile import ProfileState, SectionAndProfile
from dryward.pictures.year import Year
from dryward.report import year_picture
from dryward.report.sentences import for_client, for_inspector
from dryward.report.setting import setting
from dryward.teaching import words

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
DISCLAIMER = (
    "A calculation for teaching and planning. It is no permit, no test report, no engineer's seal and no inspection. "
    "The locally adopted code and the building official rule; a licensed designer signs."
)


@dataclass(frozen=True)
class Picture:
    """A picture of the page: PNG bytes, the words for those who cannot see it."""

    png: bytes
    alt: str
    title: str


@dataclass(frozen=True)
class Sheet:
    """All that is printed.

    Attributes
    ----------
    title, file, date, version, verdict : str
    inputs : tuple of (label, value)
    layers : tuple of (name, substance, thickness, R, permeance, source)
    pictures : tuple of Picture
    findings, rows : tuple of Finding
        The checks, and the code rows.
    client, inspector : tuple of str
    cautions : tuple of (title, text)
    notes : tuple of str
    """

    title: str
    file: str
    date: str
    version: str
    verdict: str
    inputs: tuple
    layers: tuple
    pictures: tuple
    findings: tuple
    rows: tuple
    client: tuple
    inspector: tuple
    cautions: tuple
    notes: tuple
    unit_system: str
    disclaimer: str = DISCLAIMER


def sheet(review, unit_system="us", file="", date=None):
    """The printed page of a review.

    Parameters
    ----------
    review : Review
    unit_system : {"us", "si"}
    file : str, optional
        Name of the job's file.
    date : datetime.date, optional
        Otherwise today.

    Returns
    -------
    Sheet
    """
    here = setting(review.job)
    return Sheet(
        title=review.job.assembly.name,
        file=file,
        date=(date or datetime.date.today()).isoformat(),
        version=dryward.__version__,
        verdict=review.verdict,
        inputs=_inputs(here, unit_system),
        layers=tuple(_layer(layer, unit_system) for layer in review.job.assembly.layers),
        pictures=_pictures(review, here, unit_system),
        findings=tuple(each for each in review.findings if not each.id.startswith("code-")),
        rows=tuple(each for each in review.findings if each.id.startswith("code-")),
        client=for_client(review, unit_system),
        inspector=for_inspector(review, unit_system),
        cautions=tuple((each.title, each.text) for each in _cautions()),
        notes=(*review.notes, f"Code rows: {codes.LOCALLY}."),
        unit_system=unit_system,
    )


def _cautions():
    known = {each.id: each for each in words.cautions()}
    return [known[id] for id in CAUTIONS if id in known]


def amount(number, unit_system):
    """A number of a finding, as it is printed.

    Parameters
    ----------
    number : Number
    unit_system : {"us", "si"}

    Returns
    -------
    str
    """

    def said(value):
        if value in (float("inf"), float("-inf")):
            return "straight to the air"
        if number.quantity:
            return units.show(value, number.quantity, unit_system)
        text = f"{value:.1e}" if 0 < abs(value) < 1e-3 else f"{value:.4g}"
        return f"{text} {number.unit}".strip()

    if number.low is None or number.high is None:
        return said(number.value)
    return f"{said(number.value)} ({said(number.low)} to {said(number.high)})"


def _inputs(here, system):
    job = here.job
    rows = [
        ("Place", here.place_name + (f", zone {job.place.zone}" if job.place.zone else "")),
        (
            "Coldest month",
            f"{units.show(here.winter.temperature, 'temperature', system)}, "
            f"{units.show(here.winter.relative_humidity, 'relative humidity', system)}",
        ),
        (
            "Warmest month",
            f"{units.show(here.summer.temperature, 'temperature', system)}, "
            f"{units.show(here.summer.relative_humidity, 'relative humidity', system)}",
        ),
        (
            "Room air",
            f"{job.room.kind}: {units.show(job.room.temperature, 'temperature', system)}, "
            f"{units.show(job.room.relative_humidity, 'relative humidity', system)}",
        ),
        (
            "Thermal resistance between framing",
            units.show(job.assembly.thermal_resistance, "thermal resistance", system),
        ),
        ("Slope, facing", f"{job.assembly.slope:.0f}°, {job.azimuth:.0f}° from north"),
    ]
    if job.assembly.framing:
        from dryward.building.framing import parallel_path

        rows.append(
            (
                f"Whole assembly, {job.assembly.framing.share * 100:.0f} % framing",
                units.show(parallel_path(job.assembly), "thermal resistance", system),
            )
        )
    if job.tightness:
        rows.append(
            ("Blower door", f"{job.tightness.ach50:.2g}/h at 50 Pa, {job.tightness.share * 100:.0f} % through the roof")
        )
    if job.vent:
        rows.append(("Vent path", units.show(job.vent.length, "length", system)))
    return tuple(rows)


def _layer(layer, system):
    substance = layer.substance
    origin = substance if hasattr(substance, "source") else substance.origin
    source = ", ".join(part for part in (origin.source, origin.where) if part)
    permeance = layer.permeance
    return (
        layer.name,
        substance.name if substance.name != layer.name else "",
        units.show(layer.thickness, "length", system) if layer.thickness else "sheet",
        units.show(layer.thermal_resistance, "thermal resistance", system) if layer.thermal_resistance else "",
        "vented"
        if layer.vented
        else ("open" if permeance == float("inf") else units.show(permeance, "permeance", system)),
        source or "own value",
        isinstance(substance, Material),
    )


def _pictures(review, here, system):
    made = []
    winter = review.finding("winter")
    if winter is not None:
        state = ProfileState(review.job.assembly, winter.data, here.winter_room, here.winter)
        made.append((SectionAndProfile(system, paper=True), state, "The coldest month"))
    months = review.finding("twelve-months")
    if months is not None and months.data.planes:
        data = months.data
        state = MonthsState(
            tuple(m - 1 for m in data.month),
            tuple(data.condensed.sum(axis=1)),
            tuple(data.evaporated.sum(axis=1)),
            tuple(data.held.sum(axis=1)),
        )
        made.append((Months(system, paper=True), state, "Twelve months"))
    years = review.finding("years")
    year = year_picture.state(review) if years is not None and years.data is not None else None
    if year is not None:
        made.append((Year(system, paper=True), year, "Hour by hour"))
    return tuple(Picture(static(picture, state, dpi=150), picture.alt(state), title) for picture, state, title in made)
