"""The way in, as ``tuckwright`` and as ``python -m generator``; no file of the working folder is loaded as code.

A room is a folder that may come from a stranger, and people work in it. ``python -m`` puts the working folder before
all libraries, and so does an empty place in PYTHONPATH: it is taken off the path before anything else is loaded.
"""

import os
import sys

sys.path[:] = [place for place in sys.path if place and os.path.realpath(place) != os.path.realpath(os.curdir)]

from generator.cli import main  # noqa: E402  # not before the working folder is off the path

if __name__ == "__main__":
    main()
