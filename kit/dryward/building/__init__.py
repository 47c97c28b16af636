"""What is built: materials, membranes, layers and assemblies."""

from dryward.building.assembly import AirSpace, Assembly, Framing, Layer
from dryward.building.materials import Material
from dryward.building.membranes import FixedMembrane, LaminateMembrane, Origin, VariableMembrane

__all__ = [
    "Material",
    "FixedMembrane",
    "VariableMembrane",
    "LaminateMembrane",
    "Origin",
    "AirSpace",
    "Layer",
    "Framing",
    "Assembly",
]
