"""What a page remembers between visits, through the learner's own file.

Where that file cannot be read or written the page works all the same,
remembers until it is closed, and says so in one sentence.
"""

import contextlib

from dryward.checks import PlainError
from dryward.teaching.progress import Progress

#: The settings that a page reads.
NAMES = ("unit_system", "type_size", "projector", "instructor")


class Settings:
    """The settings and answers of one learner, as a page sees them.

    Parameters
    ----------
    progress : Progress, optional
        Otherwise the learner's own file, in the folder the kernel runs in.

    Attributes
    ----------
    trouble : str
        Why something could not be kept; empty when all is well.
    """

    def __init__(self, progress=None):
        self.progress = progress or Progress()
        # A page's own: another window's switch does not turn this one over.
        self._here = {name: self.progress.setting(name) for name in NAMES}

    @property
    def trouble(self):
        """Why something could not be kept, in one sentence; empty when all is well."""
        return self.progress.trouble

    def __getitem__(self, name):
        return self._here[name]

    def __setitem__(self, name, value):
        self._here[name] = value
        self._keep(self.progress.set, name, value)

    def refresh(self):
        """Take in what other windows have kept in the learner's file."""
        self._keep(self.progress.save)

    def opened(self, lesson):
        """Keep that a lesson was opened."""
        self._keep(self.progress.opened, lesson)

    def prediction(self, lesson):
        """Key of the prediction made last, or None."""
        return self.progress.prediction(lesson)

    def predicted(self, lesson, key):
        """Keep a prediction."""
        self._keep(self.progress.predicted, lesson, key)

    def answered(self, lesson, question, choice):
        """Keep an answer to a check."""
        self._keep(self.progress.answered, lesson, question, choice)

    def solved(self, lesson, task):
        """Keep that a practical task was solved."""
        self._keep(self.progress.solved, lesson, task)

    def _keep(self, record, *what):
        # The file's own sentence then stands in `trouble`; what was made stays in memory.
        with contextlib.suppress(PlainError):
            record(*what)
