"""Hostile project files: the name of each attack, the file, and how the first line begins that the check must print."""

from __future__ import annotations

from .checked_room import GOOD, spoilt

Attack = tuple[str | bytes, str]

PAD = "pad: side + 1 in or side + 2 cm"
SIDE = "side: 12 in or 30 cm"
SPACING = "spacing: 1 1/2 in or 4 cm"
MARGIN = "      margin: 3/4 in to 1 1/2 in or 2 cm to 3 cm\n"
SUMMARY = "  A square cushion that can be sewn.\n"
MEET = "edges that meet:\n"
STEP = "{{ front.number }}"
EVERY_SIZE = "(small, inch; medium, inch; small, metric; and 1 more)"
TOO_LARGE = "1:1: the file is larger than 200 kB; a project file is a few pages of text"
TOO_MANY = "more than 300 entries in one group or list; a project has a few of each"
NO_SUCH_LENGTH = "comes to more than 1000000 in; is it in the right unit?"


def with_piece(*lines: str) -> str:
    """Return the good project with one piece more, named edging."""
    return spoilt(MEET, "".join(f"{line}\n" for line in ("  edging:", *(f"    {line}" for line in lines))) + MEET)


def with_measures(*lines: str) -> str:
    """Return the good project with more measures after its own first one."""
    return spoilt(f"  {PAD}\n", "".join(f"  {line}\n" for line in (PAD, *lines)))


BOMB = "a: &a [x, x]\n" + "".join(f"b{level}: &b{level} [{', '.join(['*a'] * 9)}]\n" for level in range(40))
DEEP = "".join(" " * depth + "a:\n" for depth in range(500))

YAML_ATTACKS: dict[str, Attack] = {
    "an alias bomb": (
        BOMB,
        "1:4: anchors (&) and aliases (*) are not used in these files; a text that begins with & or * needs | and a "
        "new line",
    ),
    "an object of the language": (
        GOOD + 'x: !!python/object/apply:os.system ["touch /tmp/owned"]\n',
        "56:4: tags (!) are not used in these files; a text that begins with ! needs | and a new line",
    ),
    "a merge key": (GOOD + "<<: {a: b}\n", "56:5: a text that begins with { needs | and a new line"),
    "groups without end": (DEEP, "13:13: groups and lists inside each other, 12 deep at most"),
    "brackets without end": (
        "a: [\n" + "[\n" * 90_000,
        "1:4: a text that begins with [ needs | and a new line; a list is written with commas",
    ),
    "one endless line": (
        "title: " + "x" * 190_000,
        "1:2001: a line of more than 2000 characters; break it up",
    ),
    "ten megabytes": ("title: x\n" * 1_200_000, TOO_LARGE),
    "a megabyte of dashes": ("-\n" * 500_000, TOO_LARGE),
    "a list of a hundred thousand entries": ("-\n" * 90_000, f"301:2: {TOO_MANY}"),
    "a thousand measures that follow from each other": (
        with_measures("m0: side", *(f"m{number}: m{number - 1} + 1 mm" for number in range(1, 1000))),
        f"313:3: {TOO_MANY}",
    ),
    "five thousand sizes": (
        spoilt("measures:", "".join(f"  s{number}:\n    {SIDE}\n" for number in range(5000)) + "measures:"),
        f"608:3: {TOO_MANY}",
    ),
    "a piece of nothing": (
        spoilt(MEET, f"  edging:\n{MEET}"),
        "38:10: a piece is a group of keys: kind, cloth ...; write them, or take the line out",
    ),
    "measures of nothing": (
        GOOD.split("  pad: ")[0] + GOOD[GOOD.index("cloths:") :],
        "12:10: measures are wanted here, each a name with its formula; write them, or take the line out",
    ),
    "a directive of another YAML": (
        "%YAML 9.9\n---\n" + GOOD,
        "1:1: a text cannot begin with %; write | after the key and put the text on the next line",
    ),
}

