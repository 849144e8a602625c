"""The files of pictures: worksheets and turn plans come in, the bytes of WebP and JPEG go out, the same every time."""

from __future__ import annotations

import io
from collections.abc import Sequence

from PIL import Image as Raster

from generator.calculation.worked import Turn
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Worksheet
from generator.drawing.renders.colours import stored
from generator.drawing.renders.near import NEAR as NEAR
from generator.drawing.renders.near import near_view, plan_view
from generator.drawing.renders.scenes import picture_of
from generator.drawing.renders.stage import HIGH, WIDE
from generator.drawing.renders.words import SHARED, WHOLE, height_of

SAMPLE_WIDTH = 320
_QUALITY = 77
_NEAR_QUALITY, _SAMPLE_QUALITY, _SHARED_QUALITY = 70, 62, 84
_EFFORT = 4


def thing_files(worksheet: Worksheet, widths: Sequence[int]) -> tuple[dict[int, bytes], bytes]:
    """Return the picture of a finished thing as WebP by its width in dots, and the one for sharing as JPEG."""
    whole = Raster.fromarray(stored(picture_of(worksheet)))
    left = (WIDE - WHOLE[0]) // 2
    alone = whole.crop((left, 0, left + WHOLE[0], HIGH))
    sizes = {width: _webp(_sized(alone, width, height_of(width)), _QUALITY) for width in widths}
    high = round(HIGH * SHARED[0] / WIDE)
    top = (high - SHARED[1]) // 2
    return sizes, _jpeg(_sized(whole, SHARED[0], high).crop((0, top, SHARED[0], top + SHARED[1])))


def near_file(piece: Piece, colour: str) -> bytes:
    """Return the close view of a tucked panel as WebP."""
    return _webp(Raster.fromarray(stored(near_view(piece, colour))), _NEAR_QUALITY)


def plan_file(cell: Sequence[Sequence[Turn]]) -> tuple[bytes, int]:
    """Return the sample of a turn plan as WebP, and how high it is in dots."""
    picture = Raster.fromarray(stored(plan_view(cell, SAMPLE_WIDTH)))
    return _webp(picture, _SAMPLE_QUALITY), picture.height


def side_by_side(pictures: Sequence[bytes]) -> bytes:
    """Return pictures of things as one for sharing, as JPEG: the first ones, in one row or two."""
    shown = pictures[: 6 if len(pictures) >= 6 else 3 if len(pictures) >= 3 else 1]
    rows, columns = (2, 3) if len(shown) == 6 else (1, len(shown))
    size = (SHARED[0] // columns, SHARED[1] // rows)
    whole = Raster.new("RGB", SHARED)
    for number, picture in enumerate(shown):
        with Raster.open(io.BytesIO(picture)) as one:
            whole.paste(_filling(one.convert("RGB"), size), (number % columns * size[0], number // columns * size[1]))
    return _jpeg(whole)


def _filling(picture: Raster.Image, size: tuple[int, int]) -> Raster.Image:
    """A picture so large that it fills a rectangle, its middle cut out."""
    scale = max(size[0] / picture.width, size[1] / picture.height)
    larger = _sized(picture, round(picture.width * scale), round(picture.height * scale))
    left, top = (larger.width - size[0]) // 2, (larger.height - size[1]) // 2
    return larger.crop((left, top, left + size[0], top + size[1]))


def _sized(picture: Raster.Image, wide: int, high: int) -> Raster.Image:
    return picture if picture.size == (wide, high) else picture.resize((wide, high), Raster.Resampling.LANCZOS)


def _webp(picture: Raster.Image, quality: int) -> bytes:
    out = io.BytesIO()
    picture.save(out, "WEBP", quality=quality, method=_EFFORT)
    return out.getvalue()


def _jpeg(picture: Raster.Image) -> bytes:
    out = io.BytesIO()
    picture.save(out, "JPEG", quality=_SHARED_QUALITY, optimize=True, progressive=True)
    return out.getvalue()
