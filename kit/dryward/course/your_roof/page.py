"""Your roof: build it, weather it, check it, compare it, print it."""

from __future__ import annotations

import contextlib
import dataclasses
import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

from dryward import building, language, units
from dryward.building import layer_order
from dryward.building.framing import with_framing
from dryward.building.job import Job, Room
from dryward.checks import PlainError
from dryward.course.your_roof.beats import PLAY
from dryward.panels import readouts
from dryward.panels.controls import Choice
from dryward.panels.desk import house, layers, parts
from dryward.panels.desk.draft import Draft
from dryward.panels.desk.parts import Part
from dryward.panels.desk.results import DRAWS, Checking, Comparing, Printing
from dryward.panels.learner import Settings
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import limits, steady
from dryward.pictures.section import SectionAndProfile, SteadyRoof
from dryward.report import setting as weathered
from dryward.report.setting import Setting
from dryward.verdict import Verdict
from dryward.weather import Air, MonthlyClimate

message = language.beside(__file__)

SEASON = Choice(
    "Season", "your_roof.month", (("winter", "your_roof.coldest-month"), ("summer", "your_roof.warmest-month"))
)
#: Largest file of a roof [bytes].
ROOF_LIMIT = 1_000_000
#: Largest weather file [bytes]; a year of hours takes 1.6 million.
EPW_LIMIT = 20_000_000
#: Humidities nearer than this are one: a slider rounds.
_SAME = 1e-9
#: What the search offers at most.
OFFERED = 12


@dataclass(frozen=True)
class RoofInMonth:
    """The roof between the two airs of one month."""

    here: Setting
    indoor: Air
    outdoor: Air
    profile: steady.Profile
    #: Thermal resistance with the framing; None without [m2 K/W].
    whole: float | None


