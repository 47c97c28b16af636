"""JupyterHub for one class on one box: seats with passwords, a folder and a memory limit for each.

``python -m dryward.school.hub 30 FOLDER`` makes the seats of a class and prints their passwords; only hashes are kept.
"""

import asyncio
import contextlib
import hashlib
import hmac
import json
import os
import secrets
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

import psutil
from jupyterhub.auth import Authenticator
from jupyterhub.spawner import SimpleLocalProcessSpawner
from tornado.web import RequestHandler
from traitlets import Integer, Unicode

from dryward.checks import BadFile, OutOfRange, PlainError, within
from dryward.language import message
from dryward.school.folders import copy, shipped_lessons
from dryward.school.learners import LoginAttempts, new_password
from dryward.storage import Format, write_whole
from dryward.units import number

# --- seats and passwords ------------------------------------------------------

#: The file of a class with its seats.
REGISTER = "register.json"
_FORMAT = Format("dryward register", 1)
#: Cost of one guess: some 50 ms and 16 MB.
_COST = {"n": 2**14, "r": 8, "p": 1}


def _hash(password: str, salt: str) -> str:
    return hashlib.scrypt(password.encode(), salt=bytes.fromhex(salt), dklen=32, **_COST).hex()


def make_seats(count: int, folder: str | Path) -> dict[str, str]:
    """Make the seats of a class, 1 to 200, and give the password of each, to be printed; only hashes are kept.

    BadFile when the class has seats already.
    """
    within("Seats", count, 1, 200)
    folder = Path(folder)
    folder.mkdir(mode=0o755, parents=True, exist_ok=True)
    given = {f"seat-{number:02d}": new_password() for number in range(1, count + 1)}
    kept = {}
    for seat, password in given.items():
        salt = secrets.token_hex(16)
        kept[seat] = {"salt": salt, "hash": _hash(password, salt)}
    try:
        write_whole(folder / REGISTER, json.dumps(_FORMAT.headed({"seats": kept}), indent=1), new=True, private=True)
    except FileExistsError:
        raise BadFile(message("school.register-there", file=str(folder / REGISTER))) from None
    return given


def read_seats(folder: str | Path) -> dict[str, dict[str, str]]:
    """The salt and hash of each seat of a class; BadFile when there is no register, or it cannot be read."""
    path = Path(folder) / REGISTER
    try:
        return dict(_FORMAT.current(json.loads(path.read_text("utf-8")))["seats"])
    except FileNotFoundError:
        raise BadFile(message("school.no-register", file=str(path))) from None
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        raise BadFile(message("school.no-register-in-it", file=str(path))) from None


def is_password(seats: dict[str, dict[str, str]], seat: str, password: str) -> bool:
    """Whether that is the password of a seat; a seat that is not there takes as long."""
    kept = seats.get(seat, {"salt": "00" * 16, "hash": ""})
    found = _hash(password.strip().lower(), kept["salt"])
    return hmac.compare_digest(found, kept["hash"]) and seat in seats


# --- memory ------------------------------------------------------------------
#
# What a learner's seat takes of the memory, its server and its lessons together, and a bound on it.
#
# A system that gives its users groups of processes with a bound of their own
# would do this better; on a plain computer no one but root may make them.  So
# each process has a hard limit of its own, and the whole is looked at every
# few seconds.


def _shared_out(process: psutil.Process) -> int:
    """Memory of a process, what it shares with others counted in part [bytes]."""
    try:
        return process.memory_full_info().pss
    except (AttributeError, psutil.AccessDenied):  # a system that does not tell
        return process.memory_info().rss


def _weigh(family: list[psutil.Process], how: Callable[[psutil.Process], int]) -> dict[psutil.Process, int]:
    found = {}
    for each in family:
        with contextlib.suppress(psutil.NoSuchProcess, psutil.AccessDenied):
            found[each] = how(each)
    return found


