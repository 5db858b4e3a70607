"""Three years of each field: what stood there, and what was put on."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable, Mapping

from django.utils.translation import gettext as _now
from django.utils.translation import gettext_lazy as _

from farm.names import counting
from reports.calc.rules.dates import add_months
from reports.calc.shapes.basics import Span
from reports.calc.shapes.books import Ground, Put, Stand
from reports.calc.shapes.ledger import Purpose, Residue
from reports.drawings.months import Stay, months_strip
from reports.labels import label
from reports.papers.packet.tables import Books, Group, day, register
from reports.papers.packet.work import PUT_HEADINGS, put_cells

MONTHS_BACK = 36
ROTATION = (
    _("Sown"),
    _("Over"),
    _("Kind"),
    _("Family"),
    _("Purpose"),
    _("Residue"),
)
PUT = (*PUT_HEADINGS[:1], *PUT_HEADINGS[2:7], _("Rate"), *PUT_HEADINGS[7:])


def rotation(books: Books) -> tuple[Group, ...]:
    """Fields on which anything stood in the three years, by name."""
    years = _years(books)
    told = (_rotation(books, ground, years) for ground in books.told.fields)
    return tuple(
        sorted((one for one in told if one), key=lambda one: counting(one.title))
    )


def substances(books: Books) -> tuple[Group, ...]:
    """Every field, with what was put on in the three years or that nothing was."""
    years = _years(books)
    groups = []
    for ground in books.told.fields:
        told = books.told.by_field["puts"].get(ground.id, ())
        puts = sorted((put.on, put.id, put) for put in told if put.on in years)
        rows = [_put(books, put) for *_order, put in puts]
        note = "" if rows else _now("None recorded.")
        groups.append(Group(ground.name, register(PUT, rows), note=note))
    return _by_name(groups)


def _by_name(groups: Iterable[Group]) -> tuple[Group, ...]:
    return tuple(sorted(groups, key=lambda one: counting(one.title)))


def _rotation(books: Books, ground: Ground, years: Span) -> Group | None:
    stood = []
    for stand in books.told.by_field["stands"].get(ground.id, ()):
        over = _over(books, stand)
        last = over or min(books.told.today, years.last)
        if stand.sown_on and stand.sown_on <= years.last and last >= years.first:
            stood.append((stand, over, last))
    if not stood:
        return None
    stood.sort(key=lambda one: (one[0].sown_on or dt.date.min, one[0].id))
    stays = [
        Stay(stand.purpose == Purpose.CASH, stand.sown_on or last, last)
        for stand, _over_on, last in stood
    ]
    title = _now("What stood on %(field)s") % {"field": ground.name}
    return Group(
        ground.name,
        register(ROTATION, (_row(books, stand, over) for stand, over, _last in stood)),
        months_strip(stays, years, ident=f"months-{ground.id}", title=title),
        _days(stays, years),
    )


def _row(books: Books, stand: Stand, over: dt.date | None) -> tuple[str, ...]:
    ends = books.told.by_stand["ends"].get(stand.id, ())
    families = dict.fromkeys(line.family for line in stand.lines if line.family)
    return (
        day(stand.sown_on),
        day(over) or _now("stands"),
        stand.name,
        ", ".join(families),
        label(Purpose(stand.purpose)),
        ", ".join(dict.fromkeys(label(Residue(end.residue)) for end in ends)),
    )


def _days(stays: list[Stay], years: Span) -> str:
    """How many days a cover and a cash crop stood, each day counted once."""
    counts = {
        is_cash: len(
            {
                ordinal
                for stay in stays
                if stay.is_cash is is_cash
                for ordinal in range(
                    max(stay.first, years.first).toordinal(),
                    min(stay.last, years.last).toordinal() + 1,
                )
            }
        )
        for is_cash in (False, True)
    }
    told = {"cover": counts[False], "cash": counts[True], "all": f"{years.days:,}"}
    return (
        _now("Of %(all)s days a cover stood on %(cover)s and a cash crop on %(cash)s.")
        % told
    )


def _over(books: Books, stand: Stand) -> dt.date | None:
    ends = books.told.by_stand["ends"].get(stand.id, ())
    return max((end.on for end in ends if end.over), default=None)


def _years(books: Books) -> Span:
    last = books.told.season.last
    return Span(add_months(last, -MONTHS_BACK) + dt.timedelta(days=1), last)


def _put(books: Books, put: Put) -> tuple[str, ...]:
    """The cells of an application without its field, and with its rate."""
    told = put_cells(books, put)
    rate = books.spread(put.amount, put.measure, put.area_m2)
    return (*told[:1], *told[2:7], rate, *told[7:])


GROUPS: Mapping[str, Callable[[Books], tuple[Group, ...]]] = {
    "rotation": rotation,
    "substances": substances,
}
