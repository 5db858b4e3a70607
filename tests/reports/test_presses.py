"""Processes that print side by side: what comes of them, and that they end."""

import multiprocessing
import time

import pytest

from reports.pdf import presses, printing
from reports.pdf.pieces import Leaf

STYLE = "@page { size: A4 }"
SHEET = """<html lang=en><title>{n}</title><h2 id=a dir=ltr>{n}</h2><ul><li>one<li>two
</ul><ol><li><a href="#a">back</a></ol><table><thead><tr><th>Field<th>Acres
<tbody><tr><th scope=row>{n}<td>2</table><svg viewBox="0 0 9 9"
xmlns="http://www.w3.org/2000/svg"><title>x</title><text x=1 y=8>{n}</text></svg>"""


def leaf(n):
    return Leaf(SHEET.format(n=n), STYLE)


def printed(leaves, processes=2):
    with presses.Presses(processes) as at_hand:
        coming = at_hand.printed({one.key: one for one in leaves})
        return dict(one for come in coming for one in come)


def gone(within_s=10):
    """Whether every process that was begun here has ended in time."""
    end = time.monotonic() + within_s
    while multiprocessing.active_children() and time.monotonic() < end:
        time.sleep(0.05)
    return multiprocessing.active_children() == []


def test_a_piece_is_the_same_wherever_it_is_printed(monkeypatch):
    """Here each process prints one piece and ends, so that there are more of them."""
    monkeypatch.setattr(presses, "TURN", 1)
    leaves = [leaf(n) for n in "abc"]
    assert printed(leaves) == {one.key: printing.piece(one) for one in leaves}
    assert gone()


def test_presses_are_spawned_where_there_is_no_forking(monkeypatch):
    monkeypatch.setattr(presses, "_may_fork", lambda: False)
    one = leaf("a")
    assert printed([one], processes=1) == {one.key: printing.piece(one)}
    assert gone()


def test_what_goes_wrong_with_a_piece_is_told_to_whoever_waits():
    told = {"good": leaf("a"), "without a style": Leaf(SHEET, None)}
    with presses.Presses(2) as at_hand, pytest.raises(TypeError):
        list(at_hand.printed(told))
    assert gone()


def test_a_press_that_was_killed_is_missed_at_once(monkeypatch):
    begun = presses._started

    def killed():
        press = begun()
        press.process.kill()
        press.process.join()
        return press

    monkeypatch.setattr(presses, "_started", killed)
    with pytest.raises(presses.PressLostError):
        printed([leaf("a"), leaf("b")])
    assert gone()


def test_a_missing_library_is_told_before_any_press_is_begun(monkeypatch):
    def missing(name):
        raise OSError("cannot load library 'libpango-1.0-0'")

    monkeypatch.setattr(printing.importlib, "import_module", missing)
    with pytest.raises(printing.PdfUnavailableError):
        printed([leaf("a")])
    assert multiprocessing.active_children() == []


def test_rules_of_the_engine_left_out_change_no_byte_of_a_paper():
    own = printing.engine()
    less = printing._page(own)
    assert less is not own.HTML
    both = [
        page(string=SHEET.format(n="a")).write_pdf(pdf_variant=printing.VARIANT)
        for page in (own.HTML, less)
    ]
    assert both[0] == both[1]
