"""Colors that can be seen, and quantities that differ by more than color."""

import pytest

from dryward.pictures import style


def luminance(color):
    """Relative luminance of a color written as ``#rrggbb`` [-], 0 to 1; WCAG 2.2, definition of relative luminance."""
    parts = [int(color[place : place + 2], 16) / 255 for place in (1, 3, 5)]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    """Contrast of two colors [-], 1 to 21; WCAG 2.2, definition of contrast ratio."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("quantity", list(style.LOOKS))
def test_every_color_stands_out_from_the_paper(quantity):
    this = style.look(quantity)
    assert contrast(this.color, style.PAPER) >= 3.0
    assert contrast(this.color, "#ffffff") >= 3.0
    assert contrast(this.gray, "#ffffff") >= 3.0


def test_words_are_readable():
    assert contrast(style.INK, style.PAPER) >= 4.5
    assert contrast(style.QUIET, style.PAPER) >= 4.5


def test_black_and_white_by_the_definition():
    assert contrast("#ffffff", "#000000") == pytest.approx(21.0)
    # A gray of 118 of 255 is the lightest that reaches 4.5 on white (WCAG 2.2, a value often quoted; from memory).
    assert contrast("#767676", "#ffffff") >= 4.5
    assert contrast("#777777", "#ffffff") < 4.5


def test_no_two_quantities_look_the_same():
    looks = [(this.color, str(this.line), this.shape, this.marker, this.hatch) for this in style.LOOKS.values()]
    assert len(set(looks)) == len(looks)
    lines = [(this.gray, str(this.line), this.shape, this.marker, this.hatch) for this in style.LOOKS.values()]
    assert len(set(lines)) == len(lines)


def test_a_label_names_one_quantity():
    labels = [style.label(quantity) for quantity in style.LOOKS]
    assert len(set(labels)) == len(labels)
