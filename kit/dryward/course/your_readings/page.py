"""Your readings: a logger file read, put right, shown as vapor pressure, and asked for its cause."""

from __future__ import annotations

from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

import numpy as np

from dryward import air, building, language, units
from dryward.building.job import Tightness
from dryward.checks import OutOfRange, PlainError
from dryward.course.your_readings.scene import LoggerTraces, Trace, Traces
from dryward.panels import hand
from dryward.panels.controls import Choice, Scale, Slider
from dryward.panels.desk import parts, readings
from dryward.panels.page import Page
from dryward.panels.readouts import Readout
from dryward.teaching.words import Step
from dryward.weather import loggers

message = language.beside(__file__)

VIEW = Choice(
    message("view"),
    message("show"),
    (
        ("readings", message("as-logged-t-and")),
        ("vapor", message("as-vapor-pressure")),
        ("model", message("wood-with-the-model")),
    ),
)
_HOURS = Scale(-13, 13, 0, 1, "h")
OFFSETS = (
    Slider(
        message("offset-t"),
        message("cavity-sensor-reads-low"),
        "temperature difference",
        Scale(-5, 5, 0, 0.5),
        Scale(-3, 3, 0, 0.5),
        said=message("error-of-the-cavity"),
    ),
    Slider(
        message("offset-rh"),
        message("cavity-humidity-reads-low"),
        "relative humidity",
        Scale(-10, 10, 0, 1),
        Scale(-10, 10, 0, 1),
        said=message("error-of-the-cavity-2"),
    ),
    Slider(
        message("shift"), message("cavity-clock-is-slow"), "time", _HOURS, _HOURS, said=message("error-of-the-cavity-3")
    ),
)
CAUSES = (
    ("", message("choose-one")),
    *((cause, cause) for cause in loggers.CAUSES),
    (message("outdoor-air"), message("none-it-follows-outdoors")),
)
#: Most points drawn of a line.
_POINTS = 3000


@dataclass(frozen=True)
class State:
    """Records on one clock, the cavity's put right; the numbers, or why there are none; the model where it was run."""

    records: dict
    found: Any
    why: str
    view: str
    model: tuple | None
    agreement: Any = None
    late: float | None = None


