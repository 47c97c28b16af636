"""Who may come in, and whose answers are whose: a password, and one folder for each learner.

The password is made anew at every start, and guessing is answered slowly.  A
learner is known by a code and by nothing else.
"""

import hashlib
import hmac
import re
import secrets
import time
from collections import defaultdict, deque
from collections.abc import Callable
from pathlib import Path
from typing import Any

from jupyter_server.auth import IdentityProvider, User
from tornado.web import RequestHandler

from dryward.checks import BadFile
from dryward.language import message
from dryward.storage import locked, write_whole

#: No letter or digit that reads like another.
_SIGNS = "23456789abcdefghjkmnpqrstuvwxyz"
_LENGTH = 10
_CODE = re.compile(f"[{_SIGNS}]{{{_LENGTH}}}")
#: The file that holds the key with which cookies are signed.
_KEY = ".dryward-key"
_KEY_BYTES = 32
_ENTERED, _LEARNER, _BOARD = "dryward-entered", "dryward-learner", "dryward-board"
#: Days a browser is known again.
_DAYS = 180
#: Wrong passwords from one address within so many seconds before it must wait.
_TRIES, _WITHIN = 10, 60.0


def random_signs(count: int) -> str:
    """Signs that nobody can guess.

    Examples
    --------
    >>> len(random_signs(4))
    4
    """
    return "".join(secrets.choice(_SIGNS) for _ in range(count))


def new_password() -> str:
    """A password that can be read aloud: three groups of four signs, some 59 bits.

    Examples
    --------
    >>> len(new_password())
    14
    """
    return "-".join(random_signs(4) for _ in range(3))


def spoken(code: str) -> str:
    """A code as it is written on paper.

    Examples
    --------
    >>> spoken("abcdefghjk")
    'abcde-fghjk'
    """
    return f"{code[:5]}-{code[5:]}"


def read_code(text: str) -> str | None:
    """The code somebody typed, or None when it cannot be one.

    Examples
    --------
    >>> read_code(" ABCDE-fghjk ")
    'abcdefghjk'
    >>> read_code("../secret") is None
    True
    """
    code = re.sub(r"[\s-]", "", text).lower()
    return code if _CODE.fullmatch(code) else None


class Learners:
    """The learners of one class, each with a folder below `folder`; with `own` it is that of one learner alone."""

    def __init__(self, folder: str | Path, own: bool = False) -> None:
        self.path, self.own = Path(folder), own
        try:
            self.path.mkdir(mode=0o700, parents=True, exist_ok=True)
            self.key = self._key()
        except OSError as reason:
            raise BadFile(
                message("school.folder-not-used", folder=str(self.path), why=str(reason.strerror or reason))
            ) from None

    def _key(self) -> bytes:
        # On the disk, so that a browser is known again after the server was started anew.
        file = self.path / _KEY
        with locked(file):
            found = file.read_bytes() if file.exists() else b""
            if len(found) != _KEY_BYTES:
                file.unlink(missing_ok=True)
                found = secrets.token_bytes(_KEY_BYTES)
                write_whole(file, found, private=True)
        return found

    def new(self) -> str:
        """A code that nobody has."""
        while True:
            code = random_signs(_LENGTH)
            if not (self.path / code).exists():
                return code

    def known(self, code: str | None) -> bool:
        """Whether a learner of that code has opened a lesson."""
        return bool(code and _CODE.fullmatch(code) and (self.path / code).is_dir())

    def folder(self, code: str) -> Path:
        """The folder of a learner; it is made when the first lesson is opened."""
        if not _CODE.fullmatch(code):
            raise ValueError("not a learner's code")
        return self.path if self.own else self.path / code

    def folders(self) -> dict[str, Path]:
        """The learners' folders by code, in the order of the codes."""
        if self.own:
            return {"own": self.path}
        return {each.name: each for each in sorted(self.path.iterdir()) if _CODE.fullmatch(each.name) and each.is_dir()}


class LoginAttempts:
    """Wrong passwords by address.

    Examples
    --------
    >>> attempts = LoginAttempts()
    >>> for _ in range(10): attempts.wrong("192.0.2.1")
    >>> attempts.too_many("192.0.2.1"), attempts.too_many("192.0.2.2")
    (True, False)
    """

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._times: dict[str, deque[float]] = defaultdict(lambda: deque(maxlen=_TRIES))

    def wrong(self, address: str) -> None:
        """Somebody there typed a wrong one."""
        self._times[address].append(self._clock())

    def too_many(self, address: str) -> bool:
        """Whether that address must wait."""
        times = self._times.get(address)
        return times is not None and len(times) == _TRIES and self._clock() - times[0] < _WITHIN


class Door(IdentityProvider):
    """Lets in who has the password, and knows each browser again.

    The password is never kept in a cookie: the cookie holds a mark made from
    it, signed, so that a new password shuts everybody out.
    """

    def set_up(self, password: str, board_key: str, learners: Learners) -> None:
        """Take the password and the instructor's key of this start, and the learners of this class."""
        self.password, self.board_key, self.learners = password, board_key, learners
        self.login_attempts = LoginAttempts()
        self._mark, self._board_mark = (
            hmac.new(learners.key, each.encode(), hashlib.sha256).hexdigest() for each in (password, board_key)
        )

    @property
    def auth_enabled(self) -> bool:
        """Always."""
        return True

    def get_handlers(self) -> list[Any]:
        """None: the pages have a door of their own."""
        return []

    def get_user(self, handler: RequestHandler) -> User | None:
        """The learner of a request, or None when it may not come in."""
        entered = handler.get_signed_cookie(_ENTERED, max_age_days=_DAYS) or b""
        if not hmac.compare_digest(entered, self._mark.encode()):
            return None
        learner = handler.get_signed_cookie(_LEARNER, max_age_days=_DAYS)
        return User(username=learner.decode()) if learner else None

    def opens(self, typed: str) -> bool:
        """Whether that is the password."""
        plain = typed.strip().lower().encode()
        return hmac.compare_digest(plain, self.password.encode())

    def enter(self, handler: RequestHandler, code: str | None = None) -> None:
        """Let a browser in, as the learner it was before unless a code says otherwise."""
        before = handler.get_signed_cookie(_LEARNER, max_age_days=_DAYS)
        self.name(handler, code or (before.decode() if before else self.learners.new()))
        handler.set_signed_cookie(_ENTERED, self._mark, expires_days=None, httponly=True, samesite="Lax")

    def name(self, handler: RequestHandler, code: str) -> None:
        """Make a browser the learner of that code."""
        handler.set_signed_cookie(_LEARNER, code, expires_days=_DAYS, httponly=True, samesite="Lax")

    # --- the instructor's board --------------------------------------------------

    def opens_board(self, typed: str) -> bool:
        """Whether that is the instructor's key."""
        return hmac.compare_digest(typed.strip().encode(), self.board_key.encode())

    def enter_board(self, handler: RequestHandler) -> None:
        """Let a browser see the board until it is closed."""
        handler.set_signed_cookie(_BOARD, self._board_mark, expires_days=None, httponly=True, samesite="Strict")

    def sees_board(self, handler: RequestHandler) -> bool:
        """Whether a browser has shown the instructor's key."""
        shown = handler.get_signed_cookie(_BOARD, max_age_days=1) or b""
        return hmac.compare_digest(shown, self._board_mark.encode())
