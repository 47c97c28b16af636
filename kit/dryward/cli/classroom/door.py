"""Who may come in: a password made anew at every start, and a slow answer to guessing."""

import hashlib
import hmac
import time
from collections import defaultdict, deque

from jupyter_server.auth import IdentityProvider, User

from dryward.cli.classroom.learners import random_signs

_ENTERED, _LEARNER, _BOARD = "dryward-entered", "dryward-learner", "dryward-board"
#: Days a browser is known again.
_DAYS = 180
#: Wrong passwords from one address within so many seconds before it must wait.
_TRIES, _WITHIN = 10, 60.0


def new_password():
    """A password that can be read aloud: three groups of four signs, some 59 bits.

    Examples
    --------
    >>> len(new_password())
    14
    """
    return "-".join(random_signs(4) for _ in range(3))


class Knocks:
    """Wrong passwords by address.

    Examples
    --------
    >>> knocks = Knocks()
    >>> for _ in range(10): knocks.wrong("192.0.2.1")
    >>> knocks.too_many("192.0.2.1"), knocks.too_many("192.0.2.2")
    (True, False)
    """

    def __init__(self, clock=time.monotonic):
        self._clock, self._times = clock, defaultdict(lambda: deque(maxlen=_TRIES))

    def wrong(self, address):
        """Somebody there typed a wrong one."""
        self._times[address].append(self._clock())

    def too_many(self, address):
        """Whether that address must wait."""
        times = self._times.get(address, ())
        return len(times) == _TRIES and self._clock() - times[0] < _WITHIN


class Door(IdentityProvider):
    """Lets in who has the password, and knows each browser again.

    The password is never kept in a cookie: the cookie holds a mark made from
    it, signed, so that a new password shuts everybody out.
    """

    def set_up(self, password, board_key, learners):
        """Take the password and the instructor's key of this start, and the learners of this class."""
        self.password, self.board_key, self.learners, self.knocks = password, board_key, learners, Knocks()
        self._mark, self._board_mark = (
            hmac.new(learners.key, each.encode(), hashlib.sha256).hexdigest() for each in (password, board_key)
        )

    @property
    def auth_enabled(self):
        """Always."""
        return True

    def get_handlers(self):
        """None: the pages have a door of their own."""
        return []

    def get_user(self, handler):
        """The learner of a request, or None when it may not come in."""
        entered = handler.get_signed_cookie(_ENTERED, max_age_days=_DAYS) or b""
        if not hmac.compare_digest(entered, self._mark.encode()):
            return None
        learner = handler.get_signed_cookie(_LEARNER, max_age_days=_DAYS)
        return User(username=learner.decode()) if learner else None

    def opens(self, typed):
        """Whether that is the password."""
        plain = typed.strip().lower().encode()
        return hmac.compare_digest(plain, self.password.encode())

    def enter(self, handler, code=None):
        """Let a browser in, as the learner it was before unless a code says otherwise."""
        before = handler.get_signed_cookie(_LEARNER, max_age_days=_DAYS)
        self.name(handler, code or (before.decode() if before else self.learners.new()))
        handler.set_signed_cookie(_ENTERED, self._mark, expires_days=None, httponly=True, samesite="Lax")

    def name(self, handler, code):
        """Make a browser the learner of that code."""
        handler.set_signed_cookie(_LEARNER, code, expires_days=_DAYS, httponly=True, samesite="Lax")

    # --- the instructor's board --------------------------------------------------

    def opens_board(self, typed):
        """Whether that is the instructor's key."""
        return hmac.compare_digest(typed.strip().encode(), self.board_key.encode())

    def enter_board(self, handler):
        """Let a browser see the board until it is closed."""
        handler.set_signed_cookie(_BOARD, self._board_mark, expires_days=None, httponly=True, samesite="Strict")

    def sees_board(self, handler):
        """Whether a browser has shown the instructor's key."""
        shown = handler.get_signed_cookie(_BOARD, max_age_days=1) or b""
        return hmac.compare_digest(shown, self._board_mark.encode())