class YourReadings(Page):
    """Traces over a desk for the file."""

    id = "your-readings"
    handles = (VIEW, *OFFSETS)
    draws = Traces

    def __init__(self, *args, **keys):
        self.file = readings.File.sample("cause-air-leak")
        self.troubles, self.words, self.said, self.shown = {}, "", "", False
        self.roof, self.ach50, self.model = "vented-vault-osb", "", None
        self.meter = {"reading": "15 %", "temperature": "50 F", "slope": "1", "offset": "0"}
        super().__init__(*args, **keys)

    def compute(self, at: SimpleNamespace) -> State:
        """The records with the cavity's offsets, and what the diagnosis looks at."""
        records = {}
        for record in self.file.readings.records:
            if record.place == "cavity":
                record = record.corrected(at.Offset_T, at.Offset_RH, at.Shift / 3600)
            records[record.place or message("the-logger")] = record
        found, why = None, ""
        missing = [place for place in loggers.PLACES if place not in records]
        if missing:
            lacking = ", ".join(missing)
            why = message("to-look-for-a", lacking=lacking)
        else:
            try:
                found = loggers.diagnose(_Readings(records))
            except PlainError as reason:  # too short for a cause, but still to be looked at
                why = str(reason)
        if not any(np.isfinite(each.vapor_pressure).any() for each in records.values()):
            why = message("no-hour-has-both")
        return State(records, found, why, at.View, self.model, *self._agreement(records))

    def views(self, state):
        """The lines of the view that was asked for."""
        origin = min(record.time[0] for record in state.records.values())
        start = str(origin.astype("datetime64[D]"))

        def trace(name, time, values):
            step = max(1, len(time) // _POINTS)
            return Trace(name, readings.days(time, origin)[::step], np.asarray(values)[::step])

        lines = [(name, record) for name, record in state.records.items()]
        if state.view == "vapor":
            return LoggerTraces("vapor", tuple(trace(n, r.time, r.vapor_pressure) for n, r in lines), (), start)
        if state.view == "model":
            wood = self._wood(state, trace)
            if wood:
                return LoggerTraces("model", wood, (), start)
        return LoggerTraces(
            "readings",
            tuple(trace(n, r.time, r.temperature) for n, r in lines),
            tuple(trace(n, r.time, np.minimum(r.relative_humidity, 1.1)) for n, r in lines),
            start,
        )

    def _wood(self, state, trace):
        made = []
        cavity = state.records.get("cavity")
        if cavity is not None and cavity.moisture_content is not None:
            good = (
                np.isfinite(cavity.moisture_content) & np.isfinite(cavity.temperature) & (cavity.moisture_content <= 60)
            )
            dial, warm = cavity.moisture_content[good], np.clip(cavity.temperature[good], -35, 60)
            made.append(trace(message("measured-corrected"), cavity.time[good], loggers.moisture_content(dial, warm)))
        if state.model is not None:
            run, time = state.model
            name, _ = readings.cold_face(run)
            made.append(trace("modeled", time, run.layer(name).moisture_content))
        return tuple(made)

    def numbers(self, state: State) -> list[Readout]:
        """Shares, lag and margin, from the three places."""
        n = state.found.numbers if state.found else {}
        cavity = state.records.get("cavity", next(iter(state.records.values())))
        share, lag = n.get(message("share-above-outdoors")), n.get(message("lag-behind-the-room"))
        margin = n.get(message("dew-point-margin"))
        bias = state.agreement.bias if state.agreement else None
        return [
            Readout("cavity_pressure", message("cavity-pressure"), _mean(cavity.vapor_pressure),
                    "pressure", both=True),
            Readout("share_above_outdoors", message("share-above-outdoors-2"), share, "relative humidity",
                    note="" if share is None else message("share-above-outdoors-note-else")),
            Readout("lag", message("lag"), lag, text=_hours(lag)),
            Readout("margin", message("margin"), margin, "temperature difference", both=True),
            Readout("bias", message("bias"), bias, "pressure", text=message("bias-text") if bias is None else ""),
        ]  # fmt: skip

    def says(self, state: State) -> str:
        """What the vapor pressures say, without naming the cause."""
        if not state.found:
            return state.why
        n = state.found.numbers
        likeness = {
            message("the-room"): n["likeness with the room"],
            "outdoors": n["likeness with outdoors"],
            message("the-sun-on-the"): n["changes with the sun"],
        }
        most = max(likeness, key=likeness.get)
        return message("in-of-the-hours", n=f"{n['share above outdoors'] * 100:.0f}", most=most)

    def steps(self, state: State) -> list[Step]:
        """One hour turned into vapor pressure at each place, and the cavity against outdoors."""
        cavity = state.records.get("cavity", next(iter(state.records.values())))
        good = np.flatnonzero(np.isfinite(cavity.vapor_pressure) & np.isfinite(cavity.temperature))
        if not good.size:
            return [Step(state.why, "", "")]
        k = int(good[len(good) // 2])
        when = cavity.time[k]
        name = {"": message("the-logger-2"), "cavity": message("the-cavity")}.get(
            cavity.place, cavity.place.capitalize()
        )
        lines = [self._hour(message("at", name=name, replace=str(when)[:16].replace("T", " ")), cavity, k)]
        found = {}
        for place in ("outdoors", "indoors"):
            record = state.records.get(place)
            j = None if record is None or record is cavity else _nearest(record, when)
            if j is not None:
                found[place] = float(record.vapor_pressure[j])
                lines.append(self._hour(message("the-same-hour", capitalize=place.capitalize()), record, j))
        if "outdoors" in found and cavity.place == "cavity":
            inside, yard = float(cavity.vapor_pressure[k]), found["outdoors"]
            lines.append(
                Step(
                    message("step-compare-the-cavity-less"),
                    f"{self.show(inside, 'pressure')} − {self.show(yard, 'pressure')}",
                    self.show(inside - yard, "pressure"),
                )
            )
        return lines

    def _hour(self, words, record, k):
        humidity = float(record.relative_humidity[k])
        saturation = float(record.vapor_pressure[k]) / humidity
        return hand.pressure(words, float(record.temperature[k]), humidity, saturation, self.unit_system)

    # --- the desk ---------------------------------------------------------------

    def desk(self):
        """The file, what was assumed, the cause, the meter and the model."""
        return [
            self._file_section(),
            readings.guess_section(self.file, self.troubles),
            self._cause_section(),
            self._meter_section(),
            self._model_section(),
        ]

    def _file_section(self):
        samples = [(name, f"sample: {name.replace('-', ' ')}") for name in loggers.names()]
        if self.file.name not in loggers.names():
            samples = [(self.file.name, self.file.name), *samples]
        return parts.section(
            "file",
            message("the-file"),
            parts.row(
                parts.select("sample", message("open"), samples, self.file.name),
                parts.upload("upload", message("or-a-csv-from"), ".csv,.txt", readings.LIMIT),
            ),
            parts.text(self.words, "dw-trouble", alert=True) if self.words else None,
            parts.text(
                message("in-frost-a-humidity"),
                "dw-hint",
            ),
        )

    def _cause_section(self):
        found = self.state.found if self.state else None
        inside = [
            parts.row(
                parts.select("cause", message("what-do-you-think"), CAUSES, self.said),
                parts.button("show", message("show-what-the-readings"), disabled=not self.said or found is None),
            )
        ]
        if self.shown and found is not None:
            right = message("you-said-the-same") if found.cause == self.said else message("you-said", said=self.said)
            inside += [
                parts.text(message("they-point-to", cause=found.cause, right=right), "dw-verdict"),
                parts.items(found.evidence),
            ]
        inside.append(parts.text(message("ask-in-this-order")))
        return parts.section("cause", message("what-wets-it"), *inside)

    def _meter_section(self):
        def field(name, label):
            return parts.field(f"meter:{name}", label, self.meter[name], size=7)

        try:
            warm = units.quantity(self.meter["temperature"], "temperature")
            dial = units.quantity(self.meter["reading"], "relative humidity", "%") * 100
            true = loggers.moisture_content(dial, warm, float(self.meter["slope"]), float(self.meter["offset"]))
            result = parts.text(message("corrected-mc", true=f"{true:.1f}"), "dw-verdict")
        except (PlainError, ValueError) as error:
            words = str(error) if isinstance(error, PlainError) else message("slope-and-offset-must")
            result = parts.text(words, "dw-trouble", alert=True)
        return parts.section(
            "meter",
            message("a-pin-meters-reading"),
            parts.row(field("reading", message("on-the-dial")), field("temperature", message("wood-temperature")),
                      field("slope", message("species-slope")), field("offset", message("species-offset")), result),
            parts.text(message("slope-and-offset-stand"), "dw-hint"),
            fold="open",
        )  # fmt: skip

    def _model_section(self):
        roofs = [(id, building.preset(id).name) for id in building.presets()]
        inside = [
            parts.row(
                parts.select("roof", message("roof-to-compare-with"), roofs, self.roof),
                parts.field(
                    "ach50",
                    message("blower-door-of-the"),
                    self.ach50,
                    unit=message("air-changes-at-50"),
                    size=5,
                    hint=message("empty-no-air-leak"),
                    error=self.troubles.get("ach50", ""),
                ),
                parts.button("model", message("run-the-model-over")),
            )
        ]
        agreed = self.state.agreement if self.state else None
        if agreed is not None:
            inside.append(
                parts.text(
                    message(
                        "vapor-pressure-at-the",
                        bias=self.show(agreed.bias, "pressure"),
                        correlation=f"{agreed.correlation:.2f}",
                        hours=agreed.hours,
                        late=_hours(self.state.late),
                    )
                )
            )
        return parts.section("model", message("measured-against-modeled"), *inside, fold="open")

    def act(self, key, value=None, buffers=()):
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
            self.words = message("that-could-not-be")
        self.follow()
        self.send_desk()

    def _do(self, key, value, buffers):
        kind, _, rest = key.partition(":")
        if kind in ("sample", "upload"):
            if kind == "upload" or value in loggers.names():
                self.file = (
                    readings.File.sample(value) if kind == "sample" else readings.File.of(buffers[0], str(value))
                )
                self.troubles, self.said, self.shown, self.model = {}, "", False, None
        elif kind == "upload-too-large":
            self.words = message("it-is-larger-than", amount=str(value)[-60:], limit=readings.LIMIT)
        elif kind == "guess":
            readings.edited(self.file, rest, value)
            self.model = None
        elif kind == "cause":
            self.said, self.shown = str(value), False
        elif kind == "show":
            self.shown = True
        elif kind == "meter" and rest in self.meter:
            self.meter[rest] = str(value)[:20]
        elif kind == "roof":
            self.roof, self.model = str(value), None
        elif kind == "ach50":
            self.ach50, self.model = str(value).strip()[:10], None
            if self.ach50:
                self._tightness()
        elif kind == "model":
            self._run_model()

    def _tightness(self):
        """The air changes that were typed; None for none."""
        try:
            return Tightness(float(self.ach50)).ach50 if self.ach50 else None
        except ValueError:
            raise OutOfRange(message("air-changes-at-50-2", ach50=self.ach50)) from None

    def _run_model(self):
        run, time = readings.modelled(self.file.readings, building.preset(self.roof), ach50=self._tightness())
        readings.cold_face(run)  # a roof without one is refused here
        self.model = run, time

    def _agreement(self, records):
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


class _Readings:
    """Records by place, as the diagnosis takes them."""

    def __init__(self, records):
        self._records = records

    def __getitem__(self, place):
        return self._records[place]


def _nearest(record, when):
    """The row nearest to a time, where it is within the hour and all is known; else None."""
    apart = np.abs(record.time - when)
    j = int(apart.argmin())
    known = np.isfinite(record.vapor_pressure[j]) and record.relative_humidity[j] > 0
    return j if known and apart[j] <= np.timedelta64(1, "h") else None


def _mean(values):
    known = values[np.isfinite(values)]
    return float(known.mean()) if known.size else None


def _hours(lag):
    if lag is None or np.isnan(lag):
        return message("none-found")
    return f"{lag:.0f} h"


PAGE = YourReadings
