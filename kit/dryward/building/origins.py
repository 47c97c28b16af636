"""Where the values of a material, a sheet or an air space come from, as it is printed.

A row of the library names a source, a place in it and how it was read.  All
three belong to an origin: a handbook's number that was written down from
memory is not the handbook's.
"""

import dataclasses
import re

from dryward.building.membranes import FixedMembrane

#: Words of `how_read` that no short form may leave out.
CAUTIONS = ("from memory", "estimated", "invented", "typed by the reader", "given with the layer")
_INVENTED = "Invented for teaching"
#: That something was read as well.
_READ = re.compile(r"(?<!none )\bread in\b")


def origin(thing):
    """What carries the source of a thing: itself, or the origin of a membrane.

    Parameters
    ----------
    thing : Material, membrane or AirSpace

    Returns
    -------
    Material, AirSpace or Origin

    Examples
    --------
    >>> from dryward.building import membrane
    >>> origin(membrane("polyethylene-6-mil")).how_read
    'from memory'
    """
    return thing if hasattr(thing, "source") else thing.origin


def cautions(words):
    """What a reader must know of how a value came about, in a few words.

    Parameters
    ----------
    words : str
        As in the column ``how_read``.

    Returns
    -------
    str
        Empty where the values were read.

    Examples
    --------
    >>> cautions("conductivity read in a secondary source; mu 50 dry and 20 wet from memory")
    'partly from memory'
    >>> cautions("estimated: of the size on data sheets, none read")
    'estimated'
    """
    found = [each for each in CAUTIONS if each in words.lower()]
    partly = "partly " if found and _READ.search(words) else ""
    return f"{partly}{', '.join(found)}"


def said(thing, longest=None):
    """The origin of a thing's values in one phrase.

    Parameters
    ----------
    thing : Material, membrane or AirSpace
    longest : int, optional
        Characters there is room for, 60 or more.  What is longer has its
        source cut, and keeps of how it was read the cautions alone.

    Returns
    -------
    str

    Examples
    --------
    >>> from dryward.building import membrane
    >>> said(membrane("polyethylene-6-mil"))
    'ASHRAE Handbook of Fundamentals, permeance of building materials, permeance table (from memory)'
    >>> said(membrane("polyethylene-6-mil"), 60)
    'ASHRAE Handbook of Fundamentals, permeance … (from memory)'
    """
    row = origin(thing)
    source = row.source or "own value"
    # A place that is not known is written "-", one for each source.
    places = [part.strip() for part in row.where.split(";") if part.strip() not in ("", "-")]
    # What is invented need not say so twice.
    how = row.how_read.removeprefix("invented for teaching: ").removeprefix("invented: ")
    how = how if source == _INVENTED else row.how_read
    whole = ", ".join(part for part in (source, "; ".join(places)) if part) + (f" ({how})" if how else "")
    if longest is None or len(whole) <= longest:
        return whole
    caution = cautions(row.how_read) if source != _INVENTED else ""
    end = f" ({caution})" if caution else ""
    room = longest - len(end)
    if len(source) > room:
        source = f"{source[: room - 2].rsplit(' ', 1)[0].rstrip(',;')} …"
    return f"{source}{end}"


def given(thing, what, by):
    """The same thing, its origin saying that a value is not the library's.

    Parameters
    ----------
    thing : Material, membrane or AirSpace
        With the new value.
    what : str
        The value, such as "permeance".
    by : {"typed by the reader", "given with the layer"}

    Returns
    -------
    Material, membrane or AirSpace

    Notes
    -----
    Nothing is left of the source of a sheet that had only its permeance.

    Examples
    --------
    >>> from dryward.building import material, membrane
    >>> said(given(membrane("polyethylene-6-mil"), "permeance", "typed by the reader"))
    'typed by the reader'
    >>> given(material("slate"), "conductivity", "typed by the reader").how_read
    'conductivity typed by the reader; from memory'
    """
    if isinstance(thing, FixedMembrane):
        return FixedMembrane(thing.level, dataclasses.replace(thing.origin, source=by, where="", how_read=""))
    note = f"{what} {by}"
    if note in thing.how_read:
        return thing
    return dataclasses.replace(thing, how_read="; ".join(part for part in (note, thing.how_read) if part))
