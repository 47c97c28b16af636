"""Your roof: build it, weather it, check it, compare it, print it."""

from __future__ import annotations

import contextlib
import dataclasses
from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

from dryward import building, units
from dryward.building import layer_order
from dryward.building.framing import parallel_path
from dryward.building.job import Job, Room
from dryward.checks import PlainError
from dryward.panels import wetness
from dryward.panels.controls import Choice
from dryward.panels.desk import house, layers, parts
from dryward.panels.desk.draft import Draft
from dryward.panels.desk.results import DRAWS, Checking, Comparing, Printing
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import limits, steady
from dryward.pictures.profile import SectionAndProfile
from dryward.pictures.section import SteadyRoof
from dryward.report import setting as weathered
from dryward.verdict import Verdict, of_steady

SEASON = Choice("Season", "Month", (("winter", "coldest month"), ("summer", "warmest month")))
#: Largest weather file [bytes]; a year of hours takes 1.6 million.
EPW_LIMIT = 20_000_000
#: The field of the room that the humidity slider moves.
_FIELD = {"winter": "relative_humidity", "summer": "summer_relative_humidity"}
#: Humidities nearer than this are one: a slider rounds.
_SAME = 1e-9
#: What the search offers at most.
OFFERED = 12


@dataclass(frozen=True)
class State:
    """The roof between the two airs of one month."""

    here: Any
    indoor: Any
    outdoor: Any
    profile: steady.Profile
    whole: Any


