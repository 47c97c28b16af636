"""Start here: the first water, then the way through, what is done, what is due, and how the pages look."""

from __future__ import annotations

from collections.abc import Sequence
from types import SimpleNamespace
from typing import Any

from dryward import language, units
from dryward.checks import PlainError
from dryward.course.start import first_water
from dryward.course.start.beats import PLAY
from dryward.course.start.first_water import FirstWater
from dryward.panels.controls import Choice
from dryward.panels.desk import parts
from dryward.panels.page import Page
from dryward.panels.readouts import Readout
from dryward.teaching import lessons, paper, pathways
from dryward.teaching.questions import Question

message = language.beside(__file__)

#: Sizes of type offered, 16 being usual; a projector has its own.
SIZES = {"16": "start.type-usual", "18": "start.type-larger", "20": "start.type-large"}
#: What is done to the roof of the first water, and where it stands.
DONE = Choice("Done", "start.done", tuple((each, f"start.done-{each}") for each in first_water.DONE))
PLACE = Choice("Place", "start.place", tuple((each, f"start.place-{each}") for each in first_water.PLACES))
#: What somebody may want to know, and the lesson that begins it.
WANTS = {
    "ground": "read-the-air",
    "winter": "where-it-gets-wet",
    "summer": "july",
    "leaks": "the-hole-and-the-ceiling",
    "vents": "vent-space",
    "readings": "your-readings",
    "roof": "your-roof",
}
#: Numbers of the quiz that is printed first.
FIRST_SEED = 1


