"""Files on the disk: written whole or not at all, by one writer at a time, each with its version.

Every file that the kit writes for somebody goes through here.  A writer that
is killed leaves nothing that lasts: the system lets go of its lock, and the
next writer of the same file removes its draft.
"""

from __future__ import annotations

import contextlib
import errno
import glob
import hashlib
import inspect
import io
import os
import pickle
import stat
import time
import uuid
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import wraps
from importlib.metadata import version
from pathlib import Path
from typing import Any

import numpy as np
import platformdirs
from numpy.typing import NDArray

from dryward.checks import BadFile
from dryward.language import called, message

try:
    import fcntl
except ImportError:  # Windows
    fcntl = None  # type: ignore[assignment] # a module elsewhere
    import msvcrt

#: Largest text that is read [bytes]; a roof takes a few thousand.
LARGEST = 500_000
#: What `save_text` takes as `expect` for a file that must not exist yet.
NEW = "new"
#: How long a second writer waits for the first one [s].
PATIENCE = 5.0
_POLL = 0.01  # between two looks at a lock [s]
#: A draft of this age [s] is of a writer that died: none takes so long.
ABANDONED = 3600.0
#: Series in the cache; the ones not made for longest go.
CACHED = 200


class NewerFile(BadFile):
    """A file of a later version of the kit, to be left as it is."""


# --- written whole ---------------------------------------------------------------


def write_whole(path: str | Path, content: bytes | str, *, new: bool = False, private: bool = False) -> None:
    """Write a file, whole or not at all; one that exists is replaced in one step and keeps its permissions.

    With `new` it is refused (FileExistsError) where there is a file; a
    `private` file is made for its owner's eyes alone.  Raises OSError, and
    ValueError for a name that no file can have; the old file is then untouched.
    """
    path = _real(path)
    if new:
        with locked(path):
            if path.exists():
                raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(path))
            _replace(path, content, private)
    else:
        _replace(path, content, private)


def _replace(path: Path, content: bytes | str, private: bool) -> None:
    remove_leftovers(path)
    draft = path.with_name(f".{path.name[:40]}.{uuid.uuid4().hex[:8]}.draft")
    flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
    try:
        with os.fdopen(os.open(draft, flags, 0o600 if private else 0o666), "wb") as stream:
            stream.write(content.encode("utf-8") if isinstance(content, str) else content)
            stream.flush()
            os.fsync(stream.fileno())
        if path.exists():
            os.chmod(draft, stat.S_IMODE(path.stat().st_mode))
        os.replace(draft, path)
    finally:
        with contextlib.suppress(OSError):
            draft.unlink(missing_ok=True)


def remove_leftovers(path: str | Path) -> None:
    """Remove what killed writers of this file have left beside it."""
    path = _real(path)
    for draft in path.parent.glob(f".{glob.escape(path.name[:40])}.????????.draft"):
        with contextlib.suppress(OSError):
            if time.time() - draft.stat().st_mtime > ABANDONED:
                draft.unlink()


def set_aside(path: Path) -> Path:
    """Give a file that cannot be read a free name beside it, and tell that name."""
    for count in range(1, 1000):
        found = path.with_name(f"{path.stem}-unreadable-{count}{path.suffix}")
        if not found.exists():
            return path.replace(found)
    raise BadFile(message("storage.too-many-copies", file=path.name))


def _real(path: str | Path) -> Path:
    """The file itself: a link keeps pointing to what it names."""
    return Path(os.path.realpath(path))


def reason(error: OSError) -> str:
    """Why the system refused, in plain words."""
    id = _REASONS.get(error.errno or 0)
    if id or not error.strerror:
        return message(id or "storage.system-refused")
    return error.strerror.lower()


#: What the system means by its numbers; any other is told in its own words.
_REASONS = {
    errno.ENOSPC: "storage.disk-full",
    errno.EDQUOT: "storage.disk-full",
    errno.EACCES: "storage.folder-closed",
    errno.EPERM: "storage.folder-closed",
    errno.EROFS: "storage.folder-closed",
    errno.ENOTDIR: "storage.folder-not-there",
    errno.EAGAIN: "storage.another-writes",
}


# --- one writer at a time --------------------------------------------------------


