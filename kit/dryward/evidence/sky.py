"""The night sky and a roof under it against published formulas and balances."""

from dryward.evidence import table
from dryward.physics import sky
from dryward.weather import Air


def _sky(row):
    return sky.temperature(row.given("air"), row.given("dew"), row.given("cloud"), row.text("model"))


def _roof(row):
    return sky.roof_surface(
        row.given("air"), row.given("sky"), row.given("coefficient"), row.given("transmittance"), row.given("room")
    )


_SI = {
    "emissivity": lambda row: sky.clear_emissivity(row.given("dew"), row.text("model")),
    "cloud": lambda row: sky.cloud_factor(row.given("cloud")),
    "sky": _sky,
    "swinbank": lambda row: sky.by_air_temperature(row.given("air")),
    "radiation": lambda row: sky.long_wave(_sky(row)),
    "roof": _roof,
    "below air": lambda row: row.given("air") - _roof(row),
    "margin": lambda row: sky.frost_margin(Air(row.given("air"), row.given("humidity"))),
}
_ANSWERS = table.in_row_units(_SI)


def checks():
    """The checks of this topic, computed now.

    Yields
    ------
    Check

    Raises
    ------
    BadFile
        When the table cannot be read or a row cannot be computed.
    """
    return table.answer("sky", _ANSWERS)
