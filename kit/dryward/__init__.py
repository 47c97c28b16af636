"""Moist air, roof and wall assemblies, and lessons that show why they stay dry.

The rooms, from the ground up (a room uses only the rooms below it):

==============  =============================================================
units, checks   US and SI at the edge; range checks and their plain sentences
air             moist air: saturation, dew point, humidity ratio
building        what is built: materials, membranes, layers, assemblies, codes
weather         what is around it: air, months, hours, the air indoors
verdict         what it means: dry, damp or wet, by limits with their sources
physics         what happens: steady, twelve months, hour by hour, leaks, mold
pictures        what is drawn
teaching        what is asked: lessons, questions, progress
report          what is printed
evidence        every published check, computed again
panels          what is touched: sliders and pages
cli             what is typed
==============  =============================================================

Everything inside is SI: degrees Celsius, Pa, m, s, kg, W; relative humidity
0 to 1; permeance in kg/(s m2 Pa).  Layers run from inside to outside and a
flux is positive outward.
"""

__version__ = "0.1.0"
