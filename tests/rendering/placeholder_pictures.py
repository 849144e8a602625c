"""Placeholder diagrams for tests of pages and sheets: plain boxes with their true size, words and ids."""

from __future__ import annotations

from generator.drawing.picture import Picture
from generator.rendering.page_svg import light

SIZES = {
    "surface front": (5.0, 5.0),
    "layout face": (6.5, 4.0),
    "fold marks front": (7.0, 3.0),
    "stitching front": (4.5, 1.6),
    "turns front": (6.0, 3.4),
    "checking front": (6.5, 1.5),
    "piece back": (4.0, 3.0),
    "marking strip front": (7.0, 9.0),
}


def placeholder(key: str, width: float, height: float) -> Picture:
    wide, high = width * 72, height * 72
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}pt" height="{high}pt" viewBox="0 0 {wide} {high}">'
        f'<defs><clipPath id="frame"><rect width="{wide}" height="{high}"/></clipPath></defs>'
        f'<g clip-path="url(#frame)"><rect width="{wide}" height="{high}" fill="none" stroke="#555"/>'
        f'<path d="M0 0L{wide} {high}M0 {high}L{wide} 0" stroke="#ccc"/>'
        f'<text x="{wide / 2}" y="{high / 2}" text-anchor="middle" font-family="Fira Sans" font-size="9">'
        f"{key} ³⁄₈</text>"
        "</g></svg>"
    )
    return Picture(key, svg, width, height, f"Placeholder of the {key}.", f"What the {key} shows, at 3/8 in.")


def placeholders() -> dict[str, tuple[Picture, ...]]:
    return {key: (placeholder(key, *size),) for key, size in SIZES.items()}


def light_placeholders() -> dict[str, tuple[Picture, ...]]:
    """The same as they are made light for pages."""
    return {key: tuple(map(light, pictures)) for key, pictures in placeholders().items()}
