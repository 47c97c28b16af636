"""Controls: a slider with a typed number and a unit, or a choice.

A `Slider` or a `Choice` says what a control is; a lesson declares them.  The
page makes a `SliderControl` or a `ChoiceControl` of each, which holds the
value: in SI inside, in the shown unit at the edge.  Both unit systems of a
slider have their own round ends, start and step.
"""

from dryward.panels.controls.choice import Choice, ChoiceControl
from dryward.panels.controls.slider import Scale, Slider
from dryward.panels.controls.slider_control import SliderControl

__all__ = ["Choice", "ChoiceControl", "Scale", "Slider", "SliderControl"]
