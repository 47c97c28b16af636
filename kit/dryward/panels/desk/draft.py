"""A roof on the desk: the job, its file, and every step back."""

import itertools
import re
import tempfile
import time
from pathlib import Path

from dryward import storage
from dryward.building.job import load_job, parse_job, save_job
from dryward.checks import BadFile
from dryward.report.setting import setting
from dryward.weather import read_epw

#: Steps back that are kept.
_STEPS = 200
#: Moves of one slider that follow each other within this are one step back [s].
_PAUSE = 2.0


class Draft:
    """One job being built.

    Parameters
    ----------
    job : Job
    name : str
        What its file would be called.
    folder : Path, optional
        Of the learner's files; otherwise the one the kernel runs in.

    Attributes
    ----------
    job : Job
        As it is now.
    name : str
        File name, in the learner's folder.
    wanted : str
        Name it will be saved under.
    saved : Job or None
        As it stands in its file; None before the first save.
    """

    def __init__(self, job, name="my-roof.toml", folder=None):
        self.folder = Path(folder or Path.cwd())
        self.job, self.name, self.wanted, self.saved = job, name, name, None
        self._token, self._back, self._ahead, self._last = None, [], [], None
        self._start, self._when = job, 0.0

    @property
    def unsaved(self):
        """Whether something would be lost if the page were closed now."""
        return self.job != (self._start if self.saved is None else self.saved)

    @property
    def can_undo(self):
        """Whether there is a step back."""
        return bool(self._back)

    @property
    def can_redo(self):
        """Whether there is a step ahead."""
        return bool(self._ahead)

    def change(self, job, merge=None):
        """Take a new state of the job.

        Parameters
        ----------
        job : Job
        merge : str, optional
            Changes with the same word that follow each other at once are one
            step back: a slider that is dragged.
        """
        if job == self.job:
            return
        now = time.monotonic()
        goes_on = merge is not None and merge == self._last and now - self._when < _PAUSE
        self._when = now
        if not goes_on or not self._back:
            self._back = [*self._back[-_STEPS:], self.job]
        self._ahead, self._last, self.job = [], merge, job

    def undo(self):
        """One step back."""
        if self._back:
            self._ahead.append(self.job)
            self.job, self._last = self._back.pop(), None

    def redo(self):
        """One step ahead."""
        if self._ahead:
            self._back.append(self.job)
            self.job, self._last = self._ahead.pop(), None

    def start(self, job, name="my-roof.toml"):
        """Begin with another job; the present one stays a step back."""
        self.change(job)
        self.name, self.wanted, self.saved, self._token, self._start = name, name, None, None, job

    def path(self, name):
        """A file in the learner's folder.

        Parameters
        ----------
        name : str
            A file name without a folder.

        Returns
        -------
        Path

        Raises
        ------
        BadFile
            For a name with a folder in it, or none.
        """
        name = str(name).strip()
        if not name or Path(name).name != name or name.startswith(".") or "\\" in name or len(name) > 80:
            raise BadFile(f'The file name "{name[:60]}" must be a plain name such as my-roof.toml, without a folder.')
        return self.folder / (name if name.lower().endswith(".toml") else f"{name}.toml")

    def files(self):
        """Names of the roof files in the learner's folder."""
        return tuple(sorted(each.name for each in self.folder.glob("*.toml")))

    def open(self, name):
        """Open a file of the learner's folder.

        Raises
        ------
        BadFile, UnknownName
            When it cannot be read, or its weather cannot; nothing is changed then.
        """
        path = self.path(name)
        job, token = load_job(path)
        setting(job)
        self.change(job)
        self.name, self.wanted, self.saved, self._token, self._start = path.name, path.name, job, token, job

    def take(self, content, name):
        """Take the bytes of a file from elsewhere; it is not saved yet."""
        if len(content) > storage.LARGEST:
            raise BadFile(f"{name[-60:]}: it is larger than {storage.LARGEST} bytes, too large for a roof.")
        try:
            words = bytes(content).decode("utf-8")
        except UnicodeDecodeError:
            raise BadFile(f"{name[-60:]}: it is not a text file.") from None
        job = parse_job(words, name)
        setting(job)
        self.start(job, self.path(Path(name).name).name)

    def weather(self, content, name):
        """Keep a weather file of the reader's in the folder, under its own name or the next free one.

        Parameters
        ----------
        content : bytes
        name : str

        Returns
        -------
        str
            The name it got.

        Raises
        ------
        BadFile
            When it is no weather file; nothing is written then.
        """
        stem = re.sub(r"[^A-Za-z0-9._-]+", "-", Path(str(name).replace("\\", "/")).stem).strip(".-")[:40] or "weather"
        try:
            with tempfile.TemporaryDirectory(prefix=".weather-", dir=self.folder) as aside:
                draft = Path(aside) / f"{stem}.epw"
                draft.write_bytes(content)
                read_epw(draft)
                for count in itertools.count(1):
                    target = self.folder / (f"{stem}.epw" if count == 1 else f"{stem}-{count}.epw")
                    try:
                        storage.write_whole(target, bytes(content), new=True)  # nothing is overwritten
                        return target.name
                    except FileExistsError:
                        if target.read_bytes() == bytes(content):
                            return target.name
        except OSError as error:
            raise BadFile(f"{stem}.epw: it cannot be written ({error.strerror}).") from None

    def save(self, name):
        """Write the job; a file that somebody else wrote meanwhile is left as it is.

        Raises
        ------
        BadFile
            When it cannot be written or would replace another file.
        """
        path = self.path(name)
        same = path.name == self.name and self._token is not None
        self._token = save_job(self.job, path, self._token if same else storage.NEW)
        self.name, self.wanted, self.saved, self._last = path.name, path.name, self.job, None
