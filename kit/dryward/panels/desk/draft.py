"""The roof on the desk as it is being built: the job, its file, and every step back."""

from __future__ import annotations

import dataclasses
import re
import tempfile
import time
from pathlib import Path

from dryward import storage
from dryward.building.job import Job, load_job, parse_job, save_job
from dryward.checks import BadFile
from dryward.language import message
from dryward.report.setting import setting
from dryward.weather.epw import read_epw

#: Steps back that are kept.
_STEPS = 200
#: Moves of one slider that follow each other within this are one step back [s].
_PAUSE = 2.0


class Draft:
    """One job being built.

    `job` is what it is now, `saved` as it stands in its file (None before the
    first save); `name` is its file in the learner's folder, `wanted` the name
    it will be saved under.
    """

    def __init__(self, job: Job, name: str = "my-roof.toml", folder: Path | None = None) -> None:
        self.folder = Path(folder or Path.cwd())
        self.job, self.name, self.wanted = job, name, name
        self.saved: Job | None = None
        self._token: str | None = None
        self._last: str | None = None
        self._back: list[Job] = []
        self._ahead: list[Job] = []
        self._start, self._when = job, 0.0

    def at_home(self, job: Job) -> Job:
        """The job with its weather file looked for in the learner's folder, where no other is named."""
        if job.place.kind != "file" or job.place.folder:
            return job
        return dataclasses.replace(job, place=dataclasses.replace(job.place, folder=str(self.folder)))

    @property
    def unsaved(self) -> bool:
        """Whether something would be lost if the page were closed now."""
        return self.job != (self._start if self.saved is None else self.saved)

    @property
    def can_undo(self) -> bool:
        """Whether there is a step back."""
        return bool(self._back)

    @property
    def can_redo(self) -> bool:
        """Whether there is a step ahead."""
        return bool(self._ahead)

    def change(self, job: Job, merge: str | None = None) -> None:
        """Take a new state of the job.

        Changes with the same word `merge` that follow each other at once are
        one step back: a slider that is dragged.
        """
        job = self.at_home(job)
        if job == self.job:
            return
        now = time.monotonic()
        goes_on = merge is not None and merge == self._last and now - self._when < _PAUSE
        self._when = now
        if not goes_on or not self._back:
            self._back = [*self._back[-_STEPS:], self.job]
        self._ahead, self._last, self.job = [], merge, job

    def undo(self) -> None:
        """One step back."""
        if self._back:
            self._ahead.append(self.job)
            self.job, self._last = self._back.pop(), None

    def redo(self) -> None:
        """One step ahead."""
        if self._ahead:
            self._back.append(self.job)
            self.job, self._last = self._ahead.pop(), None

    def start(self, job: Job, name: str = "my-roof.toml") -> None:
        """Begin with another job; the present one stays a step back."""
        self.change(job)
        self.name, self.wanted, self.saved, self._token, self._start = name, name, None, None, job

    def path(self, name: str) -> Path:
        """A roof file in the learner's folder; BadFile for a name with a folder in it, or none."""
        name = str(name).strip()
        if not name or Path(name).name != name or name.startswith(".") or "\\" in name or len(name) > 80:
            raise BadFile(message("panels.plain-file-name", name=name[:60]))
        return self.folder / (name if name.lower().endswith(".toml") else f"{name}.toml")

    def files(self) -> tuple[str, ...]:
        """Names of the roof files in the learner's folder."""
        return tuple(sorted(each.name for each in self.folder.glob("*.toml")))

    def open(self, name: str) -> None:
        """Open a file of the learner's folder; nothing is changed when it or its weather cannot be read."""
        path = self.path(name)
        job, token = load_job(path)
        setting(job)
        self.change(job)
        self.name, self.wanted, self.saved, self._token, self._start = path.name, path.name, job, token, job

    def take(self, content: bytes, name: str) -> None:
        """Take the bytes of a file from elsewhere; it is not saved yet."""
        if len(content) > storage.LARGEST:
            raise BadFile(message("panels.file-too-large", name=name[-60:], most=storage.LARGEST))
        try:
            words = bytes(content).decode("utf-8")
        except UnicodeDecodeError:
            raise BadFile(message("panels.no-text-file", name=name[-60:])) from None
        job = parse_job(words, name, self.folder)
        setting(job)
        self.start(job, self.path(Path(name).name).name)

    def weather(self, content: bytes, name: str) -> str:
        """Keep a weather file of the reader's in the folder, under its own name or the next free one, and give it.

        BadFile when it is no weather file; nothing is written then.
        """
        stem = re.sub(r"[^A-Za-z0-9._-]+", "-", Path(str(name).replace("\\", "/")).stem).strip(".-")[:40] or "weather"
        try:
            with tempfile.TemporaryDirectory(prefix=".weather-", dir=self.folder) as aside:
                draft = Path(aside) / f"{stem}.epw"
                draft.write_bytes(content)
                read_epw(draft)
                count = 0
                while True:
                    count += 1
                    target = self.folder / (f"{stem}.epw" if count == 1 else f"{stem}-{count}.epw")
                    try:
                        storage.write_whole(target, bytes(content), new=True)  # nothing is overwritten
                        return target.name
                    except FileExistsError:
                        if target.read_bytes() == bytes(content):
                            return target.name
        except OSError as error:
            raise BadFile(message("panels.file-not-written", name=f"{stem}.epw", why=error.strerror)) from None

    def save(self, name: str) -> None:
        """Write the job; BadFile when it cannot be written, or somebody else wrote the file meanwhile."""
        path = self.path(name)
        same = path.name == self.name and self._token is not None
        self._token = save_job(self.job, path, self._token if same else storage.NEW)
        self.name, self.wanted, self.saved, self._last = path.name, path.name, self.job, None
