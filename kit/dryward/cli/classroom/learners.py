"""Whose answers are whose: one folder for each learner, named by a code and by nothing else."""

import re
import secrets
from pathlib import Path

from dryward.checks import BadFile
from dryward.storage import locked, write_whole

#: No letter or digit that reads like another.
_SIGNS = "23456789abcdefghjkmnpqrstuvwxyz"
_LENGTH = 10
_CODE = re.compile(f"[{_SIGNS}]{{{_LENGTH}}}")
#: The file that holds the key with which cookies are signed.
_KEY = ".dryward-key"
_KEY_BYTES = 32


def random_signs(count):
    """Signs that nobody can guess.

    Parameters
    ----------
    count : int

    Returns
    -------
    str

    Examples
    --------
    >>> len(random_signs(4))
    4
    """
    return "".join(secrets.choice(_SIGNS) for _ in range(count))


def spoken(code):
    """A code as it is written on paper.

    Examples
    --------
    >>> spoken("abcdefghjk")
    'abcde-fghjk'
    """
    return f"{code[:5]}-{code[5:]}"


def read_code(text):
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
    """The learners of one class.

    Parameters
    ----------
    folder : Path
        Each learner has a folder in it.
    own : bool, optional
        One learner only, whose folder is `folder` itself.

    Raises
    ------
    BadFile
        When the folder cannot be used, with the reason.
    """

    def __init__(self, folder, own=False):
        self.path, self.own = Path(folder), own
        try:
            self.path.mkdir(mode=0o700, parents=True, exist_ok=True)
            self.key = self._key()
        except OSError as reason:
            raise BadFile(f"The folder {self.path} cannot be used: {reason.strerror or reason}.") from None

    def _key(self):
        # Kept, so that a browser is known again after the server was started anew.
        file = self.path / _KEY
        with locked(file):
            found = file.read_bytes() if file.exists() else b""
            if len(found) != _KEY_BYTES:
                file.unlink(missing_ok=True)
                found = secrets.token_bytes(_KEY_BYTES)
                write_whole(file, found, private=True)
        return found

    def new(self):
        """A code that nobody has."""
        while True:
            code = random_signs(_LENGTH)
            if not (self.path / code).exists():
                return code

    def known(self, code):
        """Whether a learner of that code has opened a lesson."""
        return bool(code and _CODE.fullmatch(code) and (self.path / code).is_dir())

    def folder(self, code):
        """The folder of a learner; it is made when the first lesson is opened.

        Parameters
        ----------
        code : str

        Returns
        -------
        Path
        """
        if not _CODE.fullmatch(code):
            raise ValueError("not a learner's code")
        return self.path if self.own else self.path / code

    def folders(self):
        """The learners' folders by code, in the order of the codes."""
        if self.own:
            return {"own": self.path}
        return {each.name: each for each in sorted(self.path.iterdir()) if _CODE.fullmatch(each.name) and each.is_dir()}
