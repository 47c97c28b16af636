"""Layers and assemblies: what is built, from inside to outside."""

import dataclasses
import math
from dataclasses import dataclass
from functools import cached_property

from dryward.building.materials import Material
from dryward.building.membranes import FixedMembrane, LaminateMembrane, Membrane, VariableMembrane
from dryward.checks import OutOfRange, UnknownName, within


@dataclass(frozen=True)
class AirSpace:
    """A layer of air: a service cavity, a still air space, or a vent space.

    Parameters
    ----------
    thermal_resistance : float
        Across a closed space; for a vented one, the film between the layer
        under it and the moving air [m2 K/W], 0 to 5.
    vapor_permeance : float
        Across a closed space [kg/(s m2 Pa)], above 0; inf for no resistance.
    vented : bool
        Whether outdoor air moves through it: the steady and the monthly
        methods then end the assembly here, at outdoor air behind the film
        (ISO 6946, well-ventilated air layer).
    id, name, source, where, how_read, category, ranges
        As in `Material`.

    Raises
    ------
    OutOfRange
        Outside the ranges.

    Examples
    --------
    >>> AirSpace(0.18).thermal_resistance
    0.18
    """

    thermal_resistance: float
    vapor_permeance: float = math.inf
    vented: bool = False
    id: str = ""
    name: str = "air space"
    source: str = ""
    where: str = ""
    how_read: str = ""
    category: str = "air layers"
    ranges: tuple = ()

    def __post_init__(self):
        put = object.__setattr__
        put(
            self,
            "thermal_resistance",
            within(f"Thermal resistance of {self.name}", self.thermal_resistance, 0, 5, "m² K/W"),
        )
        put(
            self,
            "vapor_permeance",
            within(f"Vapor permeance of {self.name}", self.vapor_permeance, 0, math.inf, "kg/(s m² Pa)", above=True),
        )


@dataclass(frozen=True)
class Layer:
    """One layer: what it is, how thick, and what it is called in this assembly.

    Parameters
    ----------
    substance : Material, FixedMembrane, VariableMembrane, LaminateMembrane or AirSpace
    thickness : float, optional
        [m], above 0 to 3; needed for a material, drawn for an air space, not
        used for a membrane.
    name : str, optional
        Otherwise the name of the substance.

    Raises
    ------
    OutOfRange
        For a material without a thickness, or a thickness out of range.

    Examples
    --------
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> Layer(board, 0.016).thermal_resistance
    0.1
    """

    substance: Material | FixedMembrane | VariableMembrane | LaminateMembrane | AirSpace
    thickness: float | None = None
    name: str = ""

    def __post_init__(self):
        put = object.__setattr__
        if not isinstance(self.substance, (Material, Membrane, AirSpace)):
            raise OutOfRange(f"A layer is made of a material, a membrane or an air space, not {self.substance!r:.60}.")
        put(self, "name", self.name or self.substance.name)
        if self.thickness is not None:
            put(self, "thickness", within(f"Thickness of {self.name}", self.thickness, 0.0, 3.0, "m", above=True))
        elif isinstance(self.substance, Material):
            raise OutOfRange(f"The layer {self.name} needs a thickness, above 0 to 3 m.")

    @property
    def is_membrane(self):
        """Whether it counts by permeance alone."""
        return isinstance(self.substance, Membrane)

    @property
    def vented(self):
        """Whether outdoor air moves through it."""
        return isinstance(self.substance, AirSpace) and self.substance.vented

    @property
    def thermal_resistance(self):
        """Of the dry layer [m2 K/W]; nothing for a membrane."""
        if isinstance(self.substance, Material):
            return self.thickness / self.substance.conductivity_at(0.0)
        return 0.0 if self.is_membrane else self.substance.thermal_resistance

    @property
    def permeance(self):
        """At a mean relative humidity of one half [kg/(s m2 Pa)]."""
        if isinstance(self.substance, Material):
            return self.substance.permeability_at(0.5) / self.thickness
        return self.substance.permeance(0.5, 0.5) if self.is_membrane else self.substance.vapor_permeance

    @property
    def vapor_resistance(self):
        """At a mean relative humidity of one half [s m2 Pa/kg]; inf if tight."""
        return 1.0 / self.permeance if self.permeance > 0 else math.inf


@dataclass(frozen=True)
class Framing:
    """Wood that bridges an insulated layer.

    Parameters
    ----------
    share : float
        Part of the area that is framing [-], 0 to 0.5.
    material : Material
        What the framing is made of.
    layers : tuple of str
        Names of the layers it runs through.

    Raises
    ------
    OutOfRange
        For a share out of range.

    Examples
    --------
    >>> wood = Material("wood", "wood", 450, 1600, 0.12, 5e-12)
    >>> Framing(0.1, wood, ("insulation",)).share
    0.1
    """

    share: float
    material: Material
    layers: tuple

    def __post_init__(self):
        object.__setattr__(self, "share", within("Framing share", self.share, 0.0, 0.5, "%"))
        object.__setattr__(self, "layers", tuple(self.layers))


