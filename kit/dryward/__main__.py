"""``python -m dryward``: the same as typing ``dryward``."""

import sys

from dryward.cli import main

if __name__ == "__main__":  # a reader of the docstrings imports it too
    sys.exit(main())
