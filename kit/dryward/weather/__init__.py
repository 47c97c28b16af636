"""What is around the assembly: air, months, hours, and the air indoors."""

from dryward.weather.conditions import Air

__all__ = ["Air"]
