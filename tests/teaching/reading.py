"""How hard a text is to read, in school grades.

The library's syllable dictionary has to be fetched from the net, so its
syllables are counted here by its own hyphenation patterns instead.  Those
miss a syllable now and then, so a second index, which counts letters only,
is asked as well.
"""

import re
from unittest.mock import patch

import textstat

from dryward import units
from dryward.teaching import lessons

#: The sign of every unit, the longest first, and what a text may write for perm.
_SIGNS = "|".join(
    map(re.escape, sorted({each.symbol for each in units.UNITS.values() if each.symbol} | {"perms"}, key=len)[::-1])
)


def plain(text):
    """A text without its marks: Markdown, numbers and units are not words; a heading or a cell is a sentence."""
    text = re.sub(r"^```.*?^```", "", text, flags=re.M | re.S)
    text = re.sub(r"\s*\|[\s|-]*", ".\n", text)
    text = re.sub(r"^[#>*\-\d.\[\] ]+", "", text, flags=re.M)
    text = re.sub(r"([^.?!:\s])\s*$", r"\1.", text, flags=re.M)
    text = re.sub(r"[*_`]", " ", text)
    text = re.sub(r"\b(?:R|RSI)-[\d.]+", "R ten", text)
    text = re.sub(rf"[-−]?\d(?:[\d.,/]*\d)?(?:\s*(?:{_SIGNS})(?!\w)(?: \([^)]*\))?)?", "ten", text)
    return re.sub(r"\s+", " ", text)


def grades(text):
    """Flesch-Kincaid grade and automated readability index of a text."""
    words = plain(text)
    with patch("textstat.backend.counts._count_syllables.get_cmudict", lambda _: None):
        kincaid = textstat.flesch_kincaid_grade(words)
    return kincaid, textstat.automated_readability_index(words)


def notes(id):
    """An instructor's notes of a lesson as they are written, numbers in braces."""
    return lessons.read(lessons.lesson(id).folder).notes