@contextlib.contextmanager
def locked(path: str | Path, patience: float | None = None) -> Iterator[None]:
    """Keep other writers of a file away; BlockingIOError when one of them is not done within `patience` [s].

    The lock is the system's, which lets go of it when a program dies, on an
    empty file beside the one that is written.
    """
    path = _real(path)
    lock = path.with_name(f".{path.name}.lock")
    end = time.monotonic() + (PATIENCE if patience is None else patience)
    while (held := _try_lock(lock)) is None:
        if time.monotonic() > end:
            raise BlockingIOError(errno.EAGAIN, message("storage.another-writes"), str(path))
        time.sleep(_POLL)
    try:
        yield
    finally:
        if fcntl:
            lock.unlink(missing_ok=True)  # while it is held: who comes now makes a new one
            os.close(held)
        else:
            msvcrt.locking(held, msvcrt.LK_UNLCK, 1)  # type: ignore[attr-defined] # Windows alone has it
            os.close(held)
            with contextlib.suppress(OSError):  # somebody else has it open by now
                lock.unlink()


def _try_lock(lock: Path) -> int | None:
    """The open lock file when it is ours now; None when another has it."""
    try:
        held = os.open(lock, os.O_RDWR | os.O_CREAT, 0o666)
    except PermissionError:
        if fcntl:
            raise
        return None  # Windows says so of a file that is about to be gone
    try:
        if fcntl:
            fcntl.flock(held, fcntl.LOCK_EX | fcntl.LOCK_NB)
        else:
            msvcrt.locking(held, msvcrt.LK_NBLCK, 1)  # type: ignore[attr-defined] # Windows alone has it
    except OSError as error:
        if error.errno in (errno.EAGAIN, errno.EACCES, errno.EDEADLK):
            os.close(held)
            return None
        # A network disk without locks: better written than refused.
    with contextlib.suppress(FileNotFoundError):
        if os.path.samestat(os.stat(lock), os.fstat(held)):
            return held
    os.close(held)  # the one before us has removed it meanwhile
    return None


# --- a text, and the state it was read in ---------------------------------------------


def read_text(path: str | Path, kind: str) -> tuple[str, str]:
    """The text of a file of sensible size, and a token that says which state of the file this was.

    `kind` says what it should be, such as "an assembly".  Raises BadFile:
    one sentence with the file and what is wrong.
    """
    path = Path(path)
    content = _content(path, kind)
    try:
        return content.decode("utf-8"), _token(content)
    except UnicodeDecodeError:
        raise BadFile(message("storage.no-text", file=path.name[-60:])) from None


def save_text(words: str, path: str | Path, expect: str | None = None) -> str:
    """Write a text as a file, whole or not at all, and give the token of the new state.

    `expect` is the token of `read_text` or of the last `save_text`: refused
    when the file has changed since.  `NEW` refuses when there is a file.
    Raises BadFile; the old file is then untouched.
    """
    path = Path(path)
    try:
        with locked(path):
            _unchanged(_real(path), expect)
            write_whole(path, words)
    except BlockingIOError:
        raise BadFile(message("storage.being-written", file=path.name[-60:])) from None
    except BadFile:
        raise
    except (OSError, ValueError) as error:
        raise BadFile(message("storage.cannot-be-written", file=path.name[-60:], cause=_cause(error))) from None
    return _token(words.encode("utf-8"))


def _content(path: Path, kind: str = "a text") -> bytes:
    """The bytes of a file, when it is one of a sensible size."""
    try:
        # A pipe or a device must not hold the reader up.
        with open(path, "rb", opener=lambda p, flags: os.open(p, flags | getattr(os, "O_NONBLOCK", 0))) as stream:
            plain = stat.S_ISREG(os.fstat(stream.fileno()).st_mode)
            found = stream.read(LARGEST + 1) if plain else b""
    except IsADirectoryError:
        raise BadFile(message("storage.a-folder", file=path.name[-60:])) from None
    except FileNotFoundError:
        raise BadFile(message("storage.not-there", file=path.name[-60:])) from None
    except (OSError, ValueError) as error:
        raise BadFile(message("storage.cannot-be-read", file=path.name[-60:], cause=_cause(error))) from None
    if not plain:
        raise BadFile(message("storage.no-file", file=path.name[-60:]))
    if len(found) > LARGEST:
        facts = {"file": path.name[-60:], "most": str(LARGEST), "called": called(kind)}
        raise BadFile(message("storage.too-large", **facts))
    return found


