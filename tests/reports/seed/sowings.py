"""Sowings planned, and seed offered for them."""

import datetime as dt
import re

from django.urls import reverse
from django.utils import timezone

from farm.units import KG_PER_LB, M2_PER_ACRE
from tests.factories import (
    FieldFactory,
    OfferPriceFactory,
    PlantingFactory,
    SeedOfferFactory,
    SupplierFactory,
)

BAG = 50 * KG_PER_LB


def page(world, client, name, *args):
    return client.get(reverse(f"reports:{name}", args=[world.farm.slug, *args]))


def plan(world, kind, today, days=60):
    field = FieldFactory(farm=world.farm, area_m2=2 * M2_PER_ACRE)
    return PlantingFactory(
        farm=world.farm,
        written_by=world.owner,
        field=field,
        area_m2=field.area_m2,
        method="drilled",
        sown_on=None,
        planned_on=today + dt.timedelta(days),
        line__kind=kind,
        line__lot=None,
        line__seed_kg=None,
    )


def offer(world, kind, status="organic", price=30.0, **more):
    found = SeedOfferFactory(
        farm=world.farm,
        written_by=world.owner,
        kind=kind,
        status=status,
        price=None,
        tested_on=timezone.localdate(),
        supplier=SupplierFactory(farm=world.farm, written_by=world.owner),
        **more,
    )
    OfferPriceFactory(offer=found, bag_kg=BAG, price=price)
    return found


def posted(answer):
    """The boxes of the first order a page proposes."""
    told = re.findall(r'type="hidden" name="([^"]+)" value="([^"]*)"', answer)
    aside = ("csrfmiddlewaretoken", "next")
    return {name: value for name, value in told if name not in aside}
