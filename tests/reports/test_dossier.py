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
    ApplicationFactory,
    CertifierNumberFactory,
    FarmFigureFactory,
    HarvestLotFactory,
    InputProductFactory,
    KindFactory,
    ObservationFactory,
    PlantingFactory,
    RulesFollowedFactory,
    SeedLotFactory,
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


def test_noxious_weeds_are_asked_of_field_seed_until_the_tag_is_told_of(world):
    farm = world.farm
    RulesFollowedFactory(farm=farm, which=RuleSet.SEED_LAW)
    tag = {"purity_share": 0.98, "germination_share": 0.9}
    tag |= {"tested_on": dt.date(2026, 1, 1), "received_on": dt.date(2026, 3, 10)}
    vetch = SeedLotFactory(farm=farm, kind=KindFactory(use="cover"), **tag)
    carrot = SeedLotFactory(farm=farm, kind=KindFactory(use="cash"), **tag)

    def asked():
        books = dossier(farm, SEASON, today=SEASON.last)
        told = [one.found for one in findings(books, rules_of(farm, SEASON))]
        return {one.record for one in told if one.matter == Matter.TAG_NO_WEEDS}

    others = asked() - {vetch.pk}
    assert asked() == others | {vetch.pk}
    assert carrot.pk not in others
    weed = vetch.weeds.create(name="Field bindweed", count_per_kg=18.0)
    assert asked() == others
    weed.delete()
    vetch.no_noxious = True
    vetch.save()
    assert asked() == others


def test_the_books_are_read_as_far_back_as_any_number_of_a_certifier_asks(world):
    """Six years is the most that a certifier may ask of ground under perennials."""
    farm = world.farm
    farm.standard = "eu"
    farm.save()
    number = {"key": "organic_eu.land-clock.perennial_months", "low": 12, "high": 72}
    CertifierNumberFactory(farm=farm, **number, value=72)
    kind = KindFactory(farm=farm, name="Blackcurrant")
    FarmFigureFactory(farm=farm, kind=kind, attribute="perennial", low=1, high=1)
    told = {"purpose": "cash", "line__kind": kind}
    bushes = PlantingFactory(farm=farm, sown_on=dt.date(2023, 4, 1), **told)
    told = {"field": bushes.field, "planting": bushes, "status": "organic"}
    HarvestLotFactory(farm=farm, harvested_on=dt.date(2026, 7, 1), **told)
    weedkiller = InputProductFactory(farm=farm, type="pest", approval="")
    used = {"product": weedkiller, "field": bushes.field}
    put = ApplicationFactory(farm=farm, applied_on=dt.date(2020, 7, 2), **used)
    assert Matter.LAND_CUT_EARLY in matters(farm)
    put.applied_on = dt.date(2020, 7, 1)
    put.save()
    assert Matter.LAND_CUT_EARLY not in matters(farm)


def matters(farm):
    books = dossier(farm, SEASON, today=SEASON.last)
    return {one.found.matter for one in findings(books, rules_of(farm, SEASON))}
