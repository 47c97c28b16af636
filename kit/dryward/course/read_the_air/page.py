"""Read the air: from temperature and RH to water, vapor pressure and dew point."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import SimpleNamespace

from dryward import air, language, units
from dryward.course.read_the_air.beats import PLAY
from dryward.course.read_the_air.scene import AirsOnCurve, Curve
from dryward.panels import hand
from dryward.panels.controls import standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout
from dryward.teaching.words import Step
from dryward.weather import Air

message = language.beside(__file__)


@dataclass(frozen=True)
class AirPair:
    """Two airs to compare."""

    first: Air
    second: Air

    @property
    def ratios(self) -> tuple[float, float]:
        """Humidity ratios of both [kg/kg]."""
        first, second = (float(air.humidity_ratio(each.vapor_pressure)) for each in (self.first, self.second))
        return first, second


class ReadTheAir(Page):
    """Two points under the saturation curve."""

    id = "read-the-air"
    handles = (
        # As the prediction has them.
        replace(standard("T"), words="read_the_air.air-a-temperature").starting(70),
        replace(standard("RH"), words="read_the_air.air-a-humidity").starting(30),
        replace(standard("T"), name="T_2", words="read_the_air.air-b-temperature").starting(30),
        replace(standard("RH"), name="RH_2", words="read_the_air.air-b-humidity").starting(80),
    )
    draws = Curve
    play = PLAY

    def compute(self, at: SimpleNamespace) -> AirPair:
        """Two airs."""
        return AirPair(Air(at.T, at.RH), Air(at.T_2, at.RH_2))

    def views(self, state: AirPair) -> AirsOnCurve:
        """Both on the curve."""
        return AirsOnCurve(state.first, state.second)

    def given(self, state: AirPair) -> str:
        """What no control moves; its pressure as a weather report has it."""
        if self.unit_system == "us":
            return message("given", pressure=units.show_in(air.STANDARD_PRESSURE, "inHg", 2))
        report, worked = (units.show_in(air.STANDARD_PRESSURE, unit, 0) for unit in ("hPa", "Pa"))
        return message("given", pressure=units.in_both(report, worked))

    def numbers(self, state: AirPair) -> list[Readout]:
        """Of air A: vapor pressure, dew point, water two ways; of air B, its water."""
        first, second = state.first, state.second
        ratio, other = state.ratios
        return [
            Readout("vapor_pressure", message("a-vapor-pressure"), first.vapor_pressure, "pressure", both=True),
            Readout("dew_point", message("a-dew-point"), first.dew_point, "temperature", both=True),
            Readout("humidity_ratio", message("a-water"), ratio, "humidity ratio", both=True, digits=_digits(ratio)),
            Readout(
                "vapor_density",
                message("a-water-in-volume"),
                air.vapor_density(first.temperature, first.vapor_pressure),
                "density",
                text=units.show_in(
                    air.vapor_density(first.temperature, first.vapor_pressure),
                    "gr/ft3" if self.unit_system == "us" else "g/m3",
                    2,
                ),
            ),
            Readout(
                "humidity_ratio_2",
                message("b-water"),
                other,
                "humidity ratio",
                note=message("b-water-note", dew_point=self.show(second.dew_point, "temperature")),
                digits=_digits(other),
            ),
        ]

    def says(self, state: AirPair) -> str:
        """Which air has more water, and which has the higher RH."""
        ratio, other = state.ratios
        if abs(ratio - other) < 0.05 * max(ratio, other):
            water = self.show(ratio, "humidity ratio", _digits(ratio))
            return message("same-water", water=water)
        more, less = ("A", "B") if ratio > other else ("B", "A")
        wet, dry = (state.first, state.second) if ratio > other else (state.second, state.first)
        times = max(ratio, other) / min(ratio, other)
        lower = bool(wet.relative_humidity < dry.relative_humidity)
        return message(
            "more-water",
            more=more,
            times=units.written(times, ".1f"),
            less=less,
            lower=lower,
            dew_point=self.show(wet.dew_point, "temperature"),
        )

    def steps(self, state: AirPair) -> list[Step]:
        """The pressure, the dew point and the water of air A."""
        first, show = state.first, self.show
        pressure = first.vapor_pressure
        return [
            hand.pressure(
                message("step-pressure"),
                first.temperature,
                first.relative_humidity,
                pressure / first.relative_humidity,
                self.unit_system,
            ),
            Step(message("step-dew-point"), "", show(first.dew_point, "temperature")),
            Step(
                message("step-water", system=self.unit_system),
                f"0.622 × {show(pressure, 'pressure')} / ({show(air.STANDARD_PRESSURE, 'pressure')} − "
                f"{show(pressure, 'pressure')}){' × 7000' if self.unit_system == 'us' else ' × 1000'}",
                show(state.ratios[0], "humidity ratio", _digits(state.ratios[0])),
            ),
        ]


def _digits(ratio: float) -> int | None:
    # Very cold or dry air has so little that one digit would round it away.
    return 3 if ratio < 1e-3 else None


PAGE = ReadTheAir
