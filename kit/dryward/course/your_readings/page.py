"""Your readings: a logger file read, put right, shown as vapor pressure, and asked for its cause."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from types import SimpleNamespace
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from dryward import air, building, language, units
from dryward.building.job import Tightness
from dryward.checks import OutOfRange, PlainError, within
from dryward.course.your_readings.beats import NINETY, PLAY, Logger
from dryward.course.your_readings.scene import MOST_HUMID, LoggerTraces, Trace, Traces
from dryward.panels import hand
from dryward.panels.controls import Choice, Scale, Slider
from dryward.panels.desk import parts, readings
from dryward.panels.desk.parts import Part
from dryward.panels.learner import Settings
from dryward.panels.page import Page
from dryward.panels.readouts import Readout
from dryward.teaching.words import Step
from dryward.units import to_si
from dryward.weather import loggers

if TYPE_CHECKING:
    from dryward.physics.hourly import Hours

message = language.beside(__file__)

VIEW = Choice(
    "View",
    "your_readings.show",
    (
        ("readings", "your_readings.show-readings"),
        ("vapor", "your_readings.show-vapor"),
        ("model", "your_readings.show-model"),
    ),
)
_HOURS = Scale(-13, 13, 0, 1, "h")
OFFSETS = (
    Slider(
        "Offset_T",
        "your_readings.offset-temperature",
        "temperature difference",
        Scale(-5, 5, 0, 0.5),
        Scale(-3, 3, 0, 0.5),
        said="your_readings.offset-temperature-error",
    ),
    Slider(
        "Offset_RH",
        "your_readings.offset-humidity",
        "relative humidity",
        Scale(-10, 10, 0, 1),
        Scale(-10, 10, 0, 1),
        said="your_readings.offset-humidity-error",
    ),
    Slider("Shift", "your_readings.clock", "time", _HOURS, _HOURS, said="your_readings.clock-error"),
)
#: The houses by the letter they have on the page: their files tell what is wrong, and that is the question.
HOUSES = {
    "A": "cause-outdoor-air",
    "B": "cause-air-leak",
    "C": "cause-blocked-vents",
    "D": "cause-built-in-water",
    "E": "cause-rain-leak",
    "F": "cause-indoor-humidity",
}
#: What the readings of a dry roof point to.
_NONE = "outdoor air"
#: What the air of the roof may move like, and what that is called in the numbers.
_LIKE = {"room": "the room", "outdoors": "outdoors", "sun": "the sun"}
#: Over this a humidity is too much [-], rounding in the file is not; in fewer of the hours nothing is said.
_FULL, _RARE = 1.005, 0.005
#: Most points drawn of a line.
_POINTS = 3000


@dataclass(frozen=True)
class CavityRecord:
    """Records on one clock, the cavity's put right; the numbers, or why there are none; the model where it was run."""

    #: By place; "logger" where the file names none.
    records: dict[str, loggers.Record]
    found: loggers.Diagnosis | None
    why: str
    view: str
    model: tuple[Hours, NDArray[np.datetime64]] | None
    agreement: loggers.Agreement | None = None
    late: float | None = None


