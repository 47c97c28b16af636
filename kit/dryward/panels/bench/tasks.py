"""The practical item of a lesson: set the sliders so that ..., and have it checked."""

from dryward.checks import PlainError
from dryward.panels.bench import parts
from dryward.teaching import practical


class Tasks:
    """The tasks of one page and what came of them.

    Parameters
    ----------
    page : Page
    """

    def __init__(self, page):
        self.page, self.tasks = page, practical.tasks(page.id)
        self.words, self._start = {}, {}

    def sections(self):
        """A section for each task."""
        return [self._section(task) for task in self.tasks]

    def _section(self, task):
        said = self.words.get(task.id)
        return parts.section(
            f"task-{task.id}",
            "Try it: a job for the sliders",
            parts.text(self.page.say(task.text)),
            parts.row(
                parts.button(f"task:start:{task.id}", "Put the sliders at the start"),
                parts.button(f"task:check:{task.id}", "Check my sliders"),
                parts.text(said[1], "dw-verdict" if said[0] else "") if said else None,
            ),
        )

    def act(self, key):
        """Set the start, or judge the sliders as they stand."""
        _, what, id = key.split(":", 2)
        task = practical.task(id)
        controls = {name: each for name, each in self.page.controls.items() if name in task.start}
        if what == "start":
            for control, value in ((each, task.start[name]) for name, each in controls.items()):
                control.put(control.shown(value))
            for control in self.page.controls.values():
                if control.options:
                    control.put(control.choice.start or control.options[0])
            # A slider stands on its notches: where it stood at the start counts as not moved.
            self._start[id] = {name: each.si for name, each in controls.items()}
            self.words.pop(id, None)
            return
        if id not in self._start:
            self.words[id] = (False, "First put the sliders at the start.")
            return
        stray = self._stray(task)
        if stray:
            self.words[id] = (False, f"Not yet. {stray} stays as it is in this task; set it back.")
            return
        moved = {name: each.si for name, each in controls.items() if each.si != self._start[id].get(name)}
        labels = {name: each.words for name, each in self.page.controls.items()}
        try:
            moved |= {name: value for name, value in self.page.task_values().items() if name in task.start}
            verdict = practical.judge(id, moved, self.page.unit_system, labels)
        except PlainError as reason:
            self.words[id] = (False, f"Not yet. {reason}")
            return
        self.words[id] = (verdict.solved, f"{'Solved. ' if verdict.solved else 'Not yet. '}{verdict.words}")
        if verdict.solved:
            self.page.settings.solved(self.page.id, id)

    def _stray(self, task):
        """What the page calls a choice that the task knows nothing of and that is not where it started."""
        # A page that says what a choice means to its task answers for that choice.
        known = (*task.start, *getattr(self.page, "task_choices", ()))
        choices = [each for name, each in self.page.controls.items() if each.options and name not in known]
        return next((each.words for each in choices if each.value != (each.choice.start or each.options[0])), "")
