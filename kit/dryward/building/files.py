"""Assembly files: TOML, read with care and written whole or not at all.

A file written by hand may be as short as this; a bare number is SI::

    format = "dryward assembly"
    version = 2
    name = "My roof"
    slope = 35
    interior_film = "R-0.61"

    [[layer]]                       # from inside to outside
    name = "board"
    material = "gypsum-board"       # an id of the library
    thickness = "1/2 in"

    [[layer]]
    name = "inner membrane"
    membrane = { permeance = "0.7 perm" }

    [[layer]]
    name = "vent space"
    air_space = { thermal_resistance = "R-0.6", vented = true }
    thickness = "1-1/2 in"

A layer of the library may be given its own ``permeance`` and
``thermal_resistance``.  What the kit writes holds every property of every
layer, so it opens without the library.
"""

import contextlib
import hashlib
import os
import re
import stat
import tempfile
import time
import tomllib
from pathlib import Path

import tomli_w

from dryward.building import versions, written
from dryward.checks import BadFile, PlainError

#: Largest file that is read [bytes]; an assembly takes a few thousand.
LARGEST = 500_000
#: What `save` takes as `expect` for a file that must not exist yet.
NEW = "new"
# A key of ten and more parts: none of ours has more than four, and the TOML
# reader's memory grows with the square of their number.
_LONG_KEY = re.compile(
    r"""(?<![\w-])(?:(?:[\w-]++|"(?:[^"\\\n]|\\.)*+"|'[^'\n]*+')[ \t]*+\.[ \t]*+){10}""",
)
_PATIENCE = 5.0  # how long a second writer waits for the first one [s]


def refuse_long_keys(text, name):
    """The text, when no key in it has so many parts that reading it would exhaust the memory.

    Parameters
    ----------
    text : str
        TOML that is not yet read.
    name : str
        What the message calls the file.

    Returns
    -------
    str

    Raises
    ------
    BadFile
        For a key of ten or more parts.

    Examples
    --------
    >>> refuse_long_keys("a.b = 1", "roof.toml")
    'a.b = 1'
    """
    if _LONG_KEY.search(text):
        raise BadFile(f"{name}: it is nested too deeply.")
    return text


def parse(text, name="the file"):
    """An assembly from the text of a file.

    Parameters
    ----------
    text : str
        TOML.
    name : str, optional
        What the message calls the file.

    Returns
    -------
    Assembly

    Raises
    ------
    BadFile
        One sentence with the place and what is wrong there.

    Examples
    --------
    >>> parse('format = "dryward assembly"\\nversion = 2\\n'
    ...       '[[layer]]\\nmaterial = "spruce"\\nthickness = "1 in"').layers[0].name
    'spruce, pine or fir'
    """
    name = str(name)[-60:]
    refuse_long_keys(text, name)
    try:
        return written.assembly(versions.current(tomllib.loads(text)))
    except PlainError as error:
        raise BadFile(f"{name}: {str(error).rstrip('.')}.") from None
    except RecursionError:
        raise BadFile(f"{name}: it is nested too deeply.") from None
    except tomllib.TOMLDecodeError as error:  # says line and column
        raise BadFile(f"{name}: it is not written as TOML: {str(error)[:120].rstrip('.')}.") from None
    except ValueError:
        raise BadFile(f"{name}: it holds a number with too many digits.") from None


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


def load_with_token(path):
    """An assembly and a token that says which state of the file it was.

    Parameters
    ----------
    path : str or Path

    Returns
    -------
    Assembly, str
        The token is what `save` takes as `expect`.

    Raises
    ------
    BadFile
        One sentence with file, place and what is wrong there.

    Examples
    --------
    >>> import tempfile
    >>> from dryward.building.presets import preset
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     path = Path(folder, "roof.toml")
    ...     token = save(preset("vented-vault"), path)
    ...     roof, same = load_with_token(path)
    >>> same == token
    True
    """
    words, token = fetch(path)
    return parse(words, Path(path).name), token


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


def load(path):
    """An assembly from a file.

    Parameters
    ----------
    path : str or Path
        A TOML file of this or an earlier version.

    Returns
    -------
    Assembly

    Raises
    ------
    BadFile
        One sentence with file, place and what is wrong there.

    Examples
    --------
    >>> import tempfile
    >>> from dryward.building.presets import preset
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     path = Path(folder, "roof.toml")
    ...     token = save(preset("vented-vault"), path)
    ...     roof = load(path)
    >>> roof.name
    'Vented vault, 50-perm outer membrane'
    """
    return load_with_token(path)[0]


def text(assembly):
    """An assembly as the text of a file.

    Parameters
    ----------
    assembly : Assembly

    Returns
    -------
    str
        TOML that opens without the library.

    Examples
    --------
    >>> from dryward.building.presets import preset
    >>> text(preset("vented-vault")).splitlines()[0]
    'format = "dryward assembly"'
    """
    return tomli_w.dumps(written.table(assembly))


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


def save(assembly, path, expect=None):
    """Write an assembly as a file, whole or not at all.

    Parameters
    ----------
    assembly : Assembly
    path, expect
        As in `store`.

    Returns
    -------
    str
        The token of the written file.

    Raises
    ------
    BadFile
        When it cannot be written, or has changed; the old file is untouched.

    Examples
    --------
    >>> import tempfile
    >>> from dryward.building.presets import preset
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     path = Path(folder, "roof.toml")
    ...     token = save(preset("vented-vault"), path)
    ...     newer = save(preset("vented-vault-osb"), path, expect=token)
    >>> newer == token
    False
    """
    words = text(assembly)
    parse(words, Path(path).name)  # nothing is written that could not be read again
    return store(words, path, expect)


def store(words, path, expect=None):
    """Write a text as a file, whole or not at all.

    Parameters
    ----------
    words : str
    path : str or Path
        A file that exists is replaced in one step.
    expect : str, optional
        The token of `load_with_token` or of the last `save`: refuses when the
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
