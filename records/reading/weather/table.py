"""A delimited text table: its header and its rows."""

import csv
import io
from collections.abc import Iterator
from dataclasses import dataclass

from records.reading.weather.shapes import Trouble, WeatherFileError

_DELIMITERS = ",;\t|"


@dataclass(frozen=True, slots=True)
class Table:
    """A header and the text it heads; a comma parts decimals unless it parts cells."""

    header: tuple[str, ...]
    text: str
    delimiter: str

    @property
    def comma(self) -> bool:
        return self.delimiter != ","

    def find(self, *names: str) -> int | None:
        """Return the place of the first column with one of the names, in any case."""
        lowered = [name.casefold() for name in self.header]
        return next((lowered.index(n) for n in names if n in lowered), None)

    def place(self, name: str) -> int:
        """Return the place of a column that must be there, once."""
        if self.header.count(name) != 1:
            raise WeatherFileError(Trouble.NO_COLUMNS, line=1, found=name)
        return self.header.index(name)

    def rows(self) -> Iterator[tuple[int, list[str]]]:
        """Yield line number and cells of every row under the header.

        Raises
        ------
        WeatherFileError
            TRUNCATED for a row with too few cells, RAGGED for one with too many.
        """
        width = len(self.header)
        rows = rows_of(self.text, self.delimiter)
        next(rows)
        for line, row in rows:
            if len(row) < width:
                found = self.delimiter.join(row)
                raise WeatherFileError(Trouble.TRUNCATED, line=line, found=found)
            if any(cell.strip() for cell in row[width:]):
                found = self.delimiter.join(row[width:])
                raise WeatherFileError(Trouble.RAGGED, line=line, found=found)
            yield line, row


def table_of(text: str) -> Table:
    """Return the table in ``text``, parted by whichever mark its header uses most.

    Raises
    ------
    WeatherFileError
        NO_COLUMNS when the first row does not hold at least two names.
    """
    first = first_line(text)
    delimiter = max(_DELIMITERS, key=first.count)
    _, header = next(rows_of(text, delimiter), (0, []))
    names = tuple(name.strip() for name in header)
    while names and not names[-1]:
        names = names[:-1]
    if len(names) < 2 or not any(name[:1].isalpha() for name in names):
        raise WeatherFileError(Trouble.NO_COLUMNS, line=1, found=first)
    return Table(names, text, delimiter)


def first_line(text: str) -> str:
    """Return the first line that is neither blank nor a remark."""
    for line in io.StringIO(text, newline=""):
        if line.strip() and not line.startswith("#"):
            return line.rstrip("\r\n")
    return ""


def rows_of(text: str, delimiter: str) -> Iterator[tuple[int, list[str]]]:
    """Yield line number and cells, without blank lines and leading remarks."""
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    begun = False
    try:
        for row in reader:
            remark = not begun and row and row[0].startswith("#")
            if any(cell.strip() for cell in row) and not remark:
                begun = True
                yield reader.line_num, row
    except csv.Error as error:
        cut = "unexpected end" in str(error)
        reason = Trouble.TRUNCATED if cut else Trouble.RAGGED
        raise WeatherFileError(reason, line=reader.line_num) from None
