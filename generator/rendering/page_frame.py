"""What every page has in common: a template's name, the page's address and its values come in, HTML text goes out."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial
from itertools import count

from markupsafe import Markup

from generator.drawing.picture import Picture
from generator.rendering import addresses
from generator.rendering.environment import template
from generator.rendering.page_svg import inline_svg
from generator.rendering.setting import Setting
from generator.rendering.sharing import absolute
from generator.rendering.words import read_words


def framed_page(name: str, address: str, setting: Setting, **values: object) -> str:
    """Return a page from its template, with what every page knows: its own address and the way to others."""
    places = count(1)

    def image(picture: Picture) -> Markup:
        return inline_svg(picture, f"p{next(places)}-")

    lost = address == addresses.MISSING
    to = partial(addresses.from_root, setting.site_address) if lost else partial(addresses.relative, address)
    common: Mapping[str, object] = {
        "address": address,
        "setting": setting,
        "to": to,
        "asset": lambda file: to(addresses.asset(file)),
        "home": addresses.HOME,
        "all_pages": addresses.ALL,
        "corrections": addresses.CORRECTIONS,
        "manifest": addresses.MANIFEST,
        "canonical": "" if lost else absolute(address, setting),
        "data": "",
        "image": image,
        "share": None,
        "whole": partial(absolute, setting=setting),
        "words": read_words,
    }
    return template(setting.theme, name).render({**common, **values})