class YourRoof(Page):
    """A desk for one's own roof under a live picture."""

    id = "your-roof"
    handles = (SEASON, "RH_in")
    draws = SectionAndProfile

    def __init__(self, *args, **keys):
        self.draft = Draft(Job(building.preset("vented-vault-variable")))
        self.checking, self.comparing, self.printing = Checking(self._news), Comparing(self._news), Printing()
        self.troubles, self.own, self.words = {}, layers.blank(), ""
        self.search, self.after, self.size = "", 0, ""
        self.wrong, self.wants_file = {}, False
        self._season, self._follows = "winter", self.draft.job.room.relative_humidity
        super().__init__(*args, **keys)
        self.size = "letter" if self.unit_system == "us" else "a4"
        if self.unit_system == "us":  # a room of whole degrees
            room = Room(temperature=units.to_si(70, "degF"), summer_temperature=units.to_si(75, "degF"))
            self.draft = Draft(dataclasses.replace(self.draft.job, room=room))
            self.follow()
        self.send_desk()

    def compute(self, at: SimpleNamespace) -> State:
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
        whole = parallel_path(roof) if roof.framing else None
        return State(here, indoor, outdoor, steady.profile(roof, indoor, outdoor), whole)

    def _given(self, here, season):
        """The room humidity of the season as it is given, without what a damp house adds."""
        room = self.draft.job.room
        if room.kind == "constant":
            return getattr(room, _FIELD[season])
        return weathered.room_air(weathered.room_rule(room), here.months, _month(here.months, season)).relative_humidity

    def _held_at(self, humidity, season):
        """The job with its rooms held at a humidity in a season: what the slider does, whatever rule they had."""
        room = dataclasses.replace(self.draft.job.room, **{"kind": "constant", _FIELD[season]: humidity})
        return dataclasses.replace(self.draft.job, room=room)

    def views(self, state):
        """The roof to scale, and its vapor line."""
        return SteadyRoof(self.draft.job.assembly, state.profile, state.indoor, state.outdoor)

    def numbers(self, state: State) -> list[Readout]:
        """R, humidity, gain; the outdoor air that was taken."""
        profile, node = state.profile, state.profile.wettest
        return [
            Readout("resistance", "R between framing", self.draft.job.assembly.thermal_resistance, "thermal resistance",
                    note=f"whole {self.show(state.whole, 'thermal resistance')}" if state.whole else ""),
            Readout("outdoor", "Outdoor air", state.outdoor.temperature, "temperature",
                    note=f"{state.outdoor.relative_humidity * 100:.0f} %, {state.here.place_name}"),
            Readout("dew_point_depth", "Dew-point line, depth", profile.dew_point_depth, "length"),
            Readout("highest_relative_humidity", "Highest humidity", float(profile.relative_humidity[node]),
                    "relative humidity", note=" / ".join(dict.fromkeys(profile.between(node)))),
            Readout("gain", "Water gained", profile.gain, "vapor flux", both=True),
        ]  # fmt: skip

    def judge(self, state: State) -> Verdict:
        """The month that never ends; no air leak is counted."""
        return of_steady(state.profile)

    def says(self, state: State) -> str:
        """What this month would do if it never ended."""
        profile, verdict = state.profile, self.judge(state)
        said = wetness.gathers(self, profile, verdict) if profile.wet_planes else wetness.settles(self, verdict)
        return f"If this month never ended, {said}. Air leaks, storage and sun come with the checks below."

    def strips(self, at: SimpleNamespace, state: State) -> dict[str, Any]:
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

    def desk(self):
        """All sections, as they stand now; what was typed wrong stays in its field."""
        system, draft = self.unit_system, self.draft
        sections = [
            self._file_section(),
            parts.section(
                "layers",
                "Layers",
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
    def unsaved(self):
        """Whether there are changes that are not saved; the browser warns when they would be left."""
        return self.draft.unsaved

    def _file_section(self):
        draft = self.draft
        state = "not saved yet" if draft.saved is None else "saved"
        roofs = [(id, building.preset(id).name) for id in building.presets()]
        kept = (
            parts.text("There are changes that are not saved.", "dw-trouble", alert=True)
            if draft.unsaved
            else parts.text(f"{draft.name}: {state}.", "dw-hint")
        )
        return parts.section(
            "file",
            "Your file",
            parts.row(
                parts.select("preset", "Start from", [("", "choose a roof"), *roofs], ""),
                parts.select("open", "Open", [("", "choose a file"), *((name, name) for name in draft.files())], ""),
                parts.upload("take", "from this computer", ".toml", 1_000_000),
                parts.field("name", "Save as", draft.wanted, size=18, error=self.troubles.get("save", "")),
                parts.button("save", "Save"),
                parts.button("undo", "Undo", disabled=not draft.can_undo),
                parts.button("redo", "Redo", disabled=not draft.can_redo),
            ),
            parts.row(
                parts.field(
                    "set:name",
                    "Name of the roof",
                    draft.job.assembly.name,
                    size=36,
                    error=self.troubles.get("set:name", ""),
                )
            ),
            kept,
            parts.text(self.words, "dw-trouble", alert=True) if self.words else None,
        )

    def _adding(self):
        found = building.search(self.search)[:OFFERED] if self.search else ()
        found = [(each.id if hasattr(each, "id") else each.origin.id, each) for each in found]
        now = [each.name for each in self.draft.job.assembly.layers]
        names = [(str(k), name) for k, name in enumerate(now)]
        put, over = ("the room", None) if self.after < 0 else (now[self.after], now[self.after])
        inside = [
            parts.row(
                parts.field(
                    "search", "Look in the library", self.search, size=24, hint="such as cellulose, poly, OSB, air"
                ),
                parts.select("after", "Highlighted layer", [("-1", "the room side"), *names], str(self.after)),
                parts.text("Add puts a layer outside of it; Replace keeps its name and thickness.", "dw-hint"),
            )
        ]
        if found:
            inside.append(layers.found_table(found, self.unit_system, put, over))
        elif self.search:
            inside.append(parts.text(f'The library has nothing called "{self.search}".', "dw-trouble", alert=True))
        return inside

    def _news(self):
        self.send_desk()

    def act(self, key, value=None, buffers=()):
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
            self._complain(key, "That could not be done; nothing was changed.")
        self.follow()
        self.send_desk()

    def _complain(self, key, sentence):
        if key.startswith(("layer:", "set:", "own:", "save", "name")):
            self.troubles["save" if key == "name" else key] = sentence
        else:
            self.words = sentence

    def _follow(self, humidity):
        """The slider follows the room of the job where it can."""
        if abs(self.controls["RH_in"].si - humidity) > _SAME:
            with contextlib.suppress(PlainError):  # beyond its ends
                self.controls["RH_in"].put(humidity * 100)
        self._follows = self.controls["RH_in"].si

    def _do(self, key, value, buffers):
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

    def _set(self, name, value):
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

    def _check(self, what):
        if what == "stop":
            self.checking.task.stop()
        else:
            self.checking.run(self.draft.job, DRAWS if what == "spread" else 0)

    def _compare(self, what, value):
        if what == "stop":
            self.comparing.task.stop()
        else:
            known = self.checking.of(self.draft.job)
            self.comparing.choose(self.draft, self.comparing.id if what == "again" else value, known)

    def _roof(self, roof):
        if len(roof.layers) != len(self.draft.job.assembly.layers):
            self._forget("layer:")
        self.draft.change(dataclasses.replace(self.draft.job, assembly=roof))
        self.after = min(self.after, len(roof.layers) - 1)

    def _forget(self, start=""):
        """Other rows, or another roof: what was typed wrong there is gone."""
        for kept in (self.troubles, self.wrong):
            for key in [key for key in kept if key.startswith(start)]:
                del kept[key]

    def _all_or_none(self, step, *what):
        """Take another job as a whole."""
        step(*what)
        self._forget()
        self.wants_file = False
        self.after = min(self.after, len(self.draft.job.assembly.layers) - 1)

    def _own(self, name, value):
        if name.startswith("add-"):
            self._put(layers.own_made(name.removeprefix("add-"), self.own))
        elif name in self.own:
            self.own[name] = str(value)[:200]

    def _print(self, what, value):
        if what == "size":
            self.size = value if value in ("letter", "a4") else self.size
        else:
            self.printing.make(self.checking.of(self.draft.job), self.draft, what, self.size, self.unit_system)

    def _put(self, substance):
        self._roof(layers.put(self.draft.job.assembly, self.after, substance))
        self.after += 1

    def _do_search(self, value, buffers):
        self.search = str(value)[:60]

    def _do_after(self, value, buffers):
        self.after = max(-1, min(int(value), len(self.draft.job.assembly.layers) - 1))

    def _do_preset(self, value, buffers):
        if value:
            job = dataclasses.replace(self.draft.job, assembly=building.preset(value))
            self._all_or_none(self.draft.start, job, f"my-{value}.toml")

    def _do_open(self, value, buffers):
        if value:
            self._all_or_none(self.draft.open, value)

    def _do_take(self, value, buffers):
        self._all_or_none(self.draft.take, buffers[0], str(value))

    def _do_take_too_large(self, value, buffers):
        self.words = f"{str(value)[-60:]}: it is larger than 1000000 bytes, too large for a roof."

    def _do_epw(self, value, buffers):
        name = self.draft.weather(buffers[0], value)
        self.draft.change(dataclasses.replace(self.draft.job, place=house.file_place(self.draft.job.place, name)))
        self.wants_file = False

    def _do_epw_too_large(self, value, buffers):
        self.words = f"{str(value)[-60:]}: it is larger than {EPW_LIMIT} bytes, too large for a weather file."

    def _do_name(self, value, buffers):
        self.draft.wanted = self.draft.path(value).name

    def _do_save(self, value, buffers):
        self.draft.save(self.draft.wanted)

    def _do_undo(self, value, buffers):
        self._all_or_none(self.draft.undo)

    def _do_redo(self, value, buffers):
        self._all_or_none(self.draft.redo)


def _month(months, season):
    """The month that stands for a season."""
    return months.coldest if season == "winter" else months.warmest


PAGE = YourRoof
