"""Assemblies: layers from inside to outside, between two films; their files, and the presets of the kit.

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

from __future__ import annotations

import dataclasses
import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cache, cached_property
from importlib import resources
from importlib.resources.abc import Traversable
from pathlib import Path
from typing import TYPE_CHECKING, Any

import tomli_w

from dryward import storage, units
from dryward.building import films, library
from dryward.building.layers import THICKEST, Framing, Layer
from dryward.building.schema import LONGEST_TEXT, ORIGIN, Table, toml
from dryward.building.substances import (
    CONDUCTS,
    PASSES,
    AirSpace,
    FixedMembrane,
    LaminateMembrane,
    Material,
    Membrane,
    Origin,
    Substance,
    VariableMembrane,
)
from dryward.checks import BadFile, OutOfRange, PlainError, UnknownName
from dryward.exhibit import Exhibit, one_line
from dryward.language import called, listed, message
from dryward.units import checked, from_si, show

#: From this slope on an assembly is a wall [degrees].
WALL = 60.0


def _unique(layers: Iterable[Layer]) -> tuple[Layer, ...]:
    """The layers with a number behind a name that stands twice."""
    seen: dict[str, int] = {}
    found: list[Layer] = []
    for layer in layers:
        if not isinstance(layer, Layer):
            raise OutOfRange(message("building.made-of-layers", given=repr(layer)[:60]))
        count = seen.get(layer.name, 0) + 1
        seen[layer.name] = count
        found.append(layer if count == 1 else dataclasses.replace(layer, name=f"{layer.name} ({count})"))
    return tuple(found)


@dataclass(frozen=True)
class Assembly(Exhibit):
    """A roof or a wall: layers from inside to outside, between two films.

    Parameters
    ----------
    name : str
    layers : sequence of Layer
        At least one, at most 60; a name that stands twice gets a number.
    interior_film, exterior_film : float
        Surface thermal resistances [m2 K/W], 0 to 1.
    interior_vapor_film, exterior_vapor_film : float
        Surface vapor permeances [kg/(s m2 Pa)], above 0; inf = no resistance.
    slope : float
        From the horizontal [degrees], 0 (flat roof) to 90 (wall), or a text
        such as ``"4/12"``; films may be texts too.
    framing : Framing, optional
    notes : str, optional
        Free words that are kept in the file.

    Raises
    ------
    OutOfRange
        For an empty assembly or a value out of range.

    Notes
    -----
    `thermal_resistance`, `vapor_resistance` and `u_value` go film to film
    through the layers, without framing, and end at a vented space.

    Examples
    --------
    >>> from dryward.building import Material
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> round(Assembly("wall", [Layer(board, 0.016)]).thermal_resistance, 2)
    0.24
    """

    name: str
    layers: tuple[Layer, ...]
    interior_film: float = 0.11
    exterior_film: float = 0.03
    interior_vapor_film: float = math.inf
    exterior_vapor_film: float = math.inf
    slope: float = 0.0
    framing: Framing | None = None
    notes: str = ""

    if TYPE_CHECKING:  # what it takes is more than what it keeps

        def __init__(
            self,
            name: str,
            layers: Iterable[Layer],
            interior_film: float | str = 0.11,
            exterior_film: float | str = 0.03,
            interior_vapor_film: float | str = math.inf,
            exterior_vapor_film: float | str = math.inf,
            slope: float | str = 0.0,
            framing: Framing | None = None,
            notes: str = "",
        ) -> None: ...

    def __post_init__(self) -> None:
        put = object.__setattr__
        put(self, "layers", _unique(self.layers))
        if not 1 <= len(self.layers) <= 60:
            raise OutOfRange(message("building.number-of-layers", name=called(self.name), count=len(self.layers)))
        if self.layers[0].vented:
            raise OutOfRange(message("building.begins-with-vent-space", name=called(self.name)))
        for side in ("interior", "exterior"):
            film = checked(f"The {side} film", getattr(self, f"{side}_film"), "thermal resistance", 0.0, 1.0)
            put(self, f"{side}_film", film)
            vapor = getattr(self, f"{side}_vapor_film")
            put(
                self,
                f"{side}_vapor_film",
                checked(f"The {side} vapor film", vapor, "permeance", 0.0, math.inf, above=True),
            )
        put(self, "slope", checked("Slope", self.slope, "slope"))
        if self.framing:
            for name in self.framing.layers:
                self.layer(name)

    def __repr__(self) -> str:
        resistance = show(self.thermal_resistance, "thermal resistance", "us")
        both = {system: show(self.thickness, "length", system) for system in ("us", "si")}
        thick = message("building.assembly-thick", **both)
        names = " | ".join(called(layer.name) for layer in self.layers)
        facts = {"name": called(self.name), "thick": thick, "resistance": resistance, "layers": names}
        return one_line("Assembly", message("building.assembly-line", **facts, slope=units.slope(self.slope)))

    @cached_property
    def inner_layers(self) -> tuple[Layer, ...]:
        """The layers that the steady and monthly methods see: up to a vent space."""
        for index, layer in enumerate(self.layers):
            if layer.vented:
                return self.layers[:index]
        return self.layers

    @cached_property
    def outer_film(self) -> float:
        """Thermal resistance between the last inner layer and outdoor air [m2 K/W]."""
        vents = [layer for layer in self.layers if layer.vented]
        return vents[0].thermal_resistance if vents else self.exterior_film

    @cached_property
    def thermal_resistance(self) -> float:
        """Air to air [m2 K/W]."""
        return self.interior_film + sum(layer.thermal_resistance for layer in self.inner_layers) + self.outer_film

    @cached_property
    def vapor_resistance(self) -> float:
        """Air to air at a relative humidity of one half [s m2 Pa/kg]."""
        films = 1.0 / self.interior_vapor_film + 1.0 / self.exterior_vapor_film
        return films + sum(layer.vapor_resistance for layer in self.inner_layers)

    @property
    def u_value(self) -> float:
        """Thermal transmittance without framing [W/(m2 K)]."""
        return 1.0 / self.thermal_resistance

    @cached_property
    def thickness(self) -> float:
        """Of all layers [m]."""
        return sum(layer.thickness or 0.0 for layer in self.layers)

    @cached_property
    def bodies(self) -> tuple[tuple[int, ...], ...]:
        """Places of the layers that are one body: neighbors of one material, however many pieces it is drawn in."""
        found: list[tuple[int, ...]] = []
        for place, layer in enumerate(self.layers):
            before = self.layers[found[-1][-1]].substance if found else None
            if found and isinstance(layer.substance, Material) and layer.substance == before:
                found[-1] = (*found[-1], place)
            else:
                found.append((place,))
        return tuple(found)

    def index(self, name: str) -> int:
        """Place of the layer of that name, counted from the room."""
        for place, layer in enumerate(self.layers):
            if layer.name == name:
                return place
        raise UnknownName("layer", name, [layer.name for layer in self.layers])

    def layer(self, name: str) -> Layer:
        """The layer of that name."""
        return self.layers[self.index(name)]

    def replace(
        self,
        name: str,
        substance: Substance | Layer | str | None = None,
        thickness: float | str | None = None,
        rename: str | None = None,
    ) -> Assembly:
        """The same assembly with one layer changed."""
        place = self.index(name)
        old = self.layers[place]
        if isinstance(substance, Layer):
            new = substance
        else:
            new = Layer(
                old.substance if substance is None else substance,
                old.thickness if thickness is None else thickness,
                rename or name,
                old.open_to_air if substance is None else None,
            )
        layers = (*self.layers[:place], new, *self.layers[place + 1 :])
        framing = self.framing
        if framing and name in framing.layers and new.name != name:
            kept = tuple(new.name if each == name else each for each in framing.layers)
            framing = dataclasses.replace(framing, layers=kept)
        return dataclasses.replace(self, layers=layers, framing=framing)

    def save(self, path: str | Path) -> None:
        """Write it as a TOML file, whole or not at all."""
        save(self, path)


_MOST_LAYERS = 60
_MATERIAL = (
    "density",
    "specific_heat",
    "conductivity",
    "vapor_permeability",
    "sorption",
    "liquid_conductivity",
    "wood",
)
_RESISTANCE, _PERMEANCE = "thermal resistance", "permeance"
#: What the origin of a value that stands in a layer's own table says.
_GIVEN = "given with the layer"


# Its version 1 said "layers", "inside_film", "outside_film" and "pitch", gave
# thickness in mm and permeance in perm as bare numbers.
_RENAMED = {"layers": "layer", "inside_film": "interior_film", "outside_film": "exterior_film", "pitch": "slope"}


def _from_1(table: dict[str, Any]) -> dict[str, Any]:
    new = {_RENAMED.get(key, key): value for key, value in table.items()}
    layers = []
    if not isinstance(new.get("layer", []), list):
        raise BadFile(message("building.its-layers-written", written="[[layers]]"))
    for layer in new.get("layer", ()):
        if isinstance(layer, dict):
            layer = dict(layer)
            for old, key, unit in (("thickness_mm", "thickness", "mm"), ("perms", "permeance", "perm")):
                if old in layer:
                    layer[key] = f"{layer.pop(old)} {unit}"
        layers.append(layer)
    return {**new, "layer": layers}


#: A whole assembly.
FORMAT = storage.Format("dryward assembly", 2, {1: _from_1})


def _without_empty(table: dict[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in table.items() if value not in ("", None, {}, [], False)}


def _plain(value: Any) -> Any:
    return [list(row) for row in value] if isinstance(value, tuple) else value


def _origin_table(thing: Material | AirSpace | Origin) -> dict[str, Any]:
    spans = {name: [low, high] for name, low, high in thing.ranges}
    return {**{key: getattr(thing, key) for key in ORIGIN[:-1]}, "ranges": spans}


def substance_table(thing: Substance) -> dict[str, Any]:
    """A material, membrane or air space as a table."""
    if isinstance(thing, Material):
        table = {key: _plain(getattr(thing, key)) for key in _MATERIAL}
        more = {key: table.pop(key) for key in ("sorption", "liquid_conductivity", "wood")}
        return {**table, **_without_empty({**more, **_origin_table(thing)})}
    if isinstance(thing, AirSpace):
        table = {"thermal_resistance": thing.thermal_resistance, "vapor_permeance": thing.vapor_permeance}
        return {**table, **_without_empty({"vented": thing.vented, **_origin_table(thing)})}
    words = _without_empty(_origin_table(thing.origin))
    if isinstance(thing, FixedMembrane):
        return {"kind": "fixed", "permeance": thing.level, **words}
    if isinstance(thing, VariableMembrane):
        return {"kind": "variable", "points": _plain(thing.points), **words}
    sheets = {"sensitive": substance_table(thing.sensitive), "backing": substance_table(thing.backing)}
    return {"kind": "laminate", **_without_empty({"turned": thing.turned}), **words, **sheets}


def _material(place: str, value: Any) -> Material:
    if isinstance(value, str):
        return library.material(value)
    table = Table(place, value, _MATERIAL + ORIGIN)
    return Material(
        **table.origin(),
        density=table.quantity("density", "density"),
        specific_heat=table.quantity("specific_heat", "specific heat"),
        conductivity=table.curve("conductivity", "conductivity"),
        vapor_permeability=table.curve("vapor_permeability", "permeability", "relative humidity"),
        sorption=table.points("sorption", "relative humidity"),
        liquid_conductivity=table.points("liquid_conductivity") if "liquid_conductivity" in table else None,
        wood=table.flag("wood"),
    )


def _membrane(place: str, value: Any, kinds: tuple[str, ...] = ("fixed", "variable", "laminate")) -> Any:
    if isinstance(value, str):
        return library.membrane(value)
    words = ("kind", "permeance", "points", "sensitive", "backing", "turned")
    table = Table(place, value, words + ORIGIN)
    origin = Origin(**table.origin())
    kind = table.text("kind", "variable" if "points" in table else "laminate" if "sensitive" in table else "fixed")
    if kind not in kinds:
        raise table.wrong("kind", listed(kinds, "or"))
    if kind == "fixed":
        return FixedMembrane(table.quantity("permeance", _PERMEANCE), origin)
    if kind == "variable":
        points = table.points("points", "relative humidity", _PERMEANCE)
        return VariableMembrane([rh for rh, _ in points], [level for _, level in points], origin)
    for key in ("sensitive", "backing"):
        if key not in table:
            raise BadFile(message("building.missing", place=place, key=key))
    sensitive = _membrane(message("building.within", outer=place, inner="sensitive"), value["sensitive"], ("variable",))
    if isinstance(value["backing"], dict):
        backing = _membrane(message("building.within", outer=place, inner="backing"), value["backing"], ("fixed",))
    else:
        backing = table.quantity("backing", _PERMEANCE)
    return LaminateMembrane(sensitive, backing, table.flag("turned"), origin)


def _air_space(place: str, value: Any) -> AirSpace:
    if isinstance(value, str):
        return library.air_space(value)
    table = Table(place, value, ("thermal_resistance", "vapor_permeance", "vented", *ORIGIN))
    return AirSpace(
        **table.origin(),
        thermal_resistance=table.quantity("thermal_resistance", _RESISTANCE),
        vapor_permeance=table.quantity("vapor_permeance", _PERMEANCE, math.inf),
        vented=table.flag("vented"),
    )


_KINDS: dict[str, Callable[..., Any]] = {"material": _material, "membrane": _membrane, "air_space": _air_space}


def _typed(table: Table, key: str) -> str:
    value = table.table[key]
    if isinstance(value, str):
        return message("checks.quoted", text=value[:40])
    return units.written(value, ".6g")


def _checked(table: Table, thickness: float | None) -> None:
    """Refuse what no layer has, in the words that were typed, before anything is worked out from it."""
    if thickness is None:
        return
    if not 0 < thickness <= THICKEST:
        most = {"meters": units.show_in(THICKEST, "m"), "inches": units.show_in(THICKEST, "in", 0)}
        bare = not isinstance(table.table["thickness"], str)
        rule = message("building.thickness-span", **most, given=_typed(table, "thickness"), bare=bare)
        raise table.wrong("thickness", rule)
    if "material" not in table:
        return
    if "thermal_resistance" in table:
        low, high = (from_si(thickness / each, "R") for each in reversed(CONDUCTS))
        if not low <= from_si(table.quantity("thermal_resistance", _RESISTANCE), "R") <= high:
            span = {
                "low": units.written(low, ".2g", "R"),
                "high": units.written(high, ".0f", "R"),
            }
            rule = message("building.span-of-thickness", **span, given=_typed(table, "thermal_resistance"))
            raise table.wrong("thermal_resistance", rule)
    if "permeance" in table:
        open_most = PASSES / thickness
        if not 0 <= table.quantity("permeance", _PERMEANCE) <= open_most:
            widest = units.written(from_si(open_most, "perm"), ".4g", "perm")
            rule = message("building.span-of-thickness", low="0", high=widest, given=_typed(table, "permeance"))
            raise table.wrong("permeance", rule)


def _measured(table: Table, thing: Substance, thickness: float | None) -> Substance:
    """The substance with a permeance or a resistance given for the whole layer."""
    _checked(table, thickness)
    change = {}
    if "permeance" in table:
        level = table.quantity("permeance", _PERMEANCE)
        if isinstance(thing, Material) and thickness:
            change["vapor_permeability"] = level * thickness
        elif isinstance(thing, AirSpace):
            change["vapor_permeance"] = level
        elif isinstance(thing, FixedMembrane):
            return library.with_value_of(FixedMembrane(level, thing.origin), "permeance", _GIVEN)
        else:
            raise table.wrong("permeance", message("building.permeance-for"))
    if "thermal_resistance" in table:
        resistance = table.quantity("thermal_resistance", _RESISTANCE)
        if isinstance(thing, Material) and thickness and resistance > 0:
            change["conductivity"] = thickness / resistance
        elif isinstance(thing, AirSpace):
            change["thermal_resistance"] = resistance
        else:
            raise table.wrong("thermal_resistance", message("building.resistance-for"))
    what = listed([key.replace("_", " ") for key in ("permeance", "thermal_resistance") if key in table])
    if isinstance(thing, Membrane) or not change:
        return thing
    return library.with_value_of(dataclasses.replace(thing, **change), what, _GIVEN)


def _layer(number: int, value: Any) -> Layer:
    name = value.get("name") if isinstance(value, dict) else None
    place = message("building.layer", number=number)
    if isinstance(name, str) and name:
        place = message("building.layer-named", number=number, name=called(name[:40]))
    try:
        table = Table(place, value, ("name", "thickness", "open_to_air", *_KINDS, "permeance", "thermal_resistance"))
        kinds = [kind for kind in _KINDS if kind in table]
        if len(kinds) != 1:
            raise BadFile(message("building.one-substance", place=place, words=listed(tuple(_KINDS), "or")))
        thing: Substance = _KINDS[kinds[0]](place, value[kinds[0]])
        thickness = table.quantity("thickness", "length") if "thickness" in table else None
        opened = table.flag("open_to_air") if "open_to_air" in table else None
        return Layer(_measured(table, thing, thickness), thickness, table.text("name"), opened)
    except BadFile:
        raise
    except PlainError as error:
        raise BadFile(message("building.in-a-file", file=place, sentence=str(error))) from None


_FILMS = (
    ("interior_film", _RESISTANCE),
    ("exterior_film", _RESISTANCE),
    ("interior_vapor_film", _PERMEANCE),
    ("exterior_vapor_film", _PERMEANCE),
)


def from_table(table: dict[str, Any]) -> Assembly:
    """An assembly from the table of a file of the present version."""
    known = ("format", "version", "name", "slope", "notes", "framing", "layer", *(key for key, _ in _FILMS))
    top = Table(message("building.top-of-file"), table, known)
    layers = table.get("layer", [])
    if not isinstance(layers, list):
        raise BadFile(message("building.layers-written", written="[[layer]]"))
    if len(layers) > _MOST_LAYERS:
        raise BadFile(message("building.too-many-layers", count=len(layers), most=_MOST_LAYERS))
    framing = None
    if "framing" in table:
        inner = Table("framing", table["framing"], ("share", "material", "layers"))
        if "material" not in inner:
            raise BadFile(message("building.missing", place="framing", key="material"))
        share = inner.quantity("share", "share")
        framing = Framing(share, _material("framing", table["framing"]["material"]), inner.names("layers"))
    slope = top.quantity("slope", "slope", 0.0)
    # A file that names no films has those of its slope: still air that warmth leaves upward, winter wind outside.
    usual = {"interior_film": films.still_air(slope), "exterior_film": films.moving_air("winter")}
    given = {key: top.quantity(key, quantity) for key, quantity in _FILMS if key in top}
    return Assembly(
        name=top.text("name", message("building.without-a-name")),
        layers=tuple(_layer(number, each) for number, each in enumerate(layers, 1)),
        slope=slope,
        notes=top.text("notes", longest=LONGEST_TEXT),
        framing=framing,
        **{**usual, **given},
    )


def as_table(built: Assembly) -> dict[str, Any]:
    """The table of an assembly, complete, in the present version."""
    found = FORMAT.headed({"name": built.name, "slope": _slope(built.slope)})
    found |= {key: getattr(built, key) for key, _ in _FILMS}
    if built.notes:
        found["notes"] = built.notes
    if built.framing:
        found["framing"] = {
            "share": built.framing.share,
            "layers": list(built.framing.layers),
            "material": substance_table(built.framing.material),
        }
    found["layer"] = []
    for layer in built.layers:
        kind = "membrane" if layer.is_membrane else "air_space" if isinstance(layer.substance, AirSpace) else "material"
        row: dict[str, Any] = {"name": layer.name}
        if layer.thickness is not None:
            row["thickness"] = layer.thickness
        if layer.open_to_air is not None:
            row["open_to_air"] = layer.open_to_air
        found["layer"].append({**row, kind: substance_table(layer.substance)})
    return found


def _slope(angle: float) -> float | str:
    """A slope as a file has it: 4/12 where that is just the angle, and the angle itself is no whole number."""
    rise = units.pitch(angle)
    written = "" if rise is None or angle.is_integer() else f"{rise:g}/12"
    return written if written and units.quantity(written, "slope") == angle else angle


def parse(text: str, name: str = "") -> Assembly:
    """An assembly from the text of a file."""
    name = str(name)[-60:] or message("building.the-file")
    return parse_table(toml(text, name), name)


def parse_table(table: dict[str, Any], name: str) -> Assembly:
    """An assembly from the whole table of a file, of any version."""
    try:
        return from_table(FORMAT.current(table))
    except PlainError as error:
        raise BadFile(message("building.in-a-file", file=name, sentence=str(error))) from None


def load_with_token(path: str | Path) -> tuple[Assembly, str]:
    """An assembly and a token that says which state of the file it was."""
    words, token = storage.read_text(path, "an assembly")
    return parse(words, Path(path).name), token


def load(path: str | Path) -> Assembly:
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
    >>> from dryward.building import preset
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     path = Path(folder, "roof.toml")
    ...     token = save(preset("vented-vault"), path)
    ...     roof = load(path)
    >>> roof.name
    'Vented vault, 50-perm outer membrane'
    """
    return load_with_token(path)[0]


