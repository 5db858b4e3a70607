"""The tags of a printed piece: headers say which way they point, names are its own."""

from __future__ import annotations

import io
from typing import Any

import pikepdf
from pikepdf import Array, Dictionary, Name, String


def finished(printed: bytes, *, prefix: str = "") -> bytes:
    """Give header cells their scope; set the names of a piece apart by a prefix."""
    with pikepdf.open(io.BytesIO(printed)) as pdf:
        for thing in pdf.objects:
            if isinstance(thing, Dictionary):
                _finish(thing, prefix)
        _spare_spans(pdf)
        if prefix:
            _rename_places(pdf, prefix)
            for page in pdf.pages:
                page.contents_add(b"q\n", prepend=True)
                page.contents_add(b"\nQ\n")
        return saved(pdf)


def saved(pdf: pikepdf.Pdf) -> bytes:
    """The file, small, and the same every time."""
    target = io.BytesIO()
    pdf.save(
        target,
        deterministic_id=True,
        object_stream_mode=pikepdf.ObjectStreamMode.generate,
    )
    return target.getvalue()


def _spare_spans(pdf: pikepdf.Pdf) -> None:
    """Let a cell hold its words itself, where nothing else stands beside them.

    A tag for each cell and one more for its words would double what is to be joined.
    """
    told = pdf.Root.StructTreeRoot.ParentTree.Nums
    for at in range(1, len(told), 2):
        if not isinstance(told[at], Array):
            continue
        for place, tag in enumerate(told[at]):
            if not isinstance(tag, Dictionary) or Name.Span != tag.S:
                continue
            if len(tag.K) == 1 and len(tag.P.K) == 1 and tag.K[0] == place:
                tag.P.K, tag.P.Pg = tag.K, tag.Pg
                told[at][place] = tag.P


def _finish(thing: Any, prefix: str) -> None:
    tag = thing.get("/S")
    if tag == Name.TH:
        head = thing.P.get("/P")
        way = Name.Column if head is not None and Name.THead == head.S else Name.Row
        thing.A.Scope = way
    if not prefix:
        return
    if tag in (Name.TH, Name.TD):
        _spare_headers(thing)
    elif thing.get("/Subtype") == Name.Link and isinstance(thing.get("/Dest"), String):
        thing.Dest = String(f"{prefix}{thing.Dest}")


def _spare_headers(cell: Any) -> None:
    """Let the scope of heads say what they head: a piece's tables have one row of them.

    Their names in each cell would be a quarter of what is to be joined.
    """
    if "/ID" in cell:
        del cell["/ID"]
    told = cell.get("/A")
    if isinstance(told, Dictionary) and "/Headers" in told:
        del told["/Headers"]
        if set(told.keys()) == {"/O"}:
            del cell["/A"]


def _rename_places(pdf: pikepdf.Pdf, prefix: str) -> None:
    """Places that links lead to, under names of this piece's own."""
    if "/Names" not in pdf.Root or "/Dests" not in pdf.Root.Names:
        return
    told = list(pdf.Root.Names.Dests.Names)
    for at in range(0, len(told), 2):
        told[at] = String(f"{prefix}{told[at]}")
    pdf.Root.Names.Dests.Names = Array(told)
