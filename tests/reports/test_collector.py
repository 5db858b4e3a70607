"""The collector rests over large work, and is back whatever happens."""

import gc
import weakref

import pytest

from reports.collector import at_rest, swept


def test_the_collector_rests_while_much_is_made_and_is_back_afterwards():
    assert gc.isenabled()
    with at_rest():
        assert not gc.isenabled()
    assert gc.isenabled()


def test_the_collector_is_back_after_work_that_failed():
    with pytest.raises(ValueError), at_rest():
        raise ValueError
    assert gc.isenabled()


def test_a_collector_that_was_off_stays_off():
    gc.disable()
    try:
        with at_rest():
            pass
        assert not gc.isenabled()
    finally:
        gc.enable()


def test_what_was_made_inside_is_cleared_away_at_once():
    class Ring:
        pass

    with swept():
        ring = Ring()
        ring.itself, seen = ring, weakref.ref(ring)
        del ring
        assert seen() is not None
    assert seen() is None
    assert gc.isenabled()
    assert gc.get_freeze_count() == 0
