"""A picture that stands still: for a report, a handout, or an inch of paper."""

import io
from pathlib import Path

import matplotlib
from PIL import Image


def font_files():
    """The two faces of the letters in the pictures, for a document that must match them.

    Returns
    -------
    dict
        "" and "B" to the path of a font file that matplotlib carries.
    """
    folder = Path(matplotlib.get_data_path(), "fonts", "ttf")
    return {"": folder / "DejaVuSans.ttf", "B": folder / "DejaVuSans-Bold.ttf"}


def static(picture, state, form="png", dpi=192):
    """One state of a picture as a file.

    Parameters
    ----------
    picture : LivePicture
        Made with ``paper=True`` for black-and-white print.
    state : object
        What that picture draws.
    form : {"png", "svg"}
    dpi : float
        Pixels per inch of a PNG [1/in], 72 to 600.

    Returns
    -------
    bytes
        The same bytes for the same state.
    """
    out = io.BytesIO()
    picture.redraw(state)
    try:
        # Words stay words in an SVG, and the ids in it are the same each time.
        with matplotlib.rc_context({"svg.fonttype": "none", "svg.hashsalt": "dryward"}):
            if form == "svg":
                picture.figure.savefig(out, format="svg", metadata={"Date": None, "Creator": None})
                return out.getvalue()
            picture.figure.savefig(out, format="png", dpi=dpi, metadata={"Software": None})
    finally:
        picture.forget()
    if not picture.paper:
        return out.getvalue()
    gray = io.BytesIO()
    Image.open(out).convert("L").save(gray, "PNG", dpi=(dpi, dpi), optimize=True)
    return gray.getvalue()
