"""Tags of seed lots and labels of products of the story, as small papers in PDF."""

from __future__ import annotations

from collections.abc import Sequence

from records.models import InputProduct, SeedLot

PAGE = (
    b"<</Type/Page/Parent 2 0 R/MediaBox[0 0 288 162]/Contents 4 0 R"
    b"/Resources<</Font<</F 5 0 R>>>>>>"
)
FONT = b"<</Type/Font/Subtype/Type1/BaseFont/Helvetica/Encoding/WinAnsiEncoding>>"


def tag_of(lot: SeedLot) -> bytes:
    """What the tag says; what is not known is left off it."""
    told = [
        "Seed tag (invented)",
        f"{lot.kind} {lot.variety}".strip(),
        f"Lot {lot.lot_number}, {lot.supplier}",
        f"Received {lot.received_on}",
    ]
    if lot.purity_share is not None and lot.germination_share is not None:
        told.append(
            f"Pure seed {lot.purity_share:.1%}, germination {lot.germination_share:.1%}"
        )
    if lot.tested_on is not None:
        told.append(f"Tested {lot.tested_on:%m/%Y}")
    return paper(told)


def label_of(product: InputProduct) -> bytes:
    """What the label says: what was typed from it, and no more."""
    told = ["Label and data sheet (invented)", product.name, product.maker]
    if product.reentry_hours is not None:
        told.append(f"Re-entry {product.reentry_hours:g} hours")
    if product.preharvest_days is not None:
        told.append(f"Before harvest {product.preharvest_days:g} days")
    return paper(told)


def paper(lines: Sequence[str]) -> bytes:
    """One page with these lines, by hand: no engine is needed for so little."""
    shown = b" T* ".join(b"(" + _plain(line) + b") Tj" for line in lines)
    text = b"BT /F 11 Tf 16 TL 18 136 Td " + shown + b" ET"
    objects = [
        b"<</Type/Catalog/Pages 2 0 R>>",
        b"<</Type/Pages/Kids[3 0 R]/Count 1>>",
        PAGE,
        b"<</Length %d>>stream\n%s\nendstream" % (len(text), text),
        FONT,
    ]
    data, places = b"%PDF-1.4\n", []
    for number, told in enumerate(objects, start=1):
        places.append(len(data))
        data += b"%d 0 obj%s endobj\n" % (number, told)
    rows = b"".join(b"%010d 00000 n \n" % place for place in places)
    count, start = len(objects) + 1, len(data)
    data += b"xref\n0 %d\n0000000000 65535 f \n%s" % (count, rows)
    return data + b"trailer<</Size %d/Root 1 0 R>>\nstartxref\n%d\n%%%%EOF\n" % (
        count,
        start,
    )


def _plain(line: str) -> bytes:
    shown = line.replace("\\", "\\\\").replace("(", "\\(").replace(")", "\\)")
    return shown.encode("cp1252", "replace")
