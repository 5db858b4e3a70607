"""What the rules are told of the tables."""

import datetime as dt

import pytest

from farm.writing import void
from reports.calc.rules import findings
from reports.calc.shapes.basics import Span
from reports.calc.shapes.rules import Matter, RuleSet
from reports.ledger.dossier import dossier
from reports.ledger.ruling import rules_of
from tests.factories import (
    CertifierNumberFactory,
    ObservationFactory,
    PlantingFactory,
    RulesFollowedFactory,
    TerminationFactory,
)

pytestmark = pytest.mark.django_db
SEASON = Span(dt.date(2026, 1, 1), dt.date(2026, 12, 31))
NOW = dt.datetime(2026, 6, 1, tzinfo=dt.UTC)


def test_a_cover_that_stood_until_the_crop_was_up_is_found(world):
    farm = world.farm
    rye = PlantingFactory(farm=farm, sown_on=dt.date(2026, 3, 20), purpose="cover")
    told = {"sown_on": dt.date(2026, 5, 20), "purpose": "cash"}
    millet = PlantingFactory(farm=farm, field=rye.field, **told)
    end = {"outcome": "ended", "ended_on": dt.date(2026, 5, 24)}
    TerminationFactory(farm=farm, planting=rye, **end)
    RulesFollowedFactory(farm=farm, which=RuleSet.INSURANCE)
    number = {"key": "insurance.termination-day.zone", "value": 4}
    CertifierNumberFactory(farm=farm, **number)
    assert Matter.ENDED_LATE not in matters(farm)
    up = {"seen": "emerged", "seen_on": dt.date(2026, 5, 24)}
    seen = ObservationFactory(farm=farm, planting=millet, **up)
    assert Matter.ENDED_LATE in matters(farm)
    void(seen, by=world.owner, now=NOW, reason="It was a weed.")
    assert Matter.ENDED_LATE not in matters(farm)


def matters(farm):
    books = dossier(farm, SEASON, today=SEASON.last)
    return {one.found.matter for one in findings(books, rules_of(farm, SEASON))}
