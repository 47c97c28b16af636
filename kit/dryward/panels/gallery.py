"""A page of pictures for the instructor: each lesson's drawing as it stands at the start.

``python -m dryward.panels.gallery lessons/guide`` makes ``pictures.md`` and the
small pictures beside it anew, from the real pages; run it after a change of a
lesson or of a picture.
"""

from __future__ import annotations

import io
import sys
import tempfile
from collections.abc import Iterable
from pathlib import Path

from dryward import panels
from dryward.checks import PlainError
from dryward.language import message
from dryward.panels.learner import Settings
from dryward.teaching import lessons
from dryward.teaching.progress import Progress

#: Pixels across, and the most a picture may weigh [bytes].
WIDTH, HEAVIEST = 560, 40_000


def small(picture: bytes) -> bytes:
    """A picture of a page as a WebP, smaller and lighter; of any format that Pillow reads."""
    from PIL import Image

    whole = Image.open(io.BytesIO(picture)).convert("RGB")
    made = whole.resize((WIDTH, round(whole.height * WIDTH / whole.width)), Image.Resampling.LANCZOS)
    for quality in (85, 70, 55, 40):
        out = io.BytesIO()
        made.save(out, "WEBP", quality=quality, method=6)
        if out.tell() <= HEAVIEST:
            break
    return out.getvalue()


def pages(ids: Iterable[str] | None = None, unit_system: str = "us") -> dict[str, str | bytes]:
    """The text and the pictures, by file name: ``pictures.md`` and ``pictures/<id>.webp``."""
    parts, made = [message("panels.gallery-head") + "\n"], {}
    with tempfile.TemporaryDirectory() as folder:
        for id in ids or lessons.pages():
            this = lessons.lesson(id, unit_system)
            settings = Settings(Progress(folder))
            settings.predicted(id, this.prediction.right)  # the free page
            page = panels.page(id, unit_system, settings)
            name = f"pictures/{id}.webp"
            made[name] = small(page.picture)
            parts.append(
                message(
                    "panels.gallery-lesson", number=this.number, title=this.title,
                    question=f"{this.question} {this.care}".strip(),
                    picture=_inside(page.alts[0]), file=name, sentence=page.sentence,
                ) + "\n"
            )  # fmt: skip
    return {"pictures.md": "\n".join(parts), **made}


def _inside(alt: str) -> str:
    # Square brackets would end the text of a picture in Markdown.
    return alt.replace("[", "(").replace("]", ")").replace("\n", " ")


def write(folder: str | Path) -> list[str]:
    """Write the page and its pictures into the guide's folder, and give their names; PlainError if it cannot.

    Pictures of lessons that are gone are removed.
    """
    made = pages()
    try:
        (Path(folder) / "pictures").mkdir(parents=True, exist_ok=True)
        for old in (Path(folder) / "pictures").glob("*.webp"):
            if f"pictures/{old.name}" not in made:
                old.unlink()
        for name, content in made.items():
            whole = content.encode("utf-8") if isinstance(content, str) else content
            (Path(folder) / name).write_bytes(whole)
    except OSError as error:
        raise PlainError(message("panels.pictures-not-written", folder=str(folder), why=error.strerror)) from None
    return list(made)


if __name__ == "__main__":
    sys.exit(0 if write(sys.argv[1] if len(sys.argv) > 1 else "lessons/guide") else 1)
