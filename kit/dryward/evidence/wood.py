"""Water in wood: the sorption curve of the handbook, and the limits of wood."""

from dryward.building import codes, library
from dryward.building.materials import humidity_of_wood, wood_moisture
from dryward.evidence import table


def _library_moisture(row):
    """Moisture content [%] of a library wood, read on its own points."""
    wood = library.material(row.text("item"))
    return 100 * wood.water_content(row.given("humidity")) / wood.density


_ANSWERS = {
    "moisture": lambda row: 100 * float(wood_moisture(row.given("humidity"), row.given("temperature"))),
    "humidity": lambda row: 100 * humidity_of_wood(row.given("moisture"), row.given("temperature")),
    "library moisture": _library_moisture,
    "pore humidity": lambda row: 100 * codes.wood_pore_humidity_limit(row.given("temperature")),
    "limit": lambda row: 100 * codes.required(row.text("item")),
}


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
    return table.answer("wood", _ANSWERS)
