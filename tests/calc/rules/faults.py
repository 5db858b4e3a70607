"""Books with one fault each."""

from reports.calc.rules import RULES, findings
from reports.calc.shapes import books as rows
from tests.calc import books as at
from tests.calc.books import CLEAN, but, day, spoiled

EVERY = tuple(RULES)


def found(books, rules=EVERY):
    return {one.found.matter for one in findings(books, rules)}


PEST = at.SPRAY


MANURE = rows.Product(3, "Cow manure", "manure", approval="IPC 14")


COVER = but(at.STAND, id=2, purpose="cover", sown_on=day("03-20"))


def used_on(status, cleaned=()):
    before = rows.Ground(2, "South", 1.0, status, day("2015-01-01"))
    drilled = but(at.PUT, id=9, field_id=2, equipment="drill", on=day("04-01"))
    return spoiled(
        fields=(at.GROUND, before),
        puts=(but(at.PUT, equipment="Drill"), drilled, at.SPRAYED),
        cleaned=cleaned,
    )


def rich(share, **told):
    """200 kg on 4,000 m²: 500 kg a hectare of something with this share of N."""
    fed = but(MANURE, nitrogen_share=share)
    put = but(at.PUT, id=3, product_id=3, **told)
    return spoiled(products=(*CLEAN.products, fed), puts=(*CLEAN.puts, put))


def sprayed(product=PEST, **told):
    return spoiled(
        products=(at.PRODUCT, product), puts=(at.PUT, but(at.SPRAYED, **told))
    )


RESTRICTED = but(PEST, restricted=True)


def delivered(came, *, measure="mass", counts=(), **told):
    """So much of the feather meal came in March; 200 went on on 1 May."""
    lot = rows.Delivered(1, 1, "F-1", "Two Magpies", day("03-01"), came, measure)
    put = but(at.PUT, measure=measure, **told)
    return spoiled(delivered=(lot,), puts=(put, at.SPRAYED), counts=counts)
