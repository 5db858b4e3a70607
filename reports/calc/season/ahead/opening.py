"""What the windows of one stand are reckoned from."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass

from reports.calc.season.ahead.stages import Stood
from reports.calc.season.makeup import Makeups
from reports.calc.shapes.ahead import KillOdds
from reports.calc.shapes.ledger import Figure, KindFacts
from reports.calc.shapes.season import StageName


@dataclass(slots=True)
class Opening:
    """What the windows of one stand are reckoned from."""

    stand: Stood
    kill: KillOdds | None
    assumptions: Mapping[str, float]
    makeups: Makeups

    @property
    def kinds(self) -> tuple[KindFacts, ...]:
        """Return the kinds of the stand."""
        return tuple(line.kind for line in self.stand.planting.lines)

    def figure(self, attribute: str) -> Figure | None:
        """Return the figure of the first kind that has one."""
        rows = (kind.best(attribute) for kind in self.kinds)
        return next((row for row in rows if row is not None), None)

    def on(self, name: StageName) -> dt.date | None:
        """Return the day of a stage."""
        return self.stand.row(name).on