TEXT_ATTACKS: dict[str, Attack] = {
    "a size that reads backwards": (
        GOOD.replace("medium", "me\u202edium"),
        "9:5: the file holds a character that cannot be read (number 8238); take it out",
    ),
    "another encoding": (
        GOOD.replace("Sofa", "Söfa").encode("latin-1"),
        "10:13: the file is not UTF-8 text from here on; save it as UTF-8",
    ),
    "half of a letter": (
        GOOD.encode().replace(b"Sofa", b"\xed\xa0\x80"),
        "10:12: the file is not UTF-8 text from here on; save it as UTF-8",
    ),
    "sixteen bits a letter": (GOOD.encode("utf-16"), "1:1: the file is saved as UTF-16; save it as UTF-8"),
    "a character nought": (
        GOOD.replace("Sofa", "So\0fa"),
        "10:14: the file holds a character that cannot be read (number 0); take it out",
    ),
    "an escape sequence for the screen": (
        GOOD.replace("Sofa", "\x1b[2JSofa"),
        "10:12: the file holds a character that cannot be read (number 27); take it out",
    ),
    "tabs": (GOOD.replace("    label: Sofa", "\tlabel: Sofa"), "10:1: a tab; indent with spaces"),
    "a character beyond all characters": (
        GOOD.replace("Sofa", '"\\U00110000"'),
        "10:15: a text in quotation marks cannot be read; leave quotation marks out, or write | and a new line",
    ),
}

FORMULA_ATTACKS: dict[str, Attack] = {
    "a tower of powers": (
        spoilt(PAD, "pad: 9**9**9 * 1 in"),
        "13:9: '**' is not used; there are no powers: write side * side",
    ),
    "squares of squares": (
        with_measures("m0: 999999.999", *(f"m{number}: m{number - 1} * m{number - 1}" for number in range(1, 19))),
        f"15:7: 'm0 * m0' comes to more than 1000000; is it in the right unit? {EVERY_SIZE}",
    ),
    "squares of small squares": (
        with_measures("m0: 0.999999", *(f"m{number}: m{number - 1} * m{number - 1}" for number in range(1, 19))),
        f"17:7: 'm2 * m2' comes to a value of too many digits; round it with round to() {EVERY_SIZE}",
    ),
    "sixty squares of squares": (
        with_measures("m0: 0.5", *(f"m{number}: m{number - 1} * m{number - 1}" for number in range(1, 60))).replace(
            PAD, "pad: side * m59"
        ),
        "54:3: measures that follow from each other, 20 deep at most",
    ),
    "brackets inside brackets": (
        spoilt(PAD, f"pad: {'(' * 90}side{')' * 90}"),
        "13:20: more than 12 brackets inside each other",
    ),
    "a circle of measures": (
        with_measures("one: other + 1 mm", "other: one + 1 mm"),
        "14:8: 'one' is worked out from itself: one -> other -> one",
    ),
    "a division by nothing": (
        spoilt(PAD, "pad: side / (1 - 1)"),
        f"13:8: something is divided by a value that comes to nothing {EVERY_SIZE}",
    ),
    "a step of nothing": (
        spoilt(PAD, "pad: round up(side, side - side)"),
        f"13:8: the step of 'round up' must be more than nothing {EVERY_SIZE}",
    ),
    "a number of a hundred digits": (
        spoilt(PAD, f"pad: {'9' * 100} in"),
        "13:8: a number with so many digits is no length that can be cut",
    ),
    "figures of another script": (spoilt(SIDE, "side: ١٢ in or 30 cm"), "8:11: '١' has no meaning here"),
    "code in a placeholder": (
        spoilt(STEP, "{{ ''.__class__.__mro__ }}"),
        "50:14: \"'\" has no meaning here; write 'ft' for feet, and no quotation marks (in a placeholder)",
    ),
    "a sum in a title": (
        spoilt("title: Good cushion", "title: '{{ 7 * 7 }}'"),
        "1:9: a label is the same in every size; {{ }} is filled in summaries, notes, items and steps only",
    ),
    "an attribute in a placeholder": (
        spoilt(STEP, "{{ front.__class__ }}"),
        "50:20: '_' has no meaning here (in a placeholder)",
    ),
    "a loop in a text": (
        spoilt(SUMMARY, "  {% for a in range(1000000000) %}x{% endfor %}\n"),
        "4:3: only {{ }} is used in texts",
    ),
    "a step on a piece that lacks what it tells": (
        GOOD + "  - use: make ties\n",
        "56:5: the step 'make ties' tells the ",
    ),
    "a placeholder that is never closed": (spoilt(STEP, "{{ front.number"), "50:11: a {{ without its }}"),
}

