"""What is printed: a roof checked in several ways, in words, on one page."""

from dryward.report.all_checks import review
from dryward.report.check import Check, Review

__all__ = ["Check", "Review", "review"]
