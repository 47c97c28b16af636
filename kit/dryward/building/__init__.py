"""What is built: materials, membranes, layers and assemblies."""

from dryward.building.assembly import Assembly, load, preset, presets, save
from dryward.building.layers import Framing, Layer
from dryward.building.library import air_space, by_category, material, membrane, search, substance
from dryward.building.substances import AirSpace, FixedMembrane, LaminateMembrane, Material, Origin, VariableMembrane

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
    "material",
    "membrane",
    "air_space",
    "substance",
    "by_category",
    "search",
    "preset",
    "presets",
    "load",
    "save",
]
