"""Both ways to leave a residue as two columns of small drawings, alike in scale."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm.units import KG_M2_PER_LB_AC, KG_M2_PER_T_HA, System
from reports.calc.shapes.basics import Between
from reports.calc.shapes.choice import ResidueSide
from reports.calc.shapes.wishes import EndChoice, YearsPoint
from reports.drawings.band import Row, band, lines
from reports.drawings.curve import round_up

KG_HA = 1e-4  # kg/m², a kilogram a hectare


@dataclass(frozen=True)
class Pair:
    """One thing compared: its name, and a drawing or a sentence for each way."""

    name: str
    on_top: SafeString | str
    worked_in: SafeString | str


def ways(both: EndChoice, *, ident: str, system: System) -> list[Pair]:
    """Mass, ground cover, hold on weeds and nitrogen, left on top and worked in."""
    if not both.points:
        return []
    return [
        _masses(both.points, ident, system),
        _covers(both.points, ident),
        _holds(both.points, ident),
        *_nitrogen(both, ident, system),
    ]


def _masses(points: Sequence[YearsPoint], ident: str, system: System) -> Pair:
    factor, unit = (
        (KG_M2_PER_LB_AC, "lb/ac") if system is System.US else (KG_M2_PER_T_HA, "t/ha")
    )
    highest = round_up(max(one.on_top_kg_m2.high for one in points) / factor)

    def drawn(name: str, title: str, of: Callable[[YearsPoint], Row]) -> SafeString:
        rows = [_scaled(of(one), factor) for one in points]
        return band(
            rows,
            ident=f"{name}-{ident}",
            highest=highest,
            unit=unit,
            title=title,
            desc=_("The middle of the years, with one year in ten and nine in ten."),
        )

    return Pair(
        _("Mass left"),
        drawn(
            "top",
            _("Mass left on top"),
            lambda one: (one.offset_days, one.on_top_kg_m2, one.on_top_middle_kg_m2),
        ),
        drawn(
            "in",
            _("Mass left, worked in"),
            lambda one: (
                one.offset_days,
                one.worked_in_kg_m2,
                one.worked_in_middle_kg_m2,
            ),
        ),
    )


def _scaled(row: Row, factor: float) -> Row:
    day, span, middle = row
    return day, Between(span.low / factor, span.high / factor), middle / factor


def _covers(points: Sequence[YearsPoint], ident: str) -> Pair:
    drawing = band(
        [(one.offset_days, one.cover, one.cover_middle) for one in points],
        ident=f"cover-{ident}",
        highest=1.0,
        unit=_("% of the ground"),
        title=_("Ground covered by residue left on top"),
        desc=_("The middle of the years, with one year in ten and nine in ten."),
    )
    return Pair(_("Ground covered"), drawing, _("Worked in, it covers no ground."))


def _holds(points: Sequence[YearsPoint], ident: str) -> Pair:
    drawing = lines(
        [
            (
                _("at least in part"),
                "none",
                [(one.offset_days, one.holds_partly) for one in points],
            ),
            (
                _("moderately"),
                "5 3",
                [(one.offset_days, one.holds_moderately) for one in points],
            ),
        ],
        ident=f"hold-{ident}",
        unit=_("% of the years"),
        title=_("Weeds held back by residue left on top"),
        desc=_(
            "A full line for the share of years in which it holds weeds back at least "
            "in part, a broken line for at least moderately."
        ),
    )
    return Pair(
        _("Weeds held back"), drawing, _("Worked in, no mulch holds weeds back.")
    )


def _nitrogen(both: EndChoice, ident: str, system: System) -> list[Pair]:
    top, worked = both.choice.on_top, both.choice.worked_in
    if top is None or worked is None or worked.nitrogen_six_weeks_kg_m2 is None:
        return []
    factor, unit = (
        (KG_M2_PER_LB_AC, "lb/ac") if system is System.US else (KG_HA, "kg/ha")
    )
    most = [side.nitrogen_six_weeks_kg_m2 for side in (top, worked)]
    highest = round_up(max(one.high for one in most if one is not None) / factor)

    def drawn(side: ResidueSide, name: str, title: str) -> SafeString:
        found = ((one.offset_days, one.nitrogen_released_kg_m2) for one in side.curve)
        rows = [
            _scaled((day, span, span.middle), factor)
            for day, span in found
            if span is not None
        ]
        return band(
            rows,
            ident=f"{name}-{ident}",
            highest=highest,
            unit=unit,
            title=title,
            desc=_("The middle of the figures, with their low and high end."),
        )

    return [
        Pair(
            _("Nitrogen freed"),
            drawn(top, "n-top", _("Nitrogen freed, left on top")),
            drawn(worked, "n-in", _("Nitrogen freed, worked in")),
        )
    ]
