"""How much a room may hold: every limit in one place, generous for a real room, told in the guide with the remedy.

Files come from strangers, and no file may keep a machine busy. Sizes of files are in bytes. Nothing comes in.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

KILOBYTE = 1000
# The largest files, by their endings.
LARGEST_FILES: Mapping[str, int] = MappingProxyType(
    {
        ".yaml": 200 * KILOBYTE,
        ".md": 500 * KILOBYTE,
        ".html": 200 * KILOBYTE,
        ".css": 200 * KILOBYTE,
        ".js": 200 * KILOBYTE,
        ".svg": 500 * KILOBYTE,
        ".png": 2000 * KILOBYTE,
        ".ttf": 20_000 * KILOBYTE,
        ".woff2": 20_000 * KILOBYTE,
        ".json": 20_000 * KILOBYTE,
    }
)
# A file of the published site that is shown on this machine is held in memory whole [MB].
LARGEST_SHOWN = 50
# Files of one sort in one folder of the room.
MOST_FILES = 1000
# YAML: entries of one group or list, groups and lists inside each other, letters of a line.
MOST_ENTRIES = 300
DEEPEST = 12
LONGEST_LINE = 2000
# Words on one line of a sheet: titles, labels, names.
LONGEST_LABEL = 120
# Formulas: letters, and measures that follow from each other.
LONGEST_FORMULA = 200
DEEPEST_MEASURES = 20
MOST_SIZES = 40
# Steps from the least named size of a project to the largest, in one edition.
MOST_BETWEEN = 40
# Parts that are cut for one project in one size, and for all kits of a class.
MOST_PARTS = 500
MOST_CLASS_PARTS = 4000
MOST_PLACES = 200
# Tucks of a panel, its rows, and lengths of cloth that one strip is joined from.
MOST_TUCKS = 500
MOST_ROWS = 1000
MOST_LENGTHS = 200
# Points of a drawn outline.
MOST_OUTLINE_POINTS = 60
# Counts of one thing, and values in inches or plain numbers.
MOST_THINGS = 2000
LARGEST_VALUE = 1_000_000
# Steps of a ruler and a shop [in].
FINEST_STEP, LARGEST_STEP = Fraction(1, 128), 360
# A share, such as shrinkage [%].
MOST_SHARE = 50
# Pictures of a theme: dots across, what an SVG draws when everything used twice is counted twice.
MOST_DOTS = 3000
MOST_DRAWN = 5000
# Style sheets: any number, repeats and columns, lengths [in].
LARGEST_STYLE_NUMBER = 10_000
MOST_REPEATS = 100
MOST_COLUMNS = 20
