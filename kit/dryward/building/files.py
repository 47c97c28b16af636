"""Assembly files: an assembly as TOML, and back.

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
``thermal_resistance``; ``open_to_air = true`` or ``false`` says whether
leaking air seeps through it, where its kind does not tell.  What the kit
writes holds every property of every layer, so it opens without the library.
"""

import re
import tomllib
from pathlib import Path

import tomli_w

from dryward import storage
from dryward.building import written
from dryward.checks import BadFile, PlainError, ended

# A key of ten and more parts: none of ours has more than four, and the TOML
# reader's memory grows with the square of their number.
_LONG_KEY = re.compile(
    r"""(?<![\w-])(?:(?:[\w-]++|"(?:[^"\\\n]|\\.)*+"|'[^'\n]*+')[ \t]*+\.[ \t]*+){10}""",
)


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
        return written.assembly(written.FORMAT.current(tomllib.loads(text)))
    except PlainError as error:
        raise BadFile(ended(f"{name}: {error}")) from None
    except RecursionError:
        raise BadFile(f"{name}: it is nested too deeply.") from None
    except tomllib.TOMLDecodeError as error:  # says line and column
        raise BadFile(f"{name}: it is not written as TOML: {str(error)[:120].rstrip('.')}.") from None
    except ValueError:
        raise BadFile(f"{name}: it holds a number with too many digits.") from None


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
    words, token = storage.read_text(path, "an assembly")
    return parse(words, Path(path).name), token


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


def save(assembly, path, expect=None):
    """Write an assembly as a file, whole or not at all.

    Parameters
    ----------
    assembly : Assembly
    path, expect
        As in `storage.save_text`.

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
    return storage.save_text(words, path, expect)
