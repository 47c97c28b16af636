"""The library: generic materials, sheets and air layers, each with its source.

Three tables in ``data/``: materials.csv (things with thickness), sheets.csv
(things that count by permeance) and air_spaces.csv.  All are generic; none
is a product.
"""

import difflib
from functools import cache

from dryward.building import tables
from dryward.building.layers import AirSpace
from dryward.building.materials import Material
from dryward.building.membranes import FixedMembrane, LaminateMembrane, VariableMembrane
from dryward.checks import BadFile, UnknownName


@cache
def _whole():
    found = {}
    for name in tables.COLUMNS:
        for key, thing in tables.read(name).items():
            if key in found:
                raise BadFile(f"The id {key} stands in two tables of the library.")
            found[key] = thing
    return found


def _pick(kind, key, classes):
    fitting = {name: thing for name, thing in _whole().items() if isinstance(thing, classes)}
    try:
        return fitting[key]
    except (KeyError, TypeError):
        raise UnknownName(kind, key, fitting) from None


def substance(id):
    """Anything of the library by its id.

    Parameters
    ----------
    id : str
        Lower-case words with hyphens.

    Returns
    -------
    Material, FixedMembrane, VariableMembrane, LaminateMembrane or AirSpace

    Raises
    ------
    UnknownName
        With the nearest ids.

    Examples
    --------
    >>> substance("gypsum-board").category
    'boards'
    """
    return _pick("material or sheet", id, object)


def material(id):
    """A material of the library by its id.

    Parameters
    ----------
    id : str
        Lower-case words with hyphens.

    Returns
    -------
    Material

    Raises
    ------
    UnknownName
        With the nearest ids.

    Examples
    --------
    >>> material("spruce").wood
    True
    """
    return _pick("material", id, Material)


def membrane(id):
    """A membrane, sheet or paint of the library by its id.

    Parameters
    ----------
    id : str
        Lower-case words with hyphens.

    Returns
    -------
    FixedMembrane, VariableMembrane or LaminateMembrane

    Raises
    ------
    UnknownName
        With the nearest ids.

    Examples
    --------
    >>> from dryward.units import from_si
    >>> round(from_si(membrane("teaching-variable").permeance(0.4, 0.2), "perm"), 3)
    0.5
    """
    return _pick("membrane", id, (FixedMembrane, VariableMembrane, LaminateMembrane))


def air_space(id):
    """An air layer of the library by its id.

    Parameters
    ----------
    id : str
        Lower-case words with hyphens.

    Returns
    -------
    AirSpace

    Raises
    ------
    UnknownName
        With the nearest ids.

    Examples
    --------
    >>> air_space("vent-space").vented
    True
    """
    return _pick("air space", id, AirSpace)


def category(thing):
    """The shelf on which a thing of the library stands.

    Parameters
    ----------
    thing : Material, membrane or AirSpace

    Returns
    -------
    str

    Examples
    --------
    >>> category(substance("polyethylene-6-mil"))
    'membranes and sheets'
    """
    return thing.origin.category if hasattr(thing, "origin") else thing.category


def shelf():
    """The whole library, sorted by shelf.

    Returns
    -------
    dict
        Category to a tuple of things, in the order of the tables.

    Examples
    --------
    >>> "air layers" in shelf()
    True
    """
    found = {}
    for thing in _whole().values():
        found.setdefault(category(thing), []).append(thing)
    return {key: tuple(things) for key, things in found.items()}


def search(text):
    """Things of the library whose id, name or category has all the typed words.

    Parameters
    ----------
    text : str
        Words in any order; nothing typed finds everything.  With no hit,
        names that are close in spelling.

    Returns
    -------
    tuple
        Of Material, membranes and AirSpace, in the order of the tables.

    Examples
    --------
    >>> [thing.id for thing in search("poly 6")]
    ['polyethylene-6-mil']
    """
    words = str(text).lower().split()
    things = _whole()
    found = tuple(
        thing
        for key, thing in things.items()
        if all(word in f"{key} {thing.name} {category(thing)}".lower() for word in words)
    )
    if found:
        return found
    close = difflib.get_close_matches(str(text).lower().replace(" ", "-"), things, n=5, cutoff=0.6)
    return tuple(things[key] for key in close)