NUMBER_ATTACKS: dict[str, Attack] = {
    "a panel as long as a hall": (
        # (1000 - 2 x 1 1/2) / (1 1/2 - 2 x 3/8) = 1329.33, so 1330 tucks.
        spoilt(
            "    finished across: side\n    finished along: side\n    tucks",
            "    finished across: 1000 in\n    finished along: side\n    tucks",
        ),
        "28:15: 1000 in would take about 1330 tucks; more than 500 are not worked out in one panel. Are finished size "
        "and spacing in the right units? (small, inch; medium, inch)",
    ),
    "three hundred sizes": (
        spoilt("sizes:\n", "sizes:\n" + "".join(f"  s{size}:\n    side: 12 in or 30 cm\n" for size in range(298))),
        "6:3: 300 sizes; a project has 40 at most, so divide it into several projects",
    ),
    "a side round the earth": (
        spoilt(SIDE, "side: 99999999999 in or 30 cm"),
        f"8:11: '99999999999 in or 30 cm' {NO_SUCH_LENGTH} (small, inch)",
    ),
    "a side of 25 kilometres": (
        spoilt(SIDE, "side: 999999 in or 30 cm"),
        "28:15: 999999 in would take about 1333329 tucks; more than 500 are not worked out in one panel. Are finished "
        "size and spacing in the right units? (small, inch)",
    ),
    "a thousand million tucks": (
        spoilt(MARGIN, f"      number: 1000000000\n{MARGIN}"),
        f"28:15: '1000000000' comes to more than 1000000; is it in the right unit? {EVERY_SIZE}",
    ),
    "a hundred thousand tucks": (
        spoilt(MARGIN, f"      number: 100000\n{MARGIN}"),
        f"29:15: '100000' comes to 100000; more than 2000 are not worked out {EVERY_SIZE}",
    ),
    "tucks by noughts": (
        spoilt(MARGIN, f"      number: multiple of 0\n{MARGIN}"),
        f"29:15: the number of tucks is to be a multiple of 0; write 1 or more {EVERY_SIZE}",
    ),
    "a spacing that no cloth has": (
        spoilt(SPACING, "spacing: 999999 in"),
        "28:15: no number of tucks fits 12 in: nearest is 1 tuck with margins of 6 in; the margins may be 3/4 in to "
        "1 1/2 in. Finished size that would fit: 3 in (1 tuck) (small, inch)",
    ),
    "a graduation of a thousand million tucks": (
        spoilt(
            f"      depth: 3/8 in or 1 cm\n      {SPACING}\n",
            "      runs:\n        - number: 1000000000\n          depth: 1/4 in to 1/2 in\n          pitch: 1 in\n",
        ),
        f"27:19: '1000000000' comes to more than 1000000; is it in the right unit? {EVERY_SIZE}",
    ),
    "a million rows": (
        spoilt(
            "  front:\n    kind: tucked panel\n    finished across: side\n    finished along: side\n",
            "  front:\n    kind: tucked panel\n    finished across: side\n    finished along: 999999 in\n",
        ),
        f"31:16: more than 1000 rows would fit; rule them further apart {EVERY_SIZE}",
    ),
    "a hundred thousand backs": (
        spoilt("    overlap: lap\n", "    overlap: lap\n    quantity: 100000\n"),
        f"33:5: '100000' comes to 100000; more than 2000 are not worked out {EVERY_SIZE}",
    ),
    "a hundred thousand buttons": (
        spoilt(
            "supplies:",
            "closures:\n  - kind: buttons\n    number: 100000\n    on: front.left\n    onto: back.right\n"
            "    overlap: 3 in or 8 cm\n    diameter: 1/2 in\nsupplies:",
        ),
        f"42:5: '100000' comes to 100000; more than 2000 are not worked out {EVERY_SIZE}",
    ),
    "a hundred thousand pleats": (
        with_piece("kind: pleated strip", "edge: side", "pleats: 100000", "pleat depth: 1 in", "drop: 3 in"),
        f"39:5: '100000' comes to 100000; more than 2000 are not worked out {EVERY_SIZE}",
    ),
    "a frill a million times as full": (
        with_piece("kind: gathered strip", "edge: side", "fullness: 999999", "drop: 3 in"),
        "39:5: a strip of 11999989 in would be joined from more than 200 lengths of cloth 44 in wide; are its length "
        "and the width of the cloth in the right units? (small, inch)",
    ),
    "a bias strip that its joins use up": (
        with_piece("kind: bias strip", "length: 30 in", "width: 1 in", "join allowance: 999999 in"),
        "17:5: edging is 2000004 1/2 in across, but the cloth is only 44 in wide; take a wider cloth, or write it "
        "as two pieces that meet in a seam (small, inch; medium, inch)",
    ),
    "cloth of no width": (
        spoilt("width: 44 in or 112 cm", "width: 0"),
        "28:15: breadths of cloth can be joined at the foot of a tuck only: from the left cut edge to the left foot of "
        "tuck 1 a breadth of 1 7/8 in is needed, but the cloth is only 0 in wide; take a wider cloth",
    ),
    "minutes without end": (
        spoilt("  - title: Look", "  - minutes: 99999999999999999999\n    title: Look"),
        "48:14: '99999999999999999999' is no time; write whole minutes, for example 45",
    ),
    "a group of ten thousand tucks": (
        spoilt("plan: linked cells", "plan: bands\n      group: 9999"),
        f"28:15: a group of 9999 tucks cannot be turned; give a group of 1 to 50 {EVERY_SIZE}",
    ),
}

