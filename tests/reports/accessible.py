"""What checkers of ISO 14289-1 (PDF/UA-1) say of a printed paper."""

import io

import page as page_validation
import pdfua
import pikepdf

HEADINGS = {f"/H{level}": level for level in range(1, 7)}


def faults_of(printed, folder):
    """Rules that a paper breaks, as two checkers that share no code see it."""
    (folder / "paper.pdf").write_bytes(printed)
    name = str(folder / "paper.pdf")
    told = page_validation.validate_pdf(name, profile="ua1")
    # One stream in 256 ends in the byte that the checker takes for an end of line.
    faults = {one.rule_id for one in told.failures}
    second = {one.rule_id for one in pdfua.validate(name).findings}
    return {one for one in faults if "STREAM-LENGTH" not in one} | second


def heading_levels(printed):
    """The levels of all headings in the order in which they are read aloud.

    The second checker cannot walk a tree of tags whose kids are arrays.
    """
    with pikepdf.open(io.BytesIO(printed)) as pdf:
        return list(_levels(pdf.Root.StructTreeRoot))


def _levels(tag):
    if not isinstance(tag, pikepdf.Dictionary):
        return
    if str(tag.get("/S", "")) in HEADINGS:
        yield HEADINGS[str(tag.S)]
    kids = tag.get("/K", ())
    for kid in kids if isinstance(kids, pikepdf.Array) else (kids,):
        yield from _levels(kid)


def skips(levels):
    """Where a heading goes down by more than one level, or the first is no first."""
    pairs = zip([0, *levels], levels, strict=False)
    return [(above, below) for above, below in pairs if below > above + 1]