class YourRoof(Page):
    """A desk for one's own roof under a live picture."""

    id = "your-roof"
    handles = (SEASON, "RH_in")
    draws = SectionAndProfile
    play = PLAY

    def __init__(self, unit_system: str | None = None, settings: Settings | None = None) -> None:
        self.draft = Draft(Job(building.preset("vented-vault-variable")))
        kept = self._open_kept()
        self.checking, self.comparing, self.printing = Checking(self._news), Comparing(self._news), Printing()
        self.troubles: dict[str, str] = {}
        self.own, self.words = layers.blank(), ""
        self.search, self.after, self.size = "", 0, ""
        self.wrong: dict[str, str] = {}
        self.wants_file = False
        # The first look puts the slider at the job's own room.
        self._season, self._follows = "winter", math.nan
        super().__init__(unit_system, settings)
        self.size = "letter" if self.unit_system == "us" else "a4"
        if self.unit_system == "us" and not kept:  # a room of whole degrees
            room = Room(temperature=units.to_si(70, "degF"), summer_temperature=units.to_si(75, "degF"))
            self.draft = Draft(dataclasses.replace(self.draft.job, room=room))
            self.follow()
        self.send_desk()

    def _open_kept(self) -> bool:
        """Open the roof that was saved under the usual name; a file that cannot be read is for the desk to open."""
        with contextlib.suppress(PlainError):
            if self.draft.name in self.draft.files():
                self.draft.open(self.draft.name)
                return True
        return False

    def compute(self, at: SimpleNamespace) -> RoofInMonth:
        """The steady state of one month; the humidity slider is the job's own room in that season."""
        if at.Season == self._season and abs(at.RH_in - self._follows) > _SAME:
            self.draft.change(self._held_at(at.RH_in, at.Season), merge=f"RH_in {at.Season}")
            self.send_desk()  # its field of the humidity, and that the checks are of another roof
        self._season = at.Season
        here = weathered.setting(self.draft.job)
        winter = at.Season == "winter"
        self._follow(self._given(here, at.Season))
        indoor = here.winter_room if winter else here.summer_room
        outdoor = here.winter if winter else here.summer
        roof = self.draft.job.assembly
        whole = with_framing(roof).parallel if roof.framing else None
        return RoofInMonth(here, indoor, outdoor, steady.profile(roof, indoor, outdoor), whole)

    def _given(self, here: Setting, season: str) -> float:
        """The room humidity of the season as it is given, without what a damp house adds."""
        room = self.draft.job.room
        if room.kind == "constant":
            return room.relative_humidity if season == "winter" else room.summer_relative_humidity
        return weathered.room_air(weathered.room_rule(room), here.months, _month(here.months, season)).relative_humidity

    def _held_at(self, humidity: float, season: str) -> Job:
        """The job with its rooms held at a humidity in a season: what the slider does, whatever rule they had."""
        room = dataclasses.replace(self.draft.job.room, kind="constant")
        if season == "winter":
            room = dataclasses.replace(room, relative_humidity=humidity)
        else:
            room = dataclasses.replace(room, summer_relative_humidity=humidity)
        return dataclasses.replace(self.draft.job, room=room)

    def views(self, state: RoofInMonth) -> SteadyRoof:
        """The roof to scale, and its vapor line."""
        return SteadyRoof(self.draft.job.assembly, state.profile, state.indoor, state.outdoor)

    def numbers(self, state: RoofInMonth) -> list[Readout]:
        """R, humidity, gain; the outdoor air that was taken."""
        profile, node = state.profile, state.profile.dampest
        whole = ""
        if state.whole is not None:
            whole = message("resistance-note", whole=self.show(state.whole, "thermal resistance"))
        outdoors = message(
            "outdoor-note",
            humidity=self.show(state.outdoor.relative_humidity, "relative humidity"),
            place=state.here.place_name,
        )
        humid = float(profile.relative_humidity[node])
        roof = self.draft.job.assembly
        return [
            Readout("resistance", message("resistance"), roof.thermal_resistance, "thermal resistance", note=whole),
            Readout("outdoor", message("outdoor"), state.outdoor.temperature, "temperature", note=outdoors),
            Readout("dew_point_depth", message("dew-point-depth"), profile.dew_point_depth, "length"),
            Readout(
                "highest_relative_humidity",
                message("highest-relative-humidity"),
                humid,
                "relative humidity",
                note=self._between(state),
            ),
            Readout("gain", message("gain"), profile.gain, "vapor flux", both=True),
        ]

    def _between(self, state: RoofInMonth) -> str:
        """The layers on both sides of the wettest face, or the one it lies in."""
        inner, outer = map(language.called, state.profile.between(state.profile.dampest))
        return inner if inner == outer else message("humidity-note", inner=inner, outer=outer)

    def judge(self, state: RoofInMonth) -> Verdict:
        """The month that never ends; no air leak is counted."""
        return state.profile.verdict

    def says(self, state: RoofInMonth) -> str:
        """What this month would do if it never ended."""
        return message("month-for-ever", said=readouts.water(state.profile, self.judge(state), self.unit_system))

    def strips(self, at: SimpleNamespace, state: RoofInMonth) -> dict[str, Any]:
        """The state along the humidity this month, if it never ended."""
        months = state.here.months
        rooms = [
            weathered.room_air(weathered.design_room(self._held_at(each, at.Season)), months, _month(months, at.Season))
            for each in self.along("RH_in")
        ]
        found = limits.dry_range(
            self.draft.job.assembly,
            rooms[0],
            state.outdoor,
            "indoor_relative_humidity",
            [room.relative_humidity for room in rooms],
        )
        return {"RH_in": Strip(tuple(found.states))}

    # --- the desk ---------------------------------------------------------------

    def desk(self) -> list[Part]:
        """All sections, as they stand now; what was typed wrong stays in its field."""
        system, draft = self.unit_system, self.draft
        sections = [
            self._file_section(),
            parts.section(
                "layers",
                message("layers"),
                layers.table(draft.job.assembly, system, self.troubles, self.after),
                *(parts.text(words, "dw-trouble", alert=True) for words in layer_order.warnings(draft.job.assembly)),
                *self._adding(),
            ),
            layers.own_section(self.own, self.troubles),
            house.place_section(draft.job, system, self.troubles, EPW_LIMIT, self.wants_file),
            house.build_section(draft.job, system, self.troubles),
            self.checking.section(draft.job, system),
            self.comparing.section(draft, system, self.settings["projector"]),
            self.printing.section(self.size),
        ]
        for part in parts.typed_in(sections):
            part["value"] = self.wrong.get(part["key"], part["value"])
        return sections

    @property
    def unsaved(self) -> bool:
        """Whether there are changes that are not saved; the browser warns when they would be left."""
        return self.draft.unsaved

    def _file_section(self) -> Part:
        """Where the roof comes from, is kept and is named."""
        draft = self.draft
        state = message("file-new" if draft.saved is None else "file-saved", file=draft.name)
        roofs = [(id, language.called(building.preset(id).name)) for id in building.presets()]
        kept = (
            parts.text(message("file-unsaved"), "dw-trouble", alert=True)
            if draft.unsaved
            else parts.text(state, "dw-hint")
        )
        return parts.section(
            "file",
            message("file"),
            parts.row(
                parts.select("preset", message("file-start"), [("", message("file-choose-roof")), *roofs], ""),
                parts.select(
                    "open",
                    message("file-open"),
                    [("", message("file-choose")), *((name, name) for name in draft.files())],
                    "",
                ),
                parts.upload("take", message("file-upload"), ".toml", ROOF_LIMIT),
                parts.field("name", message("file-name"), draft.wanted, size=18, error=self.troubles.get("save", "")),
                parts.button("save", message("file-save")),
                parts.button("undo", message("file-undo"), disabled=not draft.can_undo),
                parts.button("redo", message("file-redo"), disabled=not draft.can_redo),
            ),
            parts.row(
                parts.field(
                    "set:name",
                    message("file-roof-name"),
                    draft.job.assembly.name,
                    size=36,
                    error=self.troubles.get("set:name", ""),
                )
            ),
            kept,
            parts.text(self.words, "dw-trouble", alert=True) if self.words else None,
        )

    def _adding(self) -> list[Part]:
        """The library, and where a layer of it goes."""
        known = building.search(self.search)[:OFFERED] if self.search else ()
        found = [(each.id, each) for each in known]
        now = [each.name for each in self.draft.job.assembly.layers]
        names = [(str(k), language.called(name)) for k, name in enumerate(now)]
        here = None if self.after < 0 else language.called(now[self.after])
        put, over = here or message("room-side"), here
        inside = [
            parts.row(
                parts.field(
                    "search",
                    message("search"),
                    self.search,
                    size=24,
                    hint=message("search-hint"),
                ),
                parts.select("after", message("after"), [("-1", message("after-room")), *names], str(self.after)),
                parts.text(message("after-hint"), "dw-hint"),
            )
        ]
        if found:
            inside.append(layers.found_table(found, self.unit_system, put, over))
        elif self.search:
            inside.append(parts.text(message("search-nothing", search=self.search), "dw-trouble", alert=True))
        return inside

    def _news(self) -> None:
        """A task in the background has something to tell."""
        self.send_desk()

    def act(self, key: str, value: Any = None, buffers: Sequence[Any] = ()) -> None:
        """One thing the reader did; what cannot be is said beside it, and nothing is lost."""
        self.words = ""
        try:
            self._do(key, value, buffers)
            self.troubles.pop("save" if key == "name" else key, None)
            self.wrong.pop(key, None)
        except PlainError as reason:
            self._complain(key, str(reason))
            if isinstance(value, str):
                self.wrong[key] = value[:200]
        except (ValueError, IndexError, AttributeError, TypeError, KeyError):  # no page of ours sends it
            self._complain(key, message("not-done"))
        self.follow()
        self.send_desk()

    def _complain(self, key: str, sentence: str) -> None:
        """A sentence where it belongs: beside its field, or under the file."""
        if key.startswith(("layer:", "set:", "own:", "save", "name")):
            self.troubles["save" if key == "name" else key] = sentence
        else:
            self.words = sentence

    def _follow(self, humidity: float) -> None:
        """The slider follows the room of the job where it can."""
        if abs(self.controls["RH_in"].si - humidity) > _SAME:
            with contextlib.suppress(PlainError):  # beyond its ends
                self.controls["RH_in"].put(humidity * 100)
            # Each beat begins with the controls at their start: that is the job's own room.
            self.controls["RH_in"].start = self.controls["RH_in"].value
        self._follows = self.controls["RH_in"].si

    def _do(self, key: str, value: Any, buffers: Sequence[Any]) -> None:
        """What was done on the desk, by its key."""
        draft = self.draft
        kind, _, rest = key.partition(":")
        if kind == "layer":
            row, _, what = rest.partition(":")
            self._roof(layers.edited(draft.job.assembly, int(row), what, value))
        elif kind == "set":
            self._set(rest, value)
        elif kind == "own":
            self._own(rest, value)
        elif kind == "check":
            self._check(rest)
        elif kind == "compare":
            self._compare(rest, value)
        elif kind == "add":
            self._put(building.substance(rest))
        elif kind == "replace":
            self._roof(layers.replaced(draft.job.assembly, self.after, building.substance(rest)))
        elif kind == "here":
            self._do_after(rest, buffers)
        elif kind == "print":
            self._print(rest, value)
        else:
            getattr(self, f"_do_{kind.replace('-', '_')}")(value, buffers)

    def _set(self, name: str, value: Any) -> None:
        """A field of place, room or build; a place is taken only when its weather can be read."""
        if name == "place.kind" and value == "file":
            self.wants_file = self.draft.job.place.kind != "file"
            return
        if name == "place.id" and self.wants_file:
            job = dataclasses.replace(self.draft.job, place=house.file_place(self.draft.job.place, value))
        else:
            job = house.changed(self.draft.job, name, value, self.unit_system)
        if name.startswith("place."):
            job = self.draft.at_home(job)
            weathered.setting(job)
            self.wants_file = self.wants_file and name == "place.zone"
        self.draft.change(job)

    def _check(self, what: str) -> None:
        """Run or stop the checks."""
        if what == "stop":
            self.checking.task.stop()
        else:
            self.checking.run(self.draft.job, DRAWS if what == "spread" else 0)

    def _compare(self, what: str, value: Any) -> None:
        """Run or stop a comparison."""
        if what == "stop":
            self.comparing.task.stop()
        else:
            known = self.checking.of(self.draft.job)
            self.comparing.choose(self.draft, self.comparing.id if what == "again" else value, known)

    def _roof(self, roof: building.Assembly) -> None:
        """Take another roof, and forget what was typed wrong in rows that moved."""
        if len(roof.layers) != len(self.draft.job.assembly.layers):
            self._forget("layer:")
        self.draft.change(dataclasses.replace(self.draft.job, assembly=roof))
        self.after = min(self.after, len(roof.layers) - 1)

    def _forget(self, start: str = "") -> None:
        """Other rows, or another roof: what was typed wrong there is gone."""
        for kept in (self.troubles, self.wrong):
            for key in [key for key in kept if key.startswith(start)]:
                del kept[key]

    def _all_or_none(self, step: Callable[..., object], *what: Any) -> None:
        """Take another job as a whole."""
        step(*what)
        self._forget()
        self.wants_file = False
        self.after = min(self.after, len(self.draft.job.assembly.layers) - 1)

    def _own(self, name: str, value: Any) -> None:
        """A field of an own material, or the whole of it added."""
        if name.startswith("add-"):
            self._put(layers.own_made(name.removeprefix("add-"), self.own))
        elif name in self.own:
            self.own[name] = str(value)[:200]

    def _print(self, what: str, value: Any) -> None:
        """The size of paper, or a report."""
        if what == "size":
            self.size = value if value in ("letter", "a4") else self.size
        else:
            self.printing.make(self.checking.of(self.draft.job), self.draft, what, self.size, self.unit_system)

    def _put(self, substance: Any) -> None:
        """Put a layer outside of the highlighted one."""
        self._roof(layers.put(self.draft.job.assembly, self.after, substance))
        self.after += 1

    def _do_search(self, value: Any, buffers: Sequence[Any]) -> None:
        self.search = str(value)[:60]

    def _do_after(self, value: Any, buffers: Sequence[Any]) -> None:
        self.after = max(-1, min(int(value), len(self.draft.job.assembly.layers) - 1))

    def _do_preset(self, value: Any, buffers: Sequence[Any]) -> None:
        if value:
            job = dataclasses.replace(self.draft.job, assembly=building.preset(value))
            self._all_or_none(self.draft.start, job, f"my-{value}.toml")

    def _do_open(self, value: Any, buffers: Sequence[Any]) -> None:
        if value:
            self._all_or_none(self.draft.open, value)

    def _do_take(self, value: Any, buffers: Sequence[Any]) -> None:
        self._all_or_none(self.draft.take, buffers[0], str(value))

    def _do_take_too_large(self, value: Any, buffers: Sequence[Any]) -> None:
        self.words = message("file-too-large", file=str(value)[-60:], limit=ROOF_LIMIT)

    def _do_epw(self, value: Any, buffers: Sequence[Any]) -> None:
        name = self.draft.weather(buffers[0], value)
        self.draft.change(dataclasses.replace(self.draft.job, place=house.file_place(self.draft.job.place, name)))
        self.wants_file = False

    def _do_epw_too_large(self, value: Any, buffers: Sequence[Any]) -> None:
        self.words = message("weather-too-large", file=str(value)[-60:], limit=EPW_LIMIT)

    def _do_name(self, value: Any, buffers: Sequence[Any]) -> None:
        self.draft.wanted = self.draft.path(value).name

    def _do_save(self, value: Any, buffers: Sequence[Any]) -> None:
        self.draft.save(self.draft.wanted)

    def _do_undo(self, value: Any, buffers: Sequence[Any]) -> None:
        self._all_or_none(self.draft.undo)

    def _do_redo(self, value: Any, buffers: Sequence[Any]) -> None:
        self._all_or_none(self.draft.redo)


def _month(months: MonthlyClimate, season: str) -> int:
    """The month that stands for a season."""
    return months.coldest if season == "winter" else months.warmest


PAGE = YourRoof
