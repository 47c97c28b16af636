"""Versions of the assembly file, and how an old one becomes a new one.

A change of the format adds one function here and one number; files of all
earlier versions keep opening.  A function takes the table of its own version
and gives the table of the next.
"""

from dryward.checks import BadFile

#: What every file says it is, and the version written today.
FORMAT = "dryward assembly"
VERSION = 2

# Version 1 said "layers", "inside_film", "outside_film" and "pitch", gave
# thickness in mm and permeance in perm as bare numbers.
_RENAMED = {"layers": "layer", "inside_film": "interior_film", "outside_film": "exterior_film", "pitch": "slope"}


def _from_1(table):
    new = {_RENAMED.get(key, key): value for key, value in table.items()}
    layers = []
    for layer in new.get("layer", ()):
        if isinstance(layer, dict):
            layer = dict(layer)
            for old, key, unit in (("thickness_mm", "thickness", "mm"), ("perms", "permeance", "perm")):
                if old in layer:
                    layer[key] = f"{layer.pop(old)} {unit}"
        layers.append(layer)
    return {**new, "layer": layers, "version": 2}


_STEPS = {1: _from_1}


def current(table):
    """The table of an assembly file, brought to the present version.

    Parameters
    ----------
    table : dict
        As read from the file; not changed.

    Returns
    -------
    dict

    Raises
    ------
    BadFile
        When it is no assembly file, or of a version that is not known.

    Examples
    --------
    >>> current({"format": "dryward assembly", "version": 1, "pitch": 30, "layers": []})["slope"]
    30
    """
    if not table:
        raise BadFile("it is empty")
    if table.get("format") != FORMAT:
        raise BadFile(f'it does not begin with format = "{FORMAT}"')
    version = table.get("version")
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        raise BadFile(f"its version must be a whole number from 1 to {VERSION}")
    if version > VERSION:
        raise BadFile(f"it is of version {str(version)[:20]}, newer than this kit, which reads up to version {VERSION}")
    while version < VERSION:
        if not isinstance(table.get("layers", []), list):
            raise BadFile("its layers must be written as [[layers]]")
        table = _STEPS[version](table)
        version = table["version"]
    return table