NAME_ATTACKS: dict[str, Attack] = {
    name: (
        spoilt("  medium:\n", f"  {key}:\n"),
        f"9:{4 if key.startswith(chr(34)) else 3}: '{shown}' cannot name a size; use letters, digits, spaces and "
        "hyphens, 40 at most",
    )
    for name, key, shown in (
        ("a size above its folder", "../../../etc/passwd", "../../../etc/passwd"),
        ("a size from the root", "/etc/passwd", "/etc/passwd"),
        ("a size for another drive", "C\\temp", "C\\temp"),
        ("a size that is the folder itself", ".", "."),
        ("a size of a hundred letters", "a" * 100, "a" * 100),
        ("a size with a hidden letter", "me\u200bdium", "me?dium"),
    )
} | {
    "a piece above its folder": (
        GOOD.replace("back:", "../back:").replace("on: back", "on: ../back").replace("back.all", "../back.all"),
        "32:3: '../back' is no name; a name has small letters, digits and spaces, and begins with a letter",
    ),
    "a colour that nobody knows": (
        spoilt("    label: cotton\n", "    label: cotton\n    colour: blurpel\n"),
        "18:13: the pictures know no colour 'blurpel'; write a plain word, such as navy, oatmeal or sea blue, or # and "
        "six digits in quotation marks; did you mean 'blurple'?",
    ),
    "an address for a colour": (
        spoilt("    label: cotton\n", "    label: cotton\n    colour: url(https://elsewhere.example/)\n"),
        "18:13: 'url(https://elsewhere.example/)' is no colour; write a plain word, or # and six digits in quotation "
        "marks",
    ),
}

FAMILIES = (YAML_ATTACKS, TEXT_ATTACKS, FORMULA_ATTACKS, NUMBER_ATTACKS, NAME_ATTACKS)
