"""Assemblies: layers from inside to outside, between two films."""

import dataclasses
import math
from dataclasses import dataclass
from functools import cached_property

from dryward.building.layers import Framing, Layer
from dryward.building.materials import Material
from dryward.checks import OutOfRange, UnknownName, within
from dryward.results import Result, one_line
from dryward.units import show

#: From this slope on an assembly is a wall [degrees].
WALL = 60.0


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
class Assembly(Result):
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
    >>> from dryward.building import Material
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

    def __repr__(self):
        resistance = f"{show(self.thermal_resistance, 'thermal resistance', 'us')}"
        thick = f"{show(self.thickness, 'length', 'us')} ({show(self.thickness, 'length', 'si')})"
        names = " | ".join(layer.name for layer in self.layers)
        return one_line("Assembly", f"{self.name}, {thick}, {resistance}, slope {self.slope:.3g}°: {names}")

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

    @cached_property
    def bodies(self):
        """Places of the layers that are one body: neighbors of one material, however many pieces it is drawn in."""
        found = []
        for place, layer in enumerate(self.layers):
            before = self.layers[found[-1][-1]].substance if found else None
            if found and isinstance(layer.substance, Material) and layer.substance == before:
                found[-1] = (*found[-1], place)
            else:
                found.append((place,))
        return tuple(found)

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
                old.open_to_air if substance is None else None,
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
