"""What happens in a roof: steady states, months, hours, moving air, sky and mold.

===========  ==============================================================
steady       one steady state, and many at once
drying       which way a wet layer dries
monthly      twelve months of wetting and drying
hourly       a year, hour by hour
limits       the state along a slider
spread       the same year with many draws of what is uncertain
airleak      air through a leak, and the water it brings
ventspace    air through a vent space, and what it carries off
moving_air   density, stack, holes, films: what both stand on
sky          the night sky, a roof under it, frost
snow         a covering under snow, and what melts there
mold         the mold index
nodes        an assembly as resistances between nodes, and the vapor line through them
===========  ==============================================================
"""
