"""Every noun as a table, out and in again.

One row a record, parts as rows of a table of their own that name the record by its key:
``plantings`` and ``plantings-lines``. A column is called what the record's field is
called, with its unit in brackets: ``area_m2 [m2]``. Another record is told by its key,
with its name beside it for reading; where the key is left out, a name that only one
record has will do. A kind is told by its short name, a person by e-mail address.

``record_key`` is the record's own for good. A row without one is new; its key then
follows from what the table says and where the row stands, so that a file loaded twice
is recorded once. Any other word may stand for a key while the record is new, so that
parts can name it; it counts within its file only.

Who wrote a record and who voided it, and when, stand there for reading. Whoever loads a
file is who wrote what is new in it: only the archive of a whole farm keeps the first
hand, along with the history.
"""

from records.tables.layout import Table, tables_of

__all__ = ["Table", "tables_of"]
