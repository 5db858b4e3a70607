"""The map: every outline with its texture and its name."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from django.utils.safestring import SafeString
from django.utils.translation import gettext as _

from farm.outlines import Ring
from farm.unit_words import measure_said
from farm.units import System, write_area
from reports.calc.shapes.season import Ground
from reports.drawings.map.boxes import Box
from reports.drawings.map.legend import FOOT, legend
from reports.drawings.map.names import LINE, SIZE, Label, beside, within
from reports.drawings.map.sheet import WIDTH, Polygons, Sheet, path
from reports.drawings.pieces import Value, frame, piece, words
from reports.drawings.textures import textures
from reports.labels import label

LONGEST_NAME = 26


@dataclass(frozen=True, slots=True)
class MapPlot:
    """A piece of land to be drawn.

    ``number`` is its row in the table beside the map; ``ground`` is what most of it
    carries, None where its parts tell of that.
    """

    number: int
    name: str
    area_m2: float
    polygons: Polygons
    ground: Ground | None


@dataclass(frozen=True, slots=True)
class _Drawn:
    plot: MapPlot
    rings: tuple[Ring, ...]


def farm_map(
    plots: Sequence[MapPlot], *, ident: str, title: str, system: System
) -> SafeString:
    """Draw land to scale, north up; ``ident`` sets this drawing apart."""
    if not plots:
        return SafeString("")
    sheet = Sheet.under(plot.polygons for plot in plots)
    # Parts lie on the field they are part of, so the larger comes first.
    drawn = [
        _Drawn(plot, sheet.rings(plot.polygons))
        for plot in sorted(plots, key=lambda plot: -plot.area_m2)
    ]
    grounds = [one for one in Ground if any(plot.ground is one for plot in plots)]
    return frame(
        textures(ident),
        *(part for one in drawn for part in _land(one, ident, system)),
        *(part for one in _names(drawn, sheet, system) for part in _written(one)),
        *legend(ident, grounds, sheet.height, scale=sheet.scale, system=system),
        ident=ident,
        width=WIDTH,
        height=sheet.height + FOOT,
        title=title,
        desc=_("North is up. The table that follows holds the same fields by number."),
    )


def _land(one: _Drawn, ident: str, system: System) -> Iterator[SafeString]:
    """The land on a clean sheet, since it may lie on a larger piece."""
    around, ground = path(one.rings), one.plot.ground
    ink: dict[str, Value] = {"stroke": "currentColor", "stroke_width": 1.1}
    if ground is Ground.NOT_YET:
        ink["stroke_dasharray"] = "3 2"
    plain = ground in {None, Ground.NOT_YET}
    said = [one.plot.name, measure_said(write_area(one.plot.area_m2, system))]
    said += [label(ground)] if ground else []
    yield piece("path", d=around, class_="sheet", fill="#fff", fill_rule="evenodd")
    yield piece(
        "path",
        piece("title", ", ".join(said)),
        class_=f"ground {ground.value if ground else 'parted'}",
        d=around,
        fill="none" if plain else f"url(#{ident}-{ground})",
        fill_rule="evenodd",
        stroke_linejoin="round",
        **ink,
    )


def _names(drawn: Sequence[_Drawn], sheet: Sheet, system: System) -> list[Label]:
    """A name and an area where there is room, a name, a number, or nothing."""
    found: list[Label] = []
    boxes = [Box.around(one.rings) for one in drawn]
    page = Box(0, 0, WIDTH, sheet.height)
    for place, one in reversed(list(enumerate(drawn))):
        others = boxes[:place] + boxes[place + 1 :]
        name = _short(one.plot.name)
        whole = (name, measure_said(write_area(one.plot.area_m2, system)))
        inside = [within(one.rings, lines, found) for lines in (whole, (name,))]
        outside = beside(boxes[place], whole, found, others, page)
        # The name of a field told by its parts must not lie on one of them.
        order = [outside, *inside] if one.plot.ground is None else [*inside, outside]
        order.append(within(one.rings, (str(one.plot.number),), found))
        found += [label for label in order if label is not None][:1]
    return found


def _written(name: Label) -> Iterator[SafeString]:
    yield piece(
        "rect",
        class_="sheet",
        x=name.x - name.width / 2 - 2,
        y=name.y - name.height / 2,
        width=name.width + 4,
        height=name.height,
        rx=2,
        fill="#fff",
    )
    first = name.y - LINE * (len(name.lines) - 1) / 2 + SIZE * 0.35
    for place, told in enumerate(name.lines):
        y = first + LINE * place
        yield words(told, name.x, y, size=SIZE, text_anchor="middle")


def _short(name: str) -> str:
    return name if len(name) <= LONGEST_NAME else f"{name[: LONGEST_NAME - 1]}…"
