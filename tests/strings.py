"""Every string that people read: gathered into the catalogues, and compiled.

``python -m tests.strings`` gathers what is new and compiles what is written.
"""

import io
import json
import os
import re
import struct
import sys
from collections import defaultdict

import django
from babel.messages import Catalog
from babel.messages.extract import extract
from babel.messages.pofile import read_po, write_po
from django.utils.translation.template import templatize

from tests.places import ROOT

# How many strings may still wait to be said: none, once all hands are done.
PATIENCE = 0
CROPS = ROOT / "fixtures" / "crops.json"
STOREYS = ("farm", "records", "reports")
KEYWORDS = {
    "_": None,
    "gettext": None,
    "gettext_lazy": None,
    "gettext_noop": None,
    "ngettext": (1, 2),
    "ngettext_lazy": (1, 2),
    "pgettext": ((1, "c"), 2),
    "pgettext_lazy": ((1, "c"), 2),
    "npgettext": ((1, "c"), 2, 3),
    "npgettext_lazy": ((1, "c"), 2, 3),
}
# A module may call one of these by another name.
ALIAS = re.compile(r"\b(n?p?gettext(?:_lazy)?) as (\w+)")
SPANISH_PLURAL = "(n != 1)"


def said_in_python(path):
    text = path.read_text(encoding="utf-8")
    named = {other: KEYWORDS[own] for own, other in ALIAS.findall(text)}
    source = io.BytesIO(text.encode())
    yield from extract("python", source, keywords=KEYWORDS | named)


def said_in_template(path):
    text = path.read_text(encoding="utf-8")
    # What is no word is turned into letters that would look like indented code.
    code = templatize(text, origin=str(path))
    code = "\n".join(line.strip() for line in code.splitlines())
    source = io.BytesIO(code.encode())
    yield from extract("python", source, keywords=KEYWORDS)


def sources(storey):
    """A storey's modules and its templates; the roof's stand with the ground floor."""
    yield from ((path, said_in_python) for path in (ROOT / storey).rglob("*.py"))
    folders = [ROOT / "templates" / storey]
    for folder in folders:
        kinds = ("*.html", "*.txt", "*.css", "*.js", "*.svg")
        for kind in kinds:
            yield from ((path, said_in_template) for path in folder.rglob(kind))
    if storey == "farm":
        roof = (ROOT / "templates").glob("*.html")
        yield from ((path, said_in_template) for path in roof)


def notes_of_figures():
    """What the catalogue of kinds says beside a printed figure."""
    kinds = json.loads(CROPS.read_text(encoding="utf-8"))["kinds"]
    figures = [figure for kind in kinds for figure in kind["figures"]]
    return {figure["note"] for figure in figures if figure.get("note")}


def gathered(storey):
    """Each string of a storey with the files it stands in."""
    found = defaultdict(set)
    if storey == "records":
        for note in notes_of_figures():
            found[note, None].add(CROPS.relative_to(ROOT).as_posix())
    for path, said in sources(storey):
        if "migrations" in path.parts:
            continue
        for _line, message, _comments, context in said(path):
            key = tuple(message) if isinstance(message, (tuple, list)) else message
            if key and key != ("",):
                found[key, context].add(path.relative_to(ROOT).as_posix())
    return found


def place(storey, ending="po"):
    return ROOT / storey / "locale" / "es" / "LC_MESSAGES" / f"django.{ending}"


def kept(storey):
    """The catalogue as it was written."""
    path = place(storey)
    if not path.exists():
        return Catalog(locale="es")
    with path.open("rb") as source:
        return read_po(source, locale="es")


def singular(key):
    return key[0] if isinstance(key, tuple) else key


def renewed():
    """The catalogues of all storeys, each string in the lowest that says it."""
    taken, made = set(), {}
    old = {storey: kept(storey) for storey in STOREYS}
    for storey in STOREYS:
        catalog = Catalog(
            locale="es", project="Cover between", header_comment="# Spanish."
        )
        for (key, context), paths in sorted(gathered(storey).items(), key=in_order):
            if (singular(key), context) in taken:
                continue
            taken.add((singular(key), context))
            said = next(
                (
                    row.string
                    for each in (old[storey], *old.values())
                    if (row := each.get(singular(key), context))
                    and row.string
                    and (isinstance(row.string, tuple) == isinstance(key, tuple))
                ),
                None,
            )
            catalog.add(key, said, [(sorted(paths)[0], None)], context=context)
        made[storey] = catalog
    return made


def in_order(row):
    (key, context), paths = row
    return min(paths), singular(key), context or ""


def as_po(catalog):
    text = io.BytesIO()
    write_po(text, catalog, width=88, omit_header=True, include_lineno=False)
    head = (
        'msgid ""\nmsgstr ""\n"Language: es\\n"\n'
        '"Content-Type: text/plain; charset=UTF-8\\n"\n'
        f'"Plural-Forms: nplurals=2; plural={SPANISH_PLURAL};\\n"\n\n'
    )
    return head.encode() + text.getvalue()


def as_mo(catalog):
    """What a catalogue is read as (GNU gettext manual, 10.3); no day stands in it."""
    head = (
        "Language: es\nContent-Type: text/plain; charset=UTF-8\n"
        f"Plural-Forms: nplurals=2; plural={SPANISH_PLURAL};\n"
    )
    rows = {b"": head.encode()}
    for row in catalog:
        if row.id and whole(row):
            context = f"{row.context}\4" if row.context else ""
            rows[f"{context}{joined(row.id)}".encode()] = joined(row.string).encode()
    keys = sorted(rows)
    count, at = len(keys), 28 + 16 * len(keys)
    table = []
    for texts in (keys, [rows[key] for key in keys]):
        for text in texts:
            table += [len(text), at]
            at += len(text) + 1
    numbers = (0x950412DE, 0, count, 28, 28 + 8 * count, 0, 0, *table)
    texts = b"".join(text + b"\0" for text in [*keys, *(rows[key] for key in keys)])
    return struct.pack(f"<{len(numbers)}I", *numbers) + texts


def joined(said):
    return "\0".join(said) if isinstance(said, (tuple, list)) else said


def whole(row):
    """Whether every form of a string is said."""
    return all(row.string) if isinstance(row.string, tuple) else bool(row.string)


def main():
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "farm.settings")
    django.setup()
    for storey, catalog in renewed().items():
        place(storey).parent.mkdir(parents=True, exist_ok=True)
        place(storey).write_bytes(as_po(catalog))
        place(storey, "mo").write_bytes(as_mo(kept(storey)))
        rows = [row for row in catalog if row.id]
        missing = sum(not whole(row) for row in rows)
        sys.stdout.write(f"{storey}: {len(rows)} strings, {missing} to be said\n")


if __name__ == "__main__":
    main()