def _unique(layers):
    """The layers with a number behind a name that stands twice."""
    seen, found = {}, []
    for layer in layers:
        if not isinstance(layer, Layer):
            raise OutOfRange(f"An assembly is made of layers, not {layer!r:.60}.")
        count = seen.get(layer.name, 0) + 1
        seen[layer.name] = count
        found.append(layer if count == 1 else dataclasses.replace(layer, name=f"{layer.name} ({count})"))
    return tuple(found)


@dataclass(frozen=True)
class Assembly:
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
        From the horizontal [degrees], 0 (flat roof) to 90 (wall).
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
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> round(Assembly("wall", [Layer(board, 0.016)]).thermal_resistance, 2)
    0.24
    """

    name: str
    layers: tuple
    interior_film: float = 0.11
    exterior_film: float = 0.03
    interior_vapor_film: float = math.inf
    exterior_vapor_film: float = math.inf
    slope: float = 0.0
    framing: Framing | None = None
    notes: str = ""

    def __post_init__(self):
        put = object.__setattr__
        put(self, "layers", _unique(self.layers))
        if not 1 <= len(self.layers) <= 60:
            raise OutOfRange(f"The assembly {self.name} has {len(self.layers)} layers; it must have 1 to 60.")
        if self.layers[0].vented:
            raise OutOfRange(f"The assembly {self.name} begins with a vent space; there must be a layer inside it.")
        for side in ("interior", "exterior"):
            film = within(f"The {side} film", getattr(self, f"{side}_film"), 0.0, 1.0, "m² K/W")
            put(self, f"{side}_film", film)
            vapor = getattr(self, f"{side}_vapor_film")
            put(
                self,
                f"{side}_vapor_film",
                within(f"The {side} vapor film", vapor, 0.0, math.inf, "kg/(s m² Pa)", above=True),
            )
        put(self, "slope", within("Slope", self.slope, 0.0, 90.0, "degrees"))
        if self.framing:
            for name in self.framing.layers:
                self.layer(name)

    @cached_property
    def inner_layers(self):
        """The layers that the steady and monthly methods see: up to a vent space."""
        for index, layer in enumerate(self.layers):
            if layer.vented:
                return self.layers[:index]
        return self.layers

    @cached_property
    def outer_film(self):
        """Thermal resistance between the last inner layer and outdoor air [m2 K/W]."""
        vents = [layer for layer in self.layers if layer.vented]
        return vents[0].thermal_resistance if vents else self.exterior_film

    @cached_property
    def thermal_resistance(self):
        """Air to air [m2 K/W]."""
        return self.interior_film + sum(layer.thermal_resistance for layer in self.inner_layers) + self.outer_film

    @cached_property
    def vapor_resistance(self):
        """Air to air at a relative humidity of one half [s m2 Pa/kg]."""
        films = 1.0 / self.interior_vapor_film + 1.0 / self.exterior_vapor_film
        return films + sum(layer.vapor_resistance for layer in self.inner_layers)

    @property
    def u_value(self):
        """Thermal transmittance without framing [W/(m2 K)]."""
        return 1.0 / self.thermal_resistance

    @cached_property
    def thickness(self):
        """Of all layers [m]."""
        return sum(layer.thickness or 0.0 for layer in self.layers)

    def index(self, name):
        """Place of the layer of that name, counted from the room.

        Raises
        ------
        UnknownName
            When there is no such layer.
        """
        for place, layer in enumerate(self.layers):
            if layer.name == name:
                return place
        raise UnknownName("layer", name, [layer.name for layer in self.layers])

    def layer(self, name):
        """The layer of that name.

        Raises
        ------
        UnknownName
            When there is no such layer.
        """
        return self.layers[self.index(name)]

    def replace(self, name, substance=None, thickness=None, rename=None):
        """The same assembly with one layer changed.

        Parameters
        ----------
        name : str
            The layer to change.
        substance : Layer, Material, membrane or AirSpace, optional
            What takes its place; a Layer is taken as it is.
        thickness : float, optional
            New thickness [m].
        rename : str, optional
            New name; otherwise the layer keeps its name.

        Returns
        -------
        Assembly

        Raises
        ------
        UnknownName, OutOfRange
            For an unknown layer or a value out of range.
        """
        place = self.index(name)
        old = self.layers[place]
        if isinstance(substance, Layer):
            new = substance
        else:
            new = Layer(
                old.substance if substance is None else substance,
                old.thickness if thickness is None else thickness,
                rename or name,
            )
        layers = (*self.layers[:place], new, *self.layers[place + 1 :])
        framing = self.framing
        if framing and name in framing.layers and new.name != name:
            kept = tuple(new.name if each == name else each for each in framing.layers)
            framing = dataclasses.replace(framing, layers=kept)
        return dataclasses.replace(self, layers=layers, framing=framing)

    def save(self, path):
        """Write it as a TOML file, whole or not at all.

        Raises
        ------
        BadFile
            When the file cannot be written, with the reason.
        """
        from dryward.building import files  # files builds assemblies: not at the top

        files.save(self, path)
