"""What is printed: a roof checked in several ways, in words, on one page."""

from dryward.report.check import Check, Review
from dryward.report.all_checks import review

__all__ = ["Check", "Review", "review"]
