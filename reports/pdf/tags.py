"""The tags of a paper, mended before it is written: heads point, names are its own."""

from __future__ import annotations

import functools
from collections.abc import Callable, Iterator
from typing import Any

# One of the engine's objects: a dictionary of the file to be, its references as bytes.
Thing = Any


def finisher(*, prefix: str = "") -> Callable[[object, Thing], None]:
    """What the engine is to do to a file just before it is written.

    Header cells are given their scope. With a prefix, which sets the names of a piece
    apart, its places are renamed and it is made ready to be joined to others.
    """
    return functools.partial(_finish, prefix=prefix)


def _finish(_document: object, pdf: Thing, *, prefix: str) -> None:
    cells = [one for one in _dictionaries(pdf) if one.get("S") in ("/TH", "/TD")]
    for cell in cells:
        if cell["S"] == "/TH":
            head = _at(pdf, _at(pdf, cell["P"])["P"])
            cell["A"]["Scope"] = "/Column" if head.get("S") == "/THead" else "/Row"
    if not prefix:
        return
    for cell in cells:
        _spare_headers(cell)
    _spare_spans(pdf)
    _spare_words(pdf)
    _rename_places(pdf, prefix)
    for page in map(functools.partial(_at, pdf), pdf.page_references):
        drawn = _at(pdf, page["Contents"]).stream
        drawn.insert(0, b"q")
        drawn.append(b"Q")


def _dictionaries(pdf: Thing) -> Iterator[Thing]:
    return (one for one in pdf.objects if isinstance(one, dict))


def _at(pdf: Thing, reference: bytes) -> Thing:
    return pdf.objects[int(reference.split()[0])]


def _spare_headers(cell: Thing) -> None:
    """Let the scope of heads say what they head: a piece's tables have one row of them.

    Their names in each cell would be a quarter of what is to be joined.
    """
    cell.pop("ID", None)
    cell["A"].pop("Headers", None)
    if set(cell["A"]) == {"O"}:
        del cell["A"]


def _spare_spans(pdf: Thing) -> None:
    """Let a cell hold its words itself, where nothing else stands beside them.

    A tag for each cell and one more for its words would double what is to be joined.
    """
    told = _at(pdf, _at(pdf, pdf.catalog["StructTreeRoot"])["ParentTree"])["Nums"]
    for tags in told[1::2]:
        if not isinstance(tags, list):
            continue
        for place, reference in enumerate(tags):
            span = _at(pdf, reference)
            holder = _at(pdf, span["P"])
            if span["S"] == "/Span" and span["K"] == [place] and len(holder["K"]) == 1:
                holder["K"], holder["Pg"] = span["K"], span["Pg"]
                tags[place] = span["P"]
                # Its number must stay; nothing leads to it any more.
                span.clear()


def _spare_words(pdf: Thing) -> None:
    """Leave out what may be left out of each tag, for there are tens of thousands.

    Only a tag that holds marks of a page itself must say which page it is.
    """
    for tag in _dictionaries(pdf):
        if tag.get("Type") == "/StructElem":
            del tag["Type"]
            if not any(isinstance(kid, int) for kid in tag["K"]):
                tag.pop("Pg", None)


def _rename_places(pdf: Thing, prefix: str) -> None:
    """Places that links lead to, under names of this piece's own."""
    for one in _dictionaries(pdf):
        if one.get("Subtype") == "/Link" and "Dest" in one:
            one["Dest"].string = f"{prefix}{one['Dest'].string}"
    names = pdf.catalog.get("Names", {}).get("Dests", {}).get("Names", [])
    for name in names[::2]:
        name.string = f"{prefix}{name.string}"
