"""Pieces printed apart, joined into one file with its tags, bookmarks and numbers."""

from __future__ import annotations

import io
from collections.abc import Iterator, Sequence
from contextlib import ExitStack
from dataclasses import dataclass, field
from typing import Any
from urllib.parse import unquote

import pikepdf
from pikepdf import Array, Dictionary, Name, OutlineItem, String

from reports.pdf.numbering import Numbering, number_pages
from reports.pdf.pieces import Enclosure, Piece

# A link of this form leads to a place in another piece: its name, then what it says.
ELSEWHERE = "elsewhere:"


@dataclass
class Growing:
    """The file as it grows: where its pages, tags and named places stand."""

    pdf: pikepdf.Pdf
    tagged: int = 0
    numbers: list[Any] = field(default_factory=list)
    places: dict[str, Any] = field(default_factory=dict)


def joined(
    pieces: Sequence[Piece],
    *,
    numbering: Numbering,
    enclosures: Sequence[Enclosure] = (),
) -> bytes:
    """Join pieces in their order; the first one lends title, language and metadata.

    Parameters
    ----------
    pieces : sequence of Piece
        At least one.
    numbering : Numbering
        The words of the page number.
    enclosures : sequence of Enclosure
        Files to travel inside, as they are.
    """
    with ExitStack() as stack:
        base = stack.enter_context(pikepdf.open(io.BytesIO(pieces[0].pdf)))
        growing = Growing(base)
        document = base.Root.StructTreeRoot.K[0]
        _take_up(growing, base, base.Root.StructTreeRoot, pieces[0], first=0)
        for one in pieces[1:]:
            other = stack.enter_context(pikepdf.open(io.BytesIO(one.pdf)))
            first = len(base.pages)
            base.pages.extend(other.pages)
            root = base.copy_foreign(other.Root.StructTreeRoot)
            part = root.K[0]
            part.S, part.P = Name.Sect, document
            document.K.append(part)
            _take_up(growing, other, root, one, first=first)
        _settle(growing)
        _bookmarks(base, pieces)
        number_pages(base, numbering)
        for file in enclosures:
            _enclose(base, file)
        return _saved(base)


def _take_up(
    growing: Growing, other: pikepdf.Pdf, root: Any, piece: Piece, *, first: int
) -> None:
    """Shift the numbers by which pages and links find their tags; note the places."""
    base, shift = growing.pdf, growing.tagged
    pages = [base.pages[at] for at in range(first, first + piece.pages)]
    for page in pages:
        if "/StructParents" in page.obj:
            page.obj.StructParents += shift
        for link in page.obj.get("/Annots", ()):
            if "/StructParent" in link:
                link.StructParent += shift
    told = list(root.ParentTree.Nums)
    for at in range(0, len(told), 2):
        told[at] = int(told[at]) + shift
    if told:
        growing.tagged = told[-2] + 1
        limits = Array([told[0], told[-2]])
        leaf = Dictionary(Limits=limits, Nums=Array(told))
        growing.numbers.append(base.make_indirect(leaf))
    for name, place in _places(other):
        # The pages of a place are the copies that were just taken over.
        at = other.pages.index(pikepdf.Page(place[0]))
        growing.places[name] = Array([pages[at].obj, *list(place)[1:]])


def _places(other: pikepdf.Pdf) -> Iterator[tuple[str, Any]]:
    names = other.Root.get("/Names", Dictionary()).get("/Dests", Dictionary())
    told = list(names.get("/Names", ()))
    for at in range(0, len(told), 2):
        yield str(told[at]), told[at + 1]


def _settle(growing: Growing) -> None:
    """Write down the tags and places of the whole file, and mend links between."""
    base, places = growing.pdf, growing.places
    base.Root.StructTreeRoot.ParentTree = base.make_indirect(
        Dictionary(Kids=Array(growing.numbers))
    )
    base.Root.StructTreeRoot.ParentTreeNextKey = growing.tagged
    bare = {name.partition("-")[2]: place for name, place in reversed(places.items())}
    for page in base.pages:
        for link in page.obj.get("/Annots", ()):
            asked = str(link.get("/A", Dictionary()).get("/URI", ""))
            if asked.startswith(ELSEWHERE):
                place, _hash, says = asked.removeprefix(ELSEWHERE).partition("#")
                del link["/A"]
                link.Dest = bare[place]
                link.Contents = String(unquote(says) or place)
    if places:
        ordered = sorted(places, key=lambda name: name.encode())
        told = [one for name in ordered for one in (String(name), places[name])]
        limits = Array([String(ordered[0]), String(ordered[-1])])
        kid = base.make_indirect(Dictionary(Limits=limits, Names=Array(told)))
        base.Root.Names = Dictionary(Dests=Dictionary(Kids=Array([kid])))


def _bookmarks(base: pikepdf.Pdf, pieces: Sequence[Piece]) -> None:
    with base.open_outline() as outline:
        outline.root.clear()
        branch: list[list[OutlineItem]] = [outline.root]
        first = 0
        for one in pieces:
            for mark in one.marks:
                item = OutlineItem(mark.title, first + mark.page, "Fit")
                del branch[mark.level + 1 :]
                branch[-1].append(item)
                branch.append(item.children)
            first += one.pages


def _enclose(base: pikepdf.Pdf, file: Enclosure) -> None:
    told = pikepdf.AttachedFileSpec(
        base,
        file.data,
        description=file.says,
        filename=file.name,
        mime_type=file.type,
        relationship=Name.Source,
    )
    base.attachments[file.name] = told


def _saved(pdf: pikepdf.Pdf) -> bytes:
    """The file, small, and the same every time."""
    target = io.BytesIO()
    pdf.save(
        target,
        deterministic_id=True,
        object_stream_mode=pikepdf.ObjectStreamMode.generate,
    )
    return target.getvalue()
