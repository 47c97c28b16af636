"""Where it gets wet, in the words that several lessons share."""


def worst(profile):
    """The wet plane that gains most, or None where nothing gets wet."""
    return max(profile.wet_planes, key=lambda plane: plane.rate, default=None)


def between(inner, outer):
    """The place of a plane by the layers on both sides of it."""
    return f"inside the {inner}" if inner == outer else f"between {inner} and {outer}"


def where(profile):
    """The place of the worst wet plane."""
    wet = worst(profile)
    return between(wet.inner_layer, wet.outer_layer) if wet else "nothing gets wet"
