"""The windows of one stand: cut, end, frost, plant back, and the self-sown stand."""

from __future__ import annotations

from reports.calc.season.ahead.after import frost_window, plant_back, second_stand
from reports.calc.season.ahead.ends import cut_window, end_windows
from reports.calc.season.ahead.opening import Opening
from reports.calc.shapes.ahead import Window


def windows_of(opening: Opening) -> tuple[Window, ...]:
    """Return every window of a stand that its figures can tell of."""
    ends = tuple(end_windows(opening))
    return (
        *cut_window(opening),
        *ends,
        *frost_window(opening),
        *plant_back(opening, ends),
        *second_stand(opening),
    )
