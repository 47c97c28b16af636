"""Layers: what one is made of, how thick it is, whether leaking air seeps through it; the wood that bridges some."""

import math
from collections.abc import Iterable
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from dryward.building import library
from dryward.building.schema import entry, settle
from dryward.building.substances import (
    AirSpace,
    FixedMembrane,
    LaminateMembrane,
    Material,
    Membrane,
    Substance,
    VariableMembrane,
)
from dryward.checks import OutOfRange
from dryward.exhibit import one_line
from dryward.language import called, listing, message
from dryward.units import checked, show, show_in

#: The thickest layer there may be [m].
THICKEST = 3.0
#: The category of the library whose materials let air seep through them.
_FIBROUS = "fibrous insulation"
#: A material of no category counts as such when it is this light [kg/m3] and this open to vapor, some half as
#: open as still air [kg/(s m Pa)]: assumption.
_LIGHT, _OPEN = 150.0, 8e-11


@dataclass(frozen=True)
class Layer:
    """One layer: what it is, how thick, and what it is called in this assembly.

    Parameters
    ----------
    substance : Material, FixedMembrane, VariableMembrane, LaminateMembrane, AirSpace or str
        Or the id of one in the library.
    thickness : float or str, optional
        [m], above 0 to 3, or a text such as ``"12 in"``; needed for a material, drawn for an air space, not
        used for a membrane.
    name : str, optional
        Otherwise the name of the substance.
    open_to_air : bool, optional
        Whether leaking air seeps through the layer itself (True) or passes
        it by its joints; otherwise by its kind, see `lets_air_through`.

    Raises
    ------
    OutOfRange
        For a material without a thickness, or a thickness out of range.

    Examples
    --------
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> Layer(board, 0.016).thermal_resistance
    0.1
    >>> round(Layer("cellulose-dense", "12 in").thickness, 4)
    0.3048
    """

    substance: Substance
    thickness: float | None = None
    name: str = ""
    open_to_air: bool | None = None

    if TYPE_CHECKING:  # what it takes is more than what it keeps

        def __init__(
            self,
            substance: Substance | str,
            thickness: float | str | None = None,
            name: str = "",
            open_to_air: bool | None = None,
        ) -> None: ...

    def __post_init__(self) -> None:
        put = object.__setattr__
        if isinstance(self.substance, str):
            put(self, "substance", library.substance(self.substance))
        if self.open_to_air and self.is_membrane:
            raise OutOfRange(message("building.no-way-for-air", name=called(self.name or self.substance.name)))
        if not isinstance(self.substance, (Material, Membrane, AirSpace)):
            raise OutOfRange(message("building.layer-made-of", given=repr(self.substance)[:60]))
        put(self, "name", self.name or self.substance.name)
        if self.thickness is not None:
            put(
                self,
                "thickness",
                checked("Thickness", self.thickness, "length", 0.0, THICKEST, above=True, of=self.name),
            )
        elif isinstance(self.substance, Material):
            raise OutOfRange(message("building.needs-thickness", name=called(self.name), most=show_in(THICKEST, "m")))

    def __repr__(self) -> str:
        told = [called(name) for name in dict.fromkeys((self.name, self.substance.name))]
        told += [show(self.thickness, "length", "us")] if self.thickness else []
        return one_line("Layer", listing(told))

    @cached_property
    def is_membrane(self) -> bool:
        """Whether it counts by permeance alone."""
        return isinstance(self.substance, Membrane)

    @property
    def material(self) -> Material:
        """What it is made of, for who knows that it is a material; an error for another kind."""
        if not isinstance(self.substance, Material):
            raise self._not("a material")
        return self.substance

    @property
    def membrane(self) -> FixedMembrane | VariableMembrane | LaminateMembrane:
        """What it is made of, for who knows that it is a membrane; an error for another kind."""
        if not isinstance(self.substance, Membrane):
            raise self._not("a membrane")
        return self.substance

    @property
    def air_space(self) -> AirSpace:
        """What it is made of, for who knows that it is an air space; an error for another kind."""
        if not isinstance(self.substance, AirSpace):
            raise self._not("an air space")
        return self.substance

    def _not(self, kind: str) -> OutOfRange:
        facts = {"name": called(self.name), "kind": called(kind), "given": called(self.substance.name)}
        return OutOfRange(message("building.layer-of-a-kind", **facts))

    @property
    def drawn_thickness(self) -> float:
        """How thick it is drawn [m]; 0 for a membrane."""
        return self.thickness or 0.0

    @cached_property
    def vented(self) -> bool:
        """Whether outdoor air moves through it."""
        return isinstance(self.substance, AirSpace) and self.substance.vented

    @property
    def lets_air_through(self) -> bool:
        """Whether leaking air seeps through it; where the layer does not say, fibrous fill and air spaces let it."""
        if self.open_to_air is not None:
            return self.open_to_air
        made = self.substance
        if not isinstance(made, Material):
            return isinstance(made, AirSpace)
        if made.category:
            return made.category == _FIBROUS
        return not made.wood and made.density <= _LIGHT and made.permeability_at(0.5) >= _OPEN

    @cached_property
    def thermal_resistance(self) -> float:
        """Of the dry layer [m2 K/W]; nothing for a membrane."""
        if isinstance(self.substance, Material):
            return self.thickness / self.substance.conductivity_at(0.0)
        return self.substance.thermal_resistance if isinstance(self.substance, AirSpace) else 0.0

    @cached_property
    def permeance(self) -> float:
        """At a mean relative humidity of one half [kg/(s m2 Pa)]."""
        if isinstance(self.substance, Material):
            return self.substance.permeability_at(0.5) / self.thickness
        if isinstance(self.substance, AirSpace):
            return self.substance.vapor_permeance
        return self.substance.permeance(0.5, 0.5)

    @cached_property
    def vapor_resistance(self) -> float:
        """At a mean relative humidity of one half [s m2 Pa/kg]; inf if tight."""
        return 1.0 / self.permeance if self.permeance > 0 else math.inf


@dataclass(frozen=True)
class Framing:
    """Wood that bridges an insulated layer.

    Parameters
    ----------
    share : float or str
        Part of the area that is framing [-], 0 to 0.5, or a text such as ``"10 %"``.
    material : Material
        What the framing is made of.
    layers : list of str
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

    share: float = field(metadata=entry("Framing share", "share", 0, 0.5, bare=("%", "%")))
    material: Material
    layers: tuple[str, ...]

    if TYPE_CHECKING:  # what it takes is more than what it keeps

        def __init__(self, share: float | str, material: Material, layers: Iterable[str]) -> None: ...

    def __post_init__(self) -> None:
        settle(self)
        object.__setattr__(self, "layers", tuple(self.layers))
