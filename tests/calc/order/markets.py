"""Small markets, and every order on them counted one by one."""

from hypothesis import strategies as st

from reports.calc.shapes.order import (
    Offer,
    Price,
)

CENT = 0.01


@st.composite
def prices(draw):
    """One or two sizes of bag, the price falling once with the number."""
    rows = []
    for bag_kg in draw(st.sampled_from([(10.0,), (25.0,), (10.0, 25.0)])):
        each = draw(st.integers(200, 4000))
        rows.append(Price(bag_kg, 1, each / 100))
        if draw(st.booleans()):
            off = draw(st.integers(1, 30))
            rows.append(
                Price(bag_kg, draw(st.integers(2, 4)), each * (100 - off) // 100 / 100)
            )
    return tuple(rows)


def each(rows, bags):
    return min(row.each for row in rows if row.from_bags <= bags)


def offer(number, supplier, kind, each, *, organic=True, bag_kg=25.0, **more):
    return Offer(
        number, supplier, kind, organic, 1.0, (Price(bag_kg, 1, each),), **more
    )