def hold_memory(pid: int, most: int) -> int | None:
    """End the heaviest lesson of a seat whose server is `pid`, when together they take more than `most` [bytes].

    Gives what the seat took [bytes] when a lesson was ended, None otherwise.
    """
    try:
        server = psutil.Process(pid)
        family = [server, *server.children(recursive=True)]
    except psutil.NoSuchProcess:
        return None
    # The cheap measure first: it counts what is shared several times, so it is never too low.
    if sum(_weigh(family, lambda each: each.memory_info().rss).values()) <= most:
        return None
    weights = _weigh(family, _shared_out)
    taken = sum(weights.values())
    lessons = {each: weight for each, weight in weights.items() if each != server}
    if taken <= most or not lessons:
        return None
    with contextlib.suppress(psutil.NoSuchProcess):
        max(lessons, key=lessons.__getitem__).kill()
    return taken


# --- what JupyterHub is told ---------------------------------------------------


class Seats(Authenticator):
    """Lets in by the register of the class."""

    folder = Unicode(config=True, help=message("school.register-folder-help"))

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.seats, self.login_attempts = read_seats(self.folder), LoginAttempts()
        self.allow_all = True  # whoever is in the register

    async def authenticate(self, handler: RequestHandler, data: dict[str, str]) -> str | None:
        """The seat, or None."""
        seat, address = data["username"].strip().lower(), handler.request.remote_ip or ""
        if self.login_attempts.too_many(address):
            return None
        if await asyncio.to_thread(is_password, self.seats, seat, data["password"]):
            return seat
        self.login_attempts.wrong(address)
        return None


class Seat(SimpleLocalProcessSpawner):
    """A JupyterLab of one learner, in a folder of its own.

    Started by root, each seat is a user number of its own, which needs no
    account: it cannot read another's folder or touch another's processes.
    Started by anybody else, all seats are that one user, which is only good
    enough for a class that trusts itself.
    """

    folder = Unicode(config=True, help=message("school.folder-help"))
    first_number = Integer(61001, config=True, help=message("school.first-number-help"))

    @property
    def number(self) -> int | None:
        """The user number of this seat, or None when there is only one user."""
        if os.name != "posix" or os.geteuid() != 0 or not self.first_number:
            return None
        return self.first_number + sorted(read_seats(self.folder)).index(self.user.name)

    @property
    def home(self) -> Path:
        """The learner's folder."""
        return Path(self.folder) / self.user.name

    async def start(self) -> Any:
        """Put the lessons there and start."""
        await asyncio.to_thread(self._furnish)
        self.home_dir, self.notebook_dir = str(self.home), str(self.home / "lessons")
        return await super().start()

    async def poll(self) -> int | None:
        """Whether the seat runs; a seat over its memory loses its heaviest lesson."""
        status = await super().poll()
        if status is None and self.mem_limit:
            taken = await asyncio.to_thread(hold_memory, self.pid, int(self.mem_limit))
            if taken:
                self.log.warning(message("school.lesson-ended", seat=self.user.name, taken=number(taken / 1e6, 0)))
        return status

    def _furnish(self) -> None:
        self.home.mkdir(mode=0o700, parents=True, exist_ok=True)
        copy(shipped_lessons(), self.home / "lessons")
        if self.number is not None:
            for path in (self.home, *self.home.rglob("*")):
                os.chown(path, self.number, self.number, follow_symlinks=False)

    def make_preexec_fn(self, name: str) -> Callable[[], None]:
        """What the new process does first: its limits, its number, its folder."""
        home, number, memory = str(self.home), self.number, self.mem_limit

        def first() -> None:
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


def main(typed: Sequence[str]) -> int:
    """Make the seats that are asked for on the command line and print their passwords; 2 for what cannot be made."""
    try:
        if len(typed) != 2 or not typed[0].isdecimal():
            raise OutOfRange(message("school.seats-are-typed"))
        given = make_seats(int(typed[0]), typed[1])
    except PlainError as trouble:
        print(message("school.seats-refused", why=str(trouble)), file=sys.stderr)
        return 2
    for seat, password in given.items():
        print(message("school.seat-and-password", seat=seat, password=password))
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
