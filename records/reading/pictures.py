"""An uploaded picture or paper: known by its content, made plain, never trusted."""

from __future__ import annotations

import contextlib
import io
import struct
import threading
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from PIL import Image, ImageFile, ImageOps, UnidentifiedImageError
from pillow_heif import register_heif_opener

# A telephone's picture has some twelve million points; a bomb has thousands more.
MOST_POINTS = 60_000_000
LONGEST_SIDE = 2400
LONGEST_SIDE_SMALL = 320
QUALITY = 85
ONE_AT_A_TIME = threading.Lock()
KEPT = ("JPEG", "PNG")
# What comes in; HEIF is what telephones write.
READ = (*KEPT, "WEBP", "HEIF")
# What such a picture calls itself, behind its first eight bytes.
HEIF_BRANDS = (b"heic", b"heix", b"hevc", b"hevx", b"heim", b"heis", b"mif1", b"msf1")
# The picture itself and nothing beside it, on the one thread that asked.
register_heif_opener(thumbnails=False, depth_images=False, decode_threads=1)


class Trouble(StrEnum):
    """Why a file was not taken."""

    EMPTY = "empty"
    UNKNOWN = "unknown"
    BROKEN = "broken"
    TOO_MANY_POINTS = "too_many_points"


class PictureError(ValueError):
    """A file that was not taken, and why."""

    def __init__(self, reason: Trouble) -> None:
        self.reason = reason
        super().__init__(reason.value)


@dataclass(frozen=True)
class Plain:
    """What is kept of an upload: its type as found, and its bytes as rewritten."""

    type: str
    data: bytes


def made_plain(data: bytes) -> Plain:
    """Take a picture or a PDF; pictures are drawn anew, upright, without their past.

    Whatever a telephone wrote into the file, the place above all, is left behind.
    """
    if not data:
        raise PictureError(Trouble.EMPTY)
    if data[:1024].lstrip().startswith(b"%PDF-"):
        return _paper(data)
    return _picture(data)


def _paper(data: bytes) -> Plain:
    if b"%%EOF" not in data[-2048:]:
        raise PictureError(Trouble.BROKEN)
    return Plain("application/pdf", data)


def _picture(data: bytes) -> Plain:
    try:
        with whole_only():
            upright = _upright(data)
    except Image.DecompressionBombError as error:
        raise PictureError(Trouble.TOO_MANY_POINTS) from error
    except UnidentifiedImageError as error:
        is_told = data[4:8] == b"ftyp" and data[8:12] in HEIF_BRANDS
        raise PictureError(Trouble.BROKEN if is_told else Trouble.UNKNOWN) from error
    except (OSError, SyntaxError, ValueError, EOFError, struct.error) as error:
        if isinstance(error, PictureError):
            raise
        raise PictureError(Trouble.BROKEN) from error
    return _drawn_anew(upright)


def _upright(data: bytes) -> Image.Image:
    picture = Image.open(io.BytesIO(data), formats=READ)
    if picture.width * picture.height > MOST_POINTS:
        raise PictureError(Trouble.TOO_MANY_POINTS)
    # Smaller first, so that turning it takes little room.
    picture.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
    return ImageOps.exif_transpose(picture)


@contextlib.contextmanager
def whole_only() -> Iterator[None]:
    """Take no half picture: the PDF engine, once loaded, has the library take them."""
    with ONE_AT_A_TIME:
        before = ImageFile.LOAD_TRUNCATED_IMAGES
        ImageFile.LOAD_TRUNCATED_IMAGES = False
        try:
            yield
        finally:
            ImageFile.LOAD_TRUNCATED_IMAGES = before


def _drawn_anew(upright: Image.Image) -> Plain:
    clear = upright.mode in {"RGBA", "LA", "P", "PA"}
    drawn = Image.new("RGBA" if clear else "RGB", upright.size)
    drawn.paste(upright.convert(drawn.mode))
    out = io.BytesIO()
    if clear:
        drawn.save(out, "PNG", optimize=True)
        return Plain("image/png", out.getvalue())
    drawn.save(out, "JPEG", quality=QUALITY, optimize=True)
    return Plain("image/jpeg", out.getvalue())


def small(data: bytes) -> bytes:
    """A kept picture at the size of a stamp, as JPEG on white."""
    picture = Image.open(io.BytesIO(data), formats=KEPT)
    picture.thumbnail((LONGEST_SIDE_SMALL, LONGEST_SIDE_SMALL))
    clear = picture.convert("RGBA")
    drawn = Image.new("RGB", clear.size, "white")
    drawn.paste(clear, mask=clear)
    out = io.BytesIO()
    drawn.save(out, "JPEG", quality=QUALITY)
    return out.getvalue()