class YourReadings(Page):
    """Traces over a desk for the file."""

    id = "your-readings"
    handles = (VIEW, *OFFSETS)
    draws = Traces
    play = PLAY

    def __init__(self, unit_system: str | None = None, settings: Settings | None = None) -> None:
        self.file = readings.File.sample("cause-outdoor-air")
        self.troubles: dict[str, str] = {}
        self.words, self.said, self.shown = "", "", False
        self.roof, self.ach50 = "vented-vault-osb", ""
        self.model: tuple[Hours, NDArray[np.datetime64]] | None = None
        self.meter = {"reading": "17 %", "temperature": "20 F", "slope": "1", "offset": "0"}
        self.spot = {"humidity": "90 %", "temperature": "21 F"}
        super().__init__(unit_system, settings)

    def compute(self, at: SimpleNamespace) -> CavityRecord:
        """The records with the cavity's offsets, and what the diagnosis looks at."""
        records: dict[str, loggers.Record] = {}
        for record in self.file.readings.records:
            if record.place == "cavity":
                record = record.corrected(at.Offset_T, at.Offset_RH, at.Shift / 3600)
            records[record.place or "logger"] = record
        found, why = None, ""
        missing = [place for place in loggers.PLACES if place not in records]
        if missing:
            named = language.listing([_place(each) for each in missing])
            why = message("places-missing", places=named)
        else:
            try:
                found = loggers.diagnose(replace(self.file.readings, records=tuple(records.values())))
            except PlainError as reason:  # too short for a cause, but still to be looked at
                why = str(reason)
        if not any(np.isfinite(each.vapor_pressure).any() for each in records.values()):
            why = message("no-pairs")
        return CavityRecord(records, found, why, at.View, self.model, *self._agreement(records))

    def views(self, state: CavityRecord) -> LoggerTraces:
        """The lines of the view that was asked for."""
        origin = min(record.time[0] for record in state.records.values())
        start = str(origin.astype("datetime64[D]"))

        def trace(name: str, time: Any, values: Any) -> Trace:
            step = max(1, len(time) // _POINTS)
            return Trace(name, readings.days(time, origin)[::step], np.asarray(values)[::step])

        lines = [(_place(name), record) for name, record in state.records.items()]
        if state.view == "vapor":
            return LoggerTraces("vapor", tuple(trace(n, r.time, r.vapor_pressure) for n, r in lines), (), start)
        if state.view == "model":
            wood = self._wood(state, trace)
            if wood:
                return LoggerTraces("model", wood, (), start)
        return LoggerTraces(
            "readings",
            tuple(trace(n, r.time, r.temperature) for n, r in lines),
            tuple(trace(n, r.time, np.minimum(r.logged_humidity, MOST_HUMID)) for n, r in lines),
            start,
        )

    def _wood(self, state: CavityRecord, trace: Callable[..., Trace]) -> tuple[Trace, ...]:
        """Wood moisture as it was measured, put right, and as the model has it."""
        made = []
        cavity = state.records.get("cavity")
        if cavity is not None and cavity.moisture_content is not None:
            good = (
                np.isfinite(cavity.moisture_content) & np.isfinite(cavity.temperature) & (cavity.moisture_content <= 60)
            )
            dial, warm = cavity.moisture_content[good], np.clip(cavity.temperature[good], -35, 60)
            made.append(trace(message("wood-measured"), cavity.time[good], loggers.moisture_content(dial, warm)))
        if state.model is not None:
            run, time = state.model
            name, _ = readings.cold_face(run)
            made.append(trace(message("wood-modeled"), time, run.layer(name).moisture_content))
        return tuple(made)

    def numbers(self, state: CavityRecord) -> list[Readout]:
        """Shares, lag and margin, from the three places."""
        n = state.found.numbers if state.found else {}
        cavity = state.records.get("cavity", next(iter(state.records.values())))
        share, lag = n.get("share above outdoors"), n.get("lag behind the room")
        lag = None if lag is None or np.isnan(lag) else lag  # a roof that does not follow the room has none
        margin = n.get("dew point margin")
        bias = state.agreement.bias if state.agreement else None
        return [
            Readout("cavity_pressure", message("mean-pressure"), _mean(cavity.vapor_pressure),
                    "pressure", both=True),
            Readout("share_above_outdoors", message("above"), share, "relative humidity",
                    note="" if share is None else message("above-note")),
            self._lag(lag),
            Readout("margin", message("margin"), margin, "temperature difference", both=True),
            Readout("bias", message("bias"), bias, "pressure", text=message("bias-text") if bias is None else ""),
        ]  # fmt: skip

    def _lag(self, lag: float | None) -> Readout:
        """By how much the cavity follows the room; what moves before the room does not follow it."""
        when = _when(lag)
        text = message("lag-none") if when == "before" else _hours(lag)
        note = message("lag-before", hours=_hours(abs(lag))) if lag is not None and when == "before" else ""
        return Readout("lag", message("lag"), lag, text=text, note=note)

    def says(self, state: CavityRecord) -> str:
        """What the vapor pressures say, by the numbers that the cause is told by, and without naming it."""
        if not state.found:
            return state.why
        n = state.found.numbers
        likeness = {each: n[f"changes with {name}"] for each, name in _LIKE.items()}
        known = {each: value for each, value in likeness.items() if np.isfinite(value)}
        most = max(known, key=lambda each: known[each]) if known else "none"
        said = message("likeness", share=self.show(n["share above outdoors"], "relative humidity"), most=most)
        humid = state.records["cavity"].logged_humidity
        over = float(np.mean(humid[np.isfinite(humid)] > _FULL))
        return message("over-full", said=said, share=self.show(over, "relative humidity")) if over > _RARE else said

    def steps(self, state: CavityRecord) -> list[Step]:
        """One hour turned into vapor pressure at each place, and the cavity against outdoors."""
        cavity = state.records.get("cavity", next(iter(state.records.values())))
        good = np.flatnonzero(np.isfinite(cavity.vapor_pressure) & np.isfinite(cavity.temperature))
        if not good.size:
            return [Step(state.why, "", "")]
        k = int(good[len(good) // 2])
        when = cavity.time[k]
        time = str(when)[:16].replace("T", " ")
        lines = [self._hour(message("step-hour", place=cavity.place or "logger", time=time), cavity, k)]
        found: dict[str, float] = {}
        for place in ("outdoors", "indoors"):
            record = state.records.get(place)
            if record is None or record is cavity:
                continue
            j = _nearest(record, when)
            if j is not None:
                found[place] = float(record.vapor_pressure[j])
                lines.append(self._hour(message("step-same-hour", place=place), record, j))
        if "outdoors" in found and cavity.place == "cavity":
            inside, yard = float(cavity.vapor_pressure[k]), found["outdoors"]
            lines.append(
                Step(
                    message("step-compare"),
                    f"{self.show(inside, 'pressure')} − {self.show(yard, 'pressure')}",
                    self.show(inside - yard, "pressure"),
                )
            )
        return lines

    def _hour(self, words: str, record: loggers.Record, k: int) -> Step:
        """The vapor pressure of one row, by hand."""
        humidity = float(record.logged_humidity[k])
        saturation = float(record.vapor_pressure[k]) / humidity
        return hand.pressure(words, float(record.temperature[k]), humidity, saturation, self.unit_system)

    # --- the desk ---------------------------------------------------------------

    def desk(self) -> list[Part]:
        """The file, what was assumed, the cause, the meter and the model."""
        return [
            self._file_section(),
            readings.guess_section(self.file, self.troubles),
            self._cause_section(),
            self._spot_section(),
            self._meter_section(),
            self._model_section(),
        ]

    def _file_section(self) -> Part:
        """Which file is looked at."""
        samples = [(name, message("house", letter=letter)) for letter, name in HOUSES.items()]
        rest = (name for name in loggers.names() if name not in HOUSES.values())
        samples += [(name, message("sample", name=language.called(name.replace("-", " ")))) for name in rest]
        if self.file.name not in loggers.names():
            samples = [(self.file.name, self.file.name), *samples]
        return parts.section(
            "file",
            message("file"),
            parts.row(
                parts.select("sample", message("open"), samples, self.file.name),
                parts.upload("upload", message("file-upload"), ".csv,.txt", readings.LIMIT),
            ),
            parts.text(self.words, "dw-trouble", alert=True) if self.words else None,
            parts.text(
                self._frost(),
                "dw-hint",
            ),
        )

    def _frost(self) -> str:
        """What a logger shows in frost, and what that is over ice: in the air of the first beat."""
        cold = to_si(21.0, "degF")
        over_ice = NINETY * air.saturation_vapor_pressure(cold, over="water") / air.saturation_vapor_pressure(cold)
        return message(
            "frost-hint",
            cold=self.show(cold, "temperature", 0),
            ice=self.show(float(over_ice), "relative humidity"),
        )

    def _cause_section(self) -> Part:
        """What the reader thinks, then what the readings point to."""
        found = self.state.found if self.state else None
        inside = [
            parts.row(
                parts.select("cause", message("cause-ask"), _causes(), self.said),
                parts.button("show", message("cause-show"), disabled=not self.said or found is None),
            )
        ]
        if self.shown and found is not None:
            cause, guess = _cause(found.cause), _cause(self.said)
            inside += [
                parts.text(
                    message("they-point-to", cause=cause, guess=guess, right=found.cause == self.said), "dw-verdict"
                ),
                parts.items([units.read_in(each, self.unit_system) for each in found.evidence]),
            ]
        inside.append(parts.text(message("cause-order")))
        return parts.section("cause", message("cause-head"), *inside)

    def _spot_section(self) -> Part:
        """One reading of a logger under the deck: where wood there ends, and whether mold can start on it."""

        def field(name: str, label: str) -> Part:
            return parts.field(f"spot:{name}", label, self.spot[name], size=7)

        try:
            warm = units.quantity(self.spot["temperature"], "temperature")
            humid = units.quantity(self.spot["humidity"], "relative humidity", "%")
            at = Logger(within("Temperature", warm, -35, 60, "degC"), within("Relative humidity", humid, 0, 1, "%"))
            weeks = at.weeks
            text = message(
                "spot-goes-to",
                moisture=self.show(at.wood / 100, "relative humidity"),
                mold=weeks is not None,
                weeks="" if weeks is None else units.number(weeks, 0),
            )
            result = parts.text(text, "dw-verdict")
        except PlainError as error:
            result = parts.text(str(error), "dw-trouble", alert=True)
        return parts.section(
            "spot",
            message("spot-head"),
            parts.row(field("humidity", message("spot-humidity")), field("temperature", message("spot-temperature")),
                      result),
            parts.text(message("spot-hint"), "dw-hint"),
            fold="open",
        )  # fmt: skip

    def _meter_section(self) -> Part:
        """One reading of a pin meter, put right."""

        def field(name: str, label: str) -> Part:
            return parts.field(f"meter:{name}", label, self.meter[name], size=7)

        try:
            warm = units.quantity(self.meter["temperature"], "temperature")
            dial = units.quantity(self.meter["reading"], "relative humidity", "%") * 100
            true = loggers.moisture_content(dial, warm, float(self.meter["slope"]), float(self.meter["offset"]))
            result = parts.text(
                message("meter-corrected", moisture=self.show(true / 100, "relative humidity", 1)), "dw-verdict"
            )
        except (PlainError, ValueError) as error:
            words = str(error) if isinstance(error, PlainError) else message("meter-numbers")
            result = parts.text(words, "dw-trouble", alert=True)
        return parts.section(
            "meter",
            message("meter-head"),
            parts.row(field("reading", message("meter-dial")), field("temperature", message("meter-temperature")),
                      field("slope", message("meter-slope")), field("offset", message("meter-offset")), result),
            parts.text(message("meter-hint"), "dw-hint"),
            fold="open",
        )  # fmt: skip

    def _model_section(self) -> Part:
        """The model over the same hours, and how well it agrees."""
        roofs = [(id, language.called(building.preset(id).name)) for id in building.presets()]
        inside = [
            parts.row(
                parts.select("roof", message("model-roof"), roofs, self.roof),
                parts.field(
                    "ach50",
                    message("model-leak"),
                    self.ach50,
                    unit=message("model-leak-unit"),
                    size=5,
                    hint=message("model-no-leak"),
                    error=self.troubles.get("ach50", ""),
                ),
                parts.button("model", message("model-run")),
            )
        ]
        agreed = self.state.agreement if self.state else None
        if agreed is not None:
            inside.append(
                parts.text(
                    message(
                        "model-agreement",
                        bias=self.show(agreed.bias, "pressure"),
                        correlation=units.written(agreed.correlation, ".2f"),
                        hours=agreed.hours,
                        when=_when(self.state.late),
                        late=_hours(abs(self.state.late)) if self.state.late is not None else "",
                    )
                )
            )
        return parts.section("model", message("model-head"), *inside, fold="open")

    def act(self, key: str, value: Any = None, buffers: Sequence[Any] = ()) -> None:
        """One thing the reader did; a file that cannot be read changes nothing."""
        self.words = ""
        try:
            self._do(key, value, buffers)
            self.troubles.pop(key, None)
        except PlainError as reason:
            if key.startswith(("guess:", "ach50")):
                self.troubles[key] = str(reason)
            else:
                self.words = str(reason)
        except (ValueError, IndexError, TypeError):
            self.words = message("not-done")
        self.follow()
        self.send_desk()

    def _do(self, key: str, value: Any, buffers: Sequence[Any]) -> None:
        """What was done on the desk, by its key."""
        kind, _, rest = key.partition(":")
        if kind in ("sample", "upload"):
            if kind == "upload" or value in loggers.names():
                self.file = (
                    readings.File.sample(value) if kind == "sample" else readings.File.of(buffers[0], str(value))
                )
                self.troubles, self.said, self.shown, self.model = {}, "", False, None
        elif kind == "upload-too-large":
            self.words = message("file-too-large", file=str(value)[-60:], limit=readings.LIMIT)
        elif kind == "guess":
            readings.edited(self.file, rest, value)
            self.model = None
        elif kind == "cause":
            self.said, self.shown = str(value), False
        elif kind == "show":
            self.shown = True
        elif kind in ("meter", "spot") and rest in (known := {"meter": self.meter, "spot": self.spot}[kind]):
            known[rest] = str(value)[:20]
        elif kind == "roof":
            self.roof, self.model = str(value), None
        elif kind == "ach50":
            self.ach50, self.model = str(value).strip()[:10], None
            if self.ach50:
                self._tightness()
        elif kind == "model":
            self._run_model()

    def _tightness(self) -> float | None:
        """The air changes that were typed; None for none."""
        try:
            return Tightness(float(self.ach50)).ach50 if self.ach50 else None
        except ValueError:
            raise OutOfRange(message("model-leak-wrong", ach50=self.ach50)) from None

    def _run_model(self) -> None:
        """The model of the chosen roof over the hours of the readings."""
        run, time = readings.modelled(self.file.readings, building.preset(self.roof), ach50=self._tightness())
        readings.cold_face(run)  # a roof without one is refused here
        self.model = run, time

    def _agreement(self, records: dict[str, loggers.Record]) -> tuple[loggers.Agreement | None, float | None]:
        """How the model and the cavity, put right as it is now, agree; and how late the cavity is [h]."""
        if self.model is None:
            return None, None
        run, time = self.model
        warm, humid = run.face(*readings.cold_face(run))
        pressure = air.saturation_vapor_pressure(warm) * humid
        cavity = loggers.shared_clock(*(records[place] for place in loggers.PLACES))[1]
        _, mine, its = np.intersect1d(cavity.time, time, return_indices=True)
        late, _ = loggers.lag(pressure[its], cavity.vapor_pressure[mine])
        return loggers.agreement(cavity.vapor_pressure[mine], pressure[its]), late


def _place(place: str) -> str:
    """What a place of the logger is called."""
    return message(f"place-{place}")


def _cause(cause: str) -> str:
    """What a cause is called."""
    return message(f"cause-{cause.replace(' ', '-')}")


def _causes() -> list[tuple[str, str]]:
    """The causes to choose from."""
    named = [(cause, _cause(cause)) for cause in loggers.CAUSES]
    return [("", message("choose-one")), *named, (_NONE, message("cause-none"))]


def _nearest(record: loggers.Record, when: np.datetime64) -> int | None:
    """The row nearest to a time, where it is within the hour and all is known; else None."""
    apart = np.abs(record.time - when)
    j = int(apart.argmin())
    known = np.isfinite(record.vapor_pressure[j]) and record.relative_humidity[j] > 0
    return j if known and apart[j] <= np.timedelta64(1, "h") else None


def _mean(values: NDArray[np.float64]) -> float | None:
    """The mean of what is known of them."""
    known = values[np.isfinite(values)]
    return float(known.mean()) if known.size else None


def _when(lag: float | None) -> str:
    """Whether what lags comes after, before or together with the other; unknown where no lag is found."""
    if lag is None or np.isnan(lag):
        return "unknown"
    hours = round(lag)
    return "together" if hours == 0 else "after" if hours > 0 else "before"


def _hours(lag: float | None) -> str:
    """A lag in hours."""
    if lag is None or np.isnan(lag):
        return message("no-lag")
    return message("hours", hours=units.number(lag, 0))


PAGE = YourReadings