def _cause(error: Exception) -> str:
    return getattr(error, "strerror", None) or message("storage.no-name")


def _token(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()


def _unchanged(path: Path, expect: str | None) -> None:
    if expect == NEW:
        if path.exists():
            raise BadFile(message("storage.already-there", file=path.name[-60:]))
    elif expect is not None and (not path.exists() or _token(_content(path)) != expect):
        raise BadFile(message("storage.changed", file=path.name[-60:]))


# --- versions ----------------------------------------------------------------------


@dataclass(frozen=True)
class Format:
    """A kind of file: its name, the version written today, and the step up from each earlier one.

    A change of the format adds a step and one to the version; files of all
    earlier versions keep opening.  A step takes the body of its own version
    and gives the body of the next.

    Examples
    --------
    >>> roof = Format("a roof", 2, {1: lambda body: {"slope": body["pitch"]}})
    >>> roof.current({"format": "a roof", "version": 1, "pitch": 30})
    {'format': 'a roof', 'version': 2, 'slope': 30}
    """

    name: str
    version: int
    steps: Mapping[int, Callable[[dict[str, Any]], dict[str, Any]]] = field(default_factory=dict)

    def headed(self, body: Mapping[str, Any]) -> dict[str, Any]:
        """The body as it is written, below what it is and its version."""
        return {"format": self.name, "version": self.version, **body}

    def current(self, body: Mapping[str, Any]) -> dict[str, Any]:
        """The body of a file, brought to today's version; BadFile for another kind, NewerFile for a later version."""
        if not body:
            raise BadFile(message("storage.empty"))
        if body.get("format") != self.name:
            raise BadFile(message("storage.other-format", format=self.name))
        found = body.get("version")
        if isinstance(found, bool) or not isinstance(found, int) or found < 1:
            raise BadFile(message("storage.no-version", latest=str(self.version)))
        if found > self.version:
            raise NewerFile(message("storage.newer", version=str(found)[:20], latest=str(self.version)))
        plain = dict(body)
        for before in range(found, self.version):
            plain = self.headed(
                {key: value for key, value in self.steps[before](plain).items() if key not in ("format", "version")}
            )
        return plain


# --- the cache -----------------------------------------------------------------------


def cache_folder() -> Path:
    """Where series that take long to work out are kept between runs."""
    return Path(platformdirs.user_cache_dir("dryward", appauthor=False)) / "series"


def cached(*libraries: str) -> Callable[[Callable[..., Any]], Callable[..., NDArray[np.float64]]]:
    """A function's array, worked out once on a computer for each set of arguments, then read from the user's cache.

    For what only a heavy library can work out: pvlib brings pandas and SciPy,
    75 MB and a second in every learner's kernel, for the sun of years that do
    not change.  A result is known by the arguments, by the source of the
    function's module and by the versions of the `libraries`.  Where no folder
    can be written nothing is kept; nothing else changes.

    Examples
    --------
    >>> double = cached("numpy")(lambda series: 2.0 * series)
    >>> double(np.array([1.0, 2.5]))
    array([2., 5.])
    """

    def decorated(function: Callable[..., Any]) -> Callable[..., NDArray[np.float64]]:
        module = inspect.getmodule(function)
        source = inspect.getsource(module) if module else ""
        known = [version(name) for name in libraries]

        @wraps(function)
        def found(*args: object) -> NDArray[np.float64]:
            what = pickle.dumps((source, known, function.__qualname__, args), protocol=5)
            path = cache_folder() / f"{hashlib.sha256(what).hexdigest()[:32]}.npy"
            try:
                return np.load(path, allow_pickle=False)
            except (OSError, ValueError, EOFError):  # not there, or spoiled
                array = np.asarray(function(*args))
                _cache(path, array)
                return array

        return found

    return decorated


def _cache(path: Path, array: NDArray[np.float64]) -> None:
    written = io.BytesIO()
    np.save(written, array, allow_pickle=False)
    with contextlib.suppress(OSError):
        path.parent.mkdir(parents=True, exist_ok=True)
        write_whole(path, written.getvalue())
        for old in sorted(path.parent.iterdir(), key=lambda each: each.stat().st_mtime)[:-CACHED]:
            old.unlink(missing_ok=True)
