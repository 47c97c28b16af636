"""One table of an assembly file, read word by word; what is wrong is said with its place."""

import difflib

from dryward.checks import BadFile
from dryward.units import read

MOST_POINTS, LONGEST_NAME, LONGEST_TEXT = 200, 80, 4000
#: Words that every substance may carry.
ORIGIN = ("id", "name", "category", "source", "where", "how_read", "ranges")
_SPANS = ("conductivity", "vapor_permeability", "sorption", "permeance")  # what a range may be given for


class TypedTable:
    """One table of the file and its place, read word by word."""

    def __init__(self, place, table, words):
        if not isinstance(table, dict):
            raise BadFile(f"{place}: it must be a table of words and values")
        for key in table:
            if key not in words:
                near = difflib.get_close_matches(key, words, n=1, cutoff=0.6)
                hint = f"; did you mean {near[0]}" if near else ""
                raise BadFile(f'{place}: the word "{key[:40]}" is not known{hint}')
        self.place, self.table = place, table

    def __contains__(self, key):
        return key in self.table

    def wrong(self, key, rule):
        return BadFile(f"{self.place}: {key} must be {rule}")

    def text(self, key, default="", longest=LONGEST_NAME):
        value = self.table.get(key, default)
        if not isinstance(value, str) or len(value) > longest:
            raise self.wrong(key, f"a text of at most {longest} characters")
        if any(ord(sign) < 32 and sign != "\n" for sign in value):
            raise self.wrong(key, "a text without control characters")
        return value

    def flag(self, key):
        value = self.table.get(key, False)
        if not isinstance(value, bool):
            raise self.wrong(key, "true or false")
        return value

    def quantity(self, key, quantity=None, default=None):
        if key not in self.table:
            if default is None:
                raise BadFile(f"{self.place}: {key} is missing")
            return default
        return self._value(key, self.table[key], quantity)

    def _value(self, key, value, quantity):
        if isinstance(value, str) and quantity:
            return read(value, quantity)
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            raise self.wrong(key, 'a number, or a text with a unit such as "3/4 in"' if quantity else "a number")
        try:
            return float(value)
        except OverflowError:
            raise self.wrong(key, "a number of ordinary size") from None

    def points(self, key, first=None, second=None):
        rows = self.table.get(key, [])
        if not isinstance(rows, list) or len(rows) > MOST_POINTS:
            raise self.wrong(key, f"a list of at most {MOST_POINTS} pairs")
        if any(not isinstance(row, list) or len(row) != 2 for row in rows):
            raise self.wrong(key, "a list of pairs such as [[0.25, 1.0], [0.75, 9.0]]")
        return tuple((self._value(key, x, first), self._value(key, y, second)) for x, y in rows)

    def curve(self, key, quantity=None, first=None):
        if isinstance(self.table.get(key), list):
            return self.points(key, first, quantity)
        return self.quantity(key, quantity)

    def names(self, key):
        value = self.table.get(key, [])
        if not isinstance(value, list) or any(not isinstance(each, str) for each in value):
            raise self.wrong(key, "a list of layer names")
        return tuple(value)

    def origin(self):
        spans = self.table.get("ranges", {})
        if not isinstance(spans, dict):
            raise self.wrong("ranges", "a table such as { conductivity = [0.03, 0.05] }")
        inner = TypedTable(f"{self.place}, ranges", spans, _SPANS)
        ranges = []
        for name, span in spans.items():
            if not isinstance(span, list) or len(span) != 2:
                raise inner.wrong(name, "a pair of numbers")
            ranges.append((name, *(inner._value(name, each, None) for each in span)))
        words = {
            key: self.text(key, longest=LONGEST_TEXT if key in ("source", "where", "how_read") else LONGEST_NAME)
            for key in ORIGIN[:-1]
        }
        return {**words, "ranges": tuple(ranges)}
