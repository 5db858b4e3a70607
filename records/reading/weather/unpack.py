"""From the bytes of a file to its text, within limits."""

import zlib

from records.reading.weather.shapes import Trouble, WeatherFileError

MOST_BYTES = 25_000_000
_GZIP = b"\x1f\x8b"


def text_of(data: bytes) -> str:
    """Return the text of a plain or gzipped file.

    Raises
    ------
    WeatherFileError
        EMPTY, TOO_LARGE, TRUNCATED, BINARY or NOT_UTF8.
    """
    if len(data) > MOST_BYTES:
        raise WeatherFileError(Trouble.TOO_LARGE)
    plain = _unzipped(data) if data.startswith(_GZIP) else data
    if not plain.strip(b"\xef\xbb\xbf \t\r\n"):
        raise WeatherFileError(Trouble.EMPTY)
    if any(byte in plain for byte in (b"\0", b"\x01", b"\x03", b"\x08")):
        raise WeatherFileError(Trouble.BINARY)
    try:
        return plain.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = plain.count(b"\n", 0, error.start) + 1
        raise WeatherFileError(Trouble.NOT_UTF8, line=line) from None


def _unzipped(data: bytes) -> bytes:
    """Unzip every member of a gzip file, stopping at the limit."""
    parts: list[bytes] = []
    room = MOST_BYTES
    while data.startswith(_GZIP):
        member = zlib.decompressobj(wbits=31)
        try:
            part = member.decompress(data, room + 1)
        except zlib.error:
            raise WeatherFileError(Trouble.BINARY) from None
        room -= len(part)
        if room < 0:
            raise WeatherFileError(Trouble.TOO_LARGE)
        if not member.eof:
            raise WeatherFileError(Trouble.TRUNCATED)
        parts.append(part)
        data = member.unused_data
    return b"".join(parts)
