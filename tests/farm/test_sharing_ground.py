"""Outlines drawn over one another share ground; those side by side do not."""

import pytest

from farm.outlines import Outline, sharing


def square(west, south, side=0.01, *holes):
    """A square with its corners in degrees, and squares cut out of it."""
    rings = [_ring(west, south, side), *(_ring(*hole) for hole in holes)]
    return (tuple(rings),)


def _ring(west, south, side):
    east, north = west + side, south + side
    return (
        (west, south),
        (east, south),
        (east, north),
        (west, north),
        (west, south),
    )


@pytest.mark.parametrize(
    ("other", "shares"),
    [
        (square(10.01, 50.0), False),
        (square(10.0098, 50.0), False),
        (square(10.009, 50.0), True),
        (square(10.002, 50.002, 0.001), True),
        (square(10.0, 50.0), True),
        (square(11.0, 50.0), False),
    ],
    ids=["beside", "two hundredths over", "a tenth over", "inside", "same", "far"],
)
def test_ground_is_shared_from_a_twentieth_of_the_smaller_outline(other, shares):
    drawn = {7: Outline(square(10.0, 50.0)), 3: Outline(other)}
    assert sharing(drawn) == (frozenset({(3, 7)}) if shares else frozenset())


def test_a_piece_in_the_hole_of_another_is_not_on_its_ground():
    around = Outline(square(10.0, 50.0, 0.01, (10.002, 50.002, 0.004)))
    within = Outline(square(10.003, 50.003, 0.002))
    assert sharing({1: around, 2: within}) == frozenset()


def test_outlines_across_the_date_line_are_compared_on_one_side_of_it():
    ring = (179.995, 0.0), (-179.995, 0.0), (-179.995, 0.01), (179.995, 0.0)
    over = Outline(((ring,),))
    beyond = Outline(square(-179.999, 0.0, 0.003))
    assert sharing({1: over, 2: beyond}) == frozenset({(1, 2)})


def test_the_part_shared_is_measured_and_no_outline_shares_nothing():
    half = {1: Outline(square(10.0, 50.0)), 2: Outline(square(10.005, 50.0))}
    assert sharing(half, share=0.49)
    assert not sharing(half, share=0.51)
    assert sharing({}) == frozenset()
