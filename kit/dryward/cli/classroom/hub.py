"""JupyterHub for one class on one box: seats with passwords, a folder and a memory limit for each."""

import asyncio
import os
from pathlib import Path

from jupyterhub.auth import Authenticator
from jupyterhub.spawner import SimpleLocalProcessSpawner
from traitlets import Integer, Unicode

from dryward.cli import copies, places
from dryward.cli.classroom import memory, register
from dryward.cli.classroom.door import Knocks


class Seats(Authenticator):
    """Lets in by the register of the class."""

    folder = Unicode(config=True, help="folder of the class, with its register")

    def __init__(self, **kwargs):
        super().__init__(**kwargs)
        self.seats, self.knocks = register.read(self.folder), Knocks()
        self.allow_all = True  # whoever is in the register

    async def authenticate(self, handler, data):
        """The seat, or None."""
        seat, address = data["username"].strip().lower(), handler.request.remote_ip
        if self.knocks.too_many(address):
            return None
        if await asyncio.to_thread(register.right, self.seats, seat, data["password"]):
            return seat
        self.knocks.wrong(address)
        return None


class Seat(SimpleLocalProcessSpawner):
    """A JupyterLab of one learner, in a folder of its own.

    Started by root, each seat is a user number of its own, which needs no
    account: it cannot read another's folder or touch another's processes.
    Started by anybody else, all seats are that one user, which is only good
    enough for a class that trusts itself.
    """

    folder = Unicode(config=True, help="folder of the class")
    first_number = Integer(
        61001, config=True, help="user number of the first seat, when started by root; 0: all are one user"
    )

    @property
    def number(self):
        """The user number of this seat, or None when there is only one user."""
        if os.name != "posix" or os.geteuid() != 0 or not self.first_number:
            return None
        return self.first_number + sorted(register.read(self.folder)).index(self.user.name)

    @property
    def home(self):
        """The learner's folder."""
        return Path(self.folder) / self.user.name

    async def start(self):
        """Put the lessons there and start."""
        await asyncio.to_thread(self._furnish)
        self.home_dir, self.notebook_dir = str(self.home), str(self.home / "lessons")
        return await super().start()

    async def poll(self):
        """Whether the seat runs; a seat over its memory loses its heaviest lesson."""
        status = await super().poll()
        if status is None and self.mem_limit:
            taken = await asyncio.to_thread(memory.hold, self.pid, int(self.mem_limit))
            if taken:
                self.log.warning("%s took %.0f MB: its heaviest lesson was ended", self.user.name, taken / 1e6)
        return status

    def _furnish(self):
        self.home.mkdir(mode=0o700, parents=True, exist_ok=True)
        copies.copy(places.shipped_lessons(), self.home / "lessons")
        if self.number is not None:
            for path in (self.home, *self.home.rglob("*")):
                os.chown(path, self.number, self.number, follow_symlinks=False)

    def make_preexec_fn(self, name):
        """What the new process does first: its limits, its number, its folder."""
        home, number, memory = str(self.home), self.number, self.mem_limit

        def first():
            if memory:
                import resource

                resource.setrlimit(resource.RLIMIT_DATA, (int(memory), int(memory)))
            os.umask(0o077)
            if number is not None:
                os.setgroups([])
                os.setgid(number)
                os.setuid(number)
            os.chdir(home)

        return first
