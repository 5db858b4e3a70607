"""Every other page, looked over by axe-core (WCAG 2.2 AA) and by ourselves."""

import pytest

from tests.browser.pages import addresses_of, page_at


@pytest.mark.parametrize("one", addresses_of(lambda room: room != "records"), ids=str)
def test_a_page_is_sound_on_a_phone_and_on_a_desk(judge, window, cast, one):
    shown = page_at(window, cast, one)
    assert shown is None or judge.faults(*shown, name=str(one)) == []