def text(assembly: Assembly) -> str:
    """An assembly as the text of a file."""
    return tomli_w.dumps(as_table(assembly))


def save(assembly: Assembly, path: str | Path, expect: str | None = None) -> str:
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
    >>> from dryward.building import preset
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


def _folder() -> Traversable:
    return resources.files("dryward.building").joinpath("data", "assemblies")


@cache
def presets() -> tuple[str, ...]:
    """The ids of all presets, in alphabetical order.

    Returns
    -------
    tuple of str

    Examples
    --------
    >>> "vented-vault" in presets()
    True
    """
    return tuple(sorted(each.name[:-5] for each in _folder().iterdir() if each.name.endswith(".toml")))


@cache
def _read(name: str) -> Assembly:
    return parse(_folder().joinpath(f"{name}.toml").read_text(encoding="utf-8"), f"{name}.toml")


def preset(id: str) -> Assembly:
    """A preset assembly by its id.

    Parameters
    ----------
    id : str
        One of `presets()`.

    Returns
    -------
    Assembly

    Raises
    ------
    UnknownName
        For what no preset is called, with the nearest ids.

    Examples
    --------
    >>> preset("vented-vault").layer("inner membrane").is_membrane
    True
    """
    if id not in presets():
        raise UnknownName("preset", id, presets())
    return _read(id)
