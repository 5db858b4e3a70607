"""An uploaded picture or paper: known by its content, made plain, never trusted."""

from __future__ import annotations

import io
import warnings
from dataclasses import dataclass
from enum import StrEnum

from PIL import Image, ImageOps, UnidentifiedImageError

# A telephone's picture has some twelve million points; a bomb has thousands more.
MOST_POINTS = 60_000_000
LONGEST_SIDE = 2400
QUALITY = 85
READ = ("JPEG", "PNG", "WEBP")


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
        with warnings.catch_warnings():
            warnings.simplefilter("error", Image.DecompressionBombWarning)
            picture = Image.open(io.BytesIO(data), formats=READ)
            if picture.width * picture.height > MOST_POINTS:
                raise PictureError(Trouble.TOO_MANY_POINTS)
            upright = ImageOps.exif_transpose(picture)
    except (Image.DecompressionBombError, Image.DecompressionBombWarning) as error:
        raise PictureError(Trouble.TOO_MANY_POINTS) from error
    except UnidentifiedImageError as error:
        raise PictureError(Trouble.UNKNOWN) from error
    except (OSError, SyntaxError, ValueError) as error:
        if isinstance(error, PictureError):
            raise
        raise PictureError(Trouble.BROKEN) from error
    return _drawn_anew(upright)


def _drawn_anew(upright: Image.Image) -> Plain:
    upright.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
    clear = upright.mode in {"RGBA", "LA", "P", "PA"}
    drawn = Image.new("RGBA" if clear else "RGB", upright.size)
    drawn.paste(upright.convert(drawn.mode))
    out = io.BytesIO()
    if clear:
        drawn.save(out, "PNG", optimize=True)
        return Plain("image/png", out.getvalue())
    drawn.save(out, "JPEG", quality=QUALITY, optimize=True)
    return Plain("image/jpeg", out.getvalue())
