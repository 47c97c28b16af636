### Moist air: what is refused. Words in quotation marks are written so in code and stay.

above-air-pressure = Vapor pressure is { $pressure }; it must be below the air pressure.
saturation-over = Saturation is over "auto", "water" or "ice", not "{ $given }".
