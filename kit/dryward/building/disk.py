"""A text on the disk: read when it is of a sensible size, written whole or not at all.

A token stands for one state of a file; with it a second writer is told that
the first has been there.
"""

import contextlib
import hashlib
import os
import stat
import tempfile
import time
from pathlib import Path

from dryward.checks import BadFile, PlainError

#: Largest file that is read [bytes]; an assembly takes a few thousand.
LARGEST = 500_000
#: What `store` takes as `expect` for a file that must not exist yet.
NEW = "new"
_PATIENCE = 5.0  # how long a second writer waits for the first one [s]


def fetch(path):
    """The text of a file, and a token that says which state of it this was.

    Parameters
    ----------
    path : str or Path

    Returns
    -------
    str, str

    Raises
    ------
    BadFile
        One sentence with file and what is wrong.
    """
    path = Path(path)
    content = _content(path)
    try:
        return content.decode("utf-8"), _token(content)
    except UnicodeDecodeError:
        raise BadFile(f"{path.name[-60:]}: it is not a text file.") from None


def _content(path):
    """The bytes of a file, when it is one of a sensible size."""
    try:
        with open(path, "rb", opener=lambda p, flags: os.open(p, flags | getattr(os, "O_NONBLOCK", 0))) as stream:
            plain = stat.S_ISREG(os.fstat(stream.fileno()).st_mode)
            found = stream.read(LARGEST + 1) if plain else b""
    except IsADirectoryError:
        raise BadFile(f"{path.name[-60:]}: it is a folder, not a file.") from None
    except FileNotFoundError:
        raise BadFile(f"{path.name[-60:]}: there is no such file.") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "the name is not one a file can have"
        raise BadFile(f"{path.name[-60:]}: it cannot be read ({reason}).") from None
    if not plain:
        raise BadFile(f"{path.name[-60:]}: it is not a file.")
    if len(found) > LARGEST:
        raise BadFile(f"{path.name[-60:]}: it is larger than {LARGEST} bytes, too large for an assembly.")
    return found


def _token(content):
    return hashlib.sha256(content).hexdigest()


def store(words, path, expect=None):
    """Write a text as a file, whole or not at all.

    Parameters
    ----------
    words : str
    path : str or Path
        A file that exists is replaced in one step.
    expect : str, optional
        The token of `fetch` or of the last `store`: refuses when the
        file has changed since.  `NEW` refuses when there is a file.

    Returns
    -------
    str
        The token of the written file.

    Raises
    ------
    BadFile
        When it cannot be written, or has changed; the old file is untouched.
    """
    content = words.encode("utf-8")
    path = Path(path)
    draft = None
    try:
        path = path.resolve()  # a link keeps pointing to the file it names
        with _alone(path):
            _unchanged(path, expect)
            mode = stat.S_IMODE(path.stat().st_mode) if path.exists() else 0o644
            number, draft = tempfile.mkstemp(prefix=f".{path.name[:40]}.", dir=path.parent)
            with os.fdopen(number, "wb") as stream:
                stream.write(content)
                stream.flush()
                os.fsync(stream.fileno())
            os.chmod(draft, mode)
            os.replace(draft, path)
            draft = None
    except (OSError, ValueError) as error:
        if isinstance(error, PlainError):
            raise
        reason = getattr(error, "strerror", None) or "the name is not one a file can have"
        raise BadFile(f"{path.name[-60:]}: it cannot be written ({reason}).") from None
    finally:
        if draft:
            Path(draft).unlink(missing_ok=True)
    return _token(content)


@contextlib.contextmanager
def _alone(path):
    """One writer at a time; a lock left by a crash is taken over."""
    lock = path.with_name(f".{path.name}.lock")
    until = time.monotonic() + _PATIENCE
    while True:
        try:
            os.close(os.open(lock, os.O_CREAT | os.O_EXCL | os.O_WRONLY))
            break
        except FileExistsError:
            with contextlib.suppress(FileNotFoundError):
                if time.time() - lock.stat().st_mtime > 4 * _PATIENCE:
                    lock.unlink()
                    continue
            if time.monotonic() > until:
                raise BadFile(f"{path.name[-60:]}: another program is writing it; try again.") from None
            time.sleep(0.02)
    try:
        yield
    finally:
        lock.unlink(missing_ok=True)


def _unchanged(path, expect):
    if expect == NEW:
        if path.exists():
            raise BadFile(f"{path.name[-60:]}: there is already a file of that name; it was left as it is.")
    elif expect is not None and (not path.exists() or _token(_content(path)) != expect):
        raise BadFile(
            f"{path.name[-60:]}: it was changed or removed since it was opened; "
            f"open it again, or save under another name."
        )
