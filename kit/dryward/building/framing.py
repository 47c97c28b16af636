"""Framing: the R of the whole assembly beside the R between the studs.

Wood lets more heat through than the fill beside it.  Three ways to count it:
side by side from air to air (parallel path), layer by layer (isothermal
planes), and the mean of the two (the combined method of ISO 6946), which
also says how far off the mean can be.
"""

from dataclasses import dataclass

from dryward.building.assembly import Assembly
from dryward.building.layers import Layer
from dryward.checks import OutOfRange
from dryward.language import called, message
from dryward.units import to_si

#: How deep a 2x12 is [m]: common practice, no source.
DEEP_2X12 = to_si(11.25, "in")


@dataclass(frozen=True)
class WholeAssembly:
    """Thermal resistances of an assembly with its framing [m2 K/W].

    Attributes
    ----------
    cavity : float
        Air to air between the framing: what is printed on the fill plus the rest.
    through_framing : float
        Air to air through the framing.
    share : float
        Part of the area that is framing [-].
    parallel : float
        Both paths side by side: the upper bound.
    isothermal : float
        Layer by layer: the lower bound.
    """

    cavity: float
    through_framing: float
    share: float
    parallel: float
    isothermal: float

    @property
    def combined(self) -> float:
        """Mean of the two bounds, ISO 6946 [m2 K/W]."""
        return 0.5 * (self.parallel + self.isothermal)

    @property
    def error(self) -> float:
        """Largest relative error of `combined`, ISO 6946 [-]."""
        return (self.parallel - self.isothermal) / (2.0 * self.combined)

    @property
    def u_parallel(self) -> float:
        """Transmittance by parallel path [W/(m2 K)]."""
        return 1.0 / self.parallel

    @property
    def u_isothermal(self) -> float:
        """Transmittance by isothermal planes [W/(m2 K)]."""
        return 1.0 / self.isothermal

    @property
    def u_value(self) -> float:
        """Transmittance by the combined method [W/(m2 K)]."""
        return 1.0 / self.combined


def _paths(assembly: Assembly) -> list[tuple[float, float]]:
    """Each layer's resistance between the framing, and through it."""
    framing = assembly.framing
    pairs = []
    for layer in assembly.inner_layers:
        beside = layer.thermal_resistance
        through = beside
        if framing and layer.name in framing.layers:
            if layer.thickness is None:
                raise OutOfRange(message("building.framing-needs-thickness", name=called(layer.name)))
            through = Layer(framing.material, layer.thickness).thermal_resistance
        pairs.append((beside, through))
    return pairs


def with_framing(assembly: Assembly) -> WholeAssembly:
    """The R of the whole assembly, framing counted, beside the R between it.

    References
    ----------
    ASHRAE Handbook of Fundamentals, chapter 25 and 27, parallel-path and
    isothermal-planes methods; ISO 6946 section 6.2, combined method.  From
    memory.
    """
    share = assembly.framing.share if assembly.framing else 0.0
    films = assembly.interior_film + assembly.outer_film
    pairs = _paths(assembly)
    cavity = films + sum(beside for beside, _ in pairs)
    through = films + sum(wood for _, wood in pairs)
    parallel = 1.0 / ((1.0 - share) / cavity + share / through)
    isothermal = films
    for beside, wood in pairs:
        if wood == beside:  # the same on both paths, nothing included
            isothermal += beside
        elif min(beside, wood) > 0:
            isothermal += 1.0 / ((1.0 - share) / beside + share / wood)
    return WholeAssembly(cavity, through, share, parallel, isothermal)