class Start(Page):
    """The first water in a few beats; then the index, with no sliders and no picture: a plan and settings."""

    id = "start"
    handles = ("RH_in", DONE, PLACE)
    draws = ()
    play = PLAY
    benched = False

    def __init__(self, *args: Any, **keys: Any) -> None:
        self.quiz_seed, self.quiz_asks, self.words = str(FIRST_SEED), paper.SETS[0], ""
        #: Quiz and key, as files.
        self.quiz: dict[str, bytes] = {}
        #: The ten questions once they are shown, and the choices taken by their numbers.
        self.test: tuple[Question, ...] | None = None
        self.said: dict[int, str] = {}
        self.plan: tuple[str, ...] = ()
        super().__init__(*args, **keys)

    def compute(self, at: SimpleNamespace) -> Any:
        """The first water; what else is told is what the learner's file says."""
        return first_water.in_january(at.Done, at.Place, at.RH_in)

    def given(self, state: FirstWater) -> str:
        """What no control moves; the index holds nothing."""
        if not self.stage.on:
            return ""
        fill = units.thickness(state.roof.layer("insulation").drawn_thickness, self.unit_system)
        return message(
            "given",
            room=self.held(first_water.WARM, "temperature"),
            fill=fill,
            push=units.show_in(first_water.PUSH, "Pa", 0),
            area=self.area_held(first_water.AREA),
        )

    def numbers(self, state: Any) -> list[Readout]:
        """None: the plan below has them."""
        return []

    def says(self, state: Any) -> str:
        """Where to go on."""
        progress = self.settings.progress
        done = sum(progress.finished(id) is not None for id in lessons.pages())
        on = progress.resume()
        if on is None:
            return message("all-done", done=done)
        title = lessons.lesson(on).title
        return message("go-on-with", done=done, pages=len(lessons.pages()), title=title)

    def seen(self) -> None:
        """Take in what other windows have kept meanwhile."""
        self.settings.refresh()
        self.follow()
        self.send_desk()

    # --- the sections ----------------------------------------------------------------

    def desk(self) -> list[dict[str, Any] | None]:
        """The plan, what one may want to know, reviews, settings, the ten questions and the paper quiz."""
        return [self._plan(), self._wants(), self._reviews(), self._settings(), self._test(), self._paper()]

    def _wants(self):
        """Whoever wants to know one thing goes to the lesson that begins it."""
        links = []
        for want, id in WANTS.items():
            this = lessons.lesson(id)
            title = message("lesson-title", number=this.number, title=this.title)
            links.append(
                parts.row(parts.text(message(f"want-{want}")), parts.lesson(f"want:{want}", title, id, this.file))
            )
        return parts.section("wants", message("wants"), *links)

    def _plan(self):
        way = pathways.pathway(self.settings.progress.setting("pathway"))
        options = [
            (each.id, message("pathway-option", title=each.title, span=_span(each.minutes)))
            for each in pathways.pathways()
        ]
        alone = way.id == "self-study"
        rows = []
        for session in way.sessions:
            for place, id in enumerate(session.lessons or ("",)):
                title = message("session", title=session.title, minutes=session.minutes) if place == 0 else ""
                rows.append(self._row(title, id)[alone:])
        head = (message("when"), message("lesson"), message("minutes"), message("state"))[alone:]
        on = self.settings.progress.resume()
        go = on and lessons.lesson(on)
        return parts.section(
            "plan", message("plan"),
            parts.row(
                parts.select("pathway", message("pathway"), options, way.id),
                parts.lesson("resume", message("resume", number=go.number, title=go.title), go.id, go.file)
                if go
                else None,
            ),
            parts.text(way.who, "dw-hint"),
            *(parts.text(trouble, "dw-trouble") for trouble in lessons.troubles()),
            parts.table(head, rows),
        )  # fmt: skip

    def _row(self, session, id):
        if not id:
            return [session, "", "", ""]
        this, progress = lessons.lesson(id), self.settings.progress
        if progress.finished(id) is not None:
            state = message("state-done")
        elif progress.events(lesson=id):
            state = message("state-begun")
        else:
            needs = [lessons.lesson(each).title for each in this.needs if progress.finished(each) is None]
            state = message("state-best-after", needs=language.listing(needs)) if needs else message("state-open")
        if id in self.plan:
            state = message("state-for-you", state=state)
        link = parts.lesson(f"open:{id}", message("lesson-title", number=this.number, title=this.title), id, this.file)
        return [session, link, str(this.minutes), state]

    def _reviews(self):
        due = self.settings.progress.reviews()
        if not due:
            return None
        links = []
        for each in due:
            this = lessons.lesson(each.lesson)
            words = parts.text(message("review-due", stage=each.stage))
            links.append(parts.row(parts.lesson(f"review:{this.id}", this.title, this.id, this.file), words))
        return parts.section("reviews", message("reviews"), *links)

    def _settings(self):
        here = self.settings
        sizes = [(size, language.told(words)) for size, words in SIZES.items()]
        systems = (("us", message("units-us")), ("si", message("units-si")))
        return parts.section(
            "settings",
            message("settings"),
            parts.row(
                parts.select("unit_system", message("units"), systems, here["unit_system"]),
                parts.select("type_size", message("type-size"), sizes, str(here["type_size"])),
                parts.check("projector", message("projector"), here["projector"]),
                parts.check("instructor", message("instructor"), here["instructor"]),
            ),
        )  # fmt: skip

    def _test(self):
        if self.test is None:
            inside = [parts.button("test", message("test-show"))]
        else:
            inside = []
            for number, question in enumerate(self.test):
                options = [
                    ("", message("test-choose")),
                    *((str(k), each.text) for k, each in enumerate(question.choices)),
                ]
                inside.append(
                    parts.select(
                        f"answer:{number}",
                        message("lesson-title", number=number + 1, title=question.prompt),
                        options,
                        self.said.get(number, ""),
                    )
                )
            ready = len([each for each in self.said.values() if each]) == len(self.test)
            inside.append(parts.button("place", message("test-place"), disabled=not ready))
        if self.plan:
            titles = [lessons.lesson(id).title for id in self.plan]
            inside.append(parts.text(message("test-for-you", titles=language.listing(titles)), "dw-verdict"))
        return parts.section("test", message("test"), *inside, fold="shut")

    def _paper(self):
        made = [
            parts.download(
                f"paper-{name}", message("quiz-save", what=name), f"{name}-{self.quiz_seed}.html", content, "text/html"
            )
            for name, content in self.quiz.items()
        ]
        asks = [(each, message("quiz-asks-what", what=each, count=len(paper.asks(each)))) for each in paper.SETS]
        return parts.section(
            "paper",
            message("paper"),
            parts.row(
                parts.field(
                    "seed",
                    message("quiz-number"),
                    self.quiz_seed,
                    size=6,
                    hint=message("quiz-number-hint"),
                ),
                parts.select("asks", message("quiz-asks"), asks, self.quiz_asks),
                parts.button("quiz", message("quiz-make")),
                *made,
            ),
            parts.text(self.words, "dw-trouble", alert=True) if self.words else None,
            fold="shut",
        )

    def act(self, key: str, value: Any = None, buffers: Sequence[Any] = ()) -> None:
        """A choice on the index."""
        self.words = ""
        try:
            self._do(key, value)
        except PlainError as reason:
            self.words = str(reason)
        self.follow()
        self.send_desk()

    def _do(self, key, value):
        kind, _, rest = key.partition(":")
        if kind == "pathway":
            self.settings.progress.set("pathway", value)
        elif kind == "unit_system":
            self.switch_units(value)
        elif kind == "type_size":
            self.settings[kind] = int(value)
            self.send_frame()
        elif kind in ("projector", "instructor"):
            self.settings[kind] = bool(value)
            self.send_frame()
        elif kind == "test":
            self.test, self.said = pathways.pretest_questions(FIRST_SEED, self.unit_system), {}
        elif kind == "answer" and self.test:
            self.said[int(rest)] = str(value)
        elif kind == "place" and self.test:
            right = [self.test[k].choices[int(self.said[k])].right for k in range(len(self.test))]
            self.plan = pathways.placed(right)
        elif kind == "seed":
            self.quiz_seed, self.quiz = str(value).strip()[:9], {}
        elif kind == "asks" and value in paper.SETS:
            self.quiz_asks, self.quiz = str(value), {}
        elif kind == "quiz":
            self._quiz()

    def _quiz(self):
        if not self.quiz_seed.isdigit():
            self.words = message("quiz-number-wrong", quiz_seed=self.quiz_seed)
            return
        quiz = paper.paper(int(self.quiz_seed), paper.asks(self.quiz_asks), self.unit_system)
        self.quiz = {"quiz": quiz.quiz().encode("utf-8"), "key": quiz.key().encode("utf-8")}


def _span(minutes: int) -> str:
    hours, rest = divmod(minutes, 60)
    if hours and rest:
        return message("span-both", hours=hours, minutes=rest)
    return message("span-hours", hours=hours) if hours else message("span-minutes", minutes=rest)


PAGE = Start
