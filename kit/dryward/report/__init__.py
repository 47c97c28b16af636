"""What is printed: a roof checked in several ways, in words, on one page."""

from dryward.report.findings import Finding, Review
from dryward.report.review import review

__all__ = ["Finding", "Review", "review"]
