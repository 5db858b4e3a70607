"""Figures told for a weight of seed, and the one money of a farm."""

import pytest
from django.core.exceptions import ValidationError
from django.urls import reverse

from farm.models import Farm
from farm.units import KG_PER_LB, System
from records.forms.by_weight import CountByWeightField, DoseField
from records.forms.money import MoneyField


@pytest.mark.parametrize(
    ("typed", "per_kg"),
    [("3/lb", 3 / KG_PER_LB), ("9 per 500 g", 18), ("3", 3 / KG_PER_LB), ("4/kg", 4)],
)
def test_weeds_are_read_by_number_in_a_weight_of_seed(typed, per_kg):
    assert CountByWeightField().clean(typed) == pytest.approx(per_kg)


@pytest.mark.parametrize("typed", ["some", "0/lb", "-3/lb", "3/acre", "1e99/lb"])
def test_weeds_without_a_sound_number_are_refused(typed):
    with pytest.raises(ValidationError):
        CountByWeightField().clean(typed)


@pytest.mark.parametrize(
    ("typed", "share"),
    [("5 oz/50 lb", 5 / 800), ("4 g/kg", 0.004), ("2.5 oz per 50 lb", 2.5 / 800)],
)
def test_a_dose_is_product_for_a_weight_of_seed(typed, share):
    assert DoseField().clean(typed) == pytest.approx(share)
    assert DoseField.written(share, System.US).endswith(" oz/50 lb")


@pytest.mark.parametrize("typed", ["5 oz", "5/50 lb", "2 kg/kg", "0 oz/lb", "5 oz/ac"])
def test_a_dose_that_no_label_can_mean_is_refused(typed):
    with pytest.raises(ValidationError):
        DoseField(system=System.METRIC).clean(typed if "/" in typed else "x")


def test_a_price_in_another_money_is_refused_and_not_converted():
    field = MoneyField()
    field.told_in("USD")
    assert field.clean("48.50") == field.clean("48.50 USD") == 48.5
    for typed in ("EUR 48.50", "€48.50", "48.50 CAD"):
        with pytest.raises(ValidationError, match="Every price of this farm is in USD"):
            field.clean(typed)


@pytest.mark.django_db
def test_the_money_is_set_by_the_units_and_changed_only_when_told_twice(
    world, owner_client
):
    url = reverse("farm-edit", args=[world.farm.slug])
    form = owner_client.get(url).context["form"]
    sent = {
        name: form[name].value()
        for name in form.fields
        if form[name].value() not in (None, False)
    }
    assert sent["currency"] == "USD"
    for wrong, said in (("usd", "Three capital letters"), ("CAD", "in USD. Tick this")):
        answer = owner_client.post(url, sent | {"currency": wrong})
        assert said in answer.content.decode()
    assert Farm.objects.get(pk=world.farm.pk).currency == "USD"
    told = sent | {"currency": "CAD", "prices_are_in_it": "on"}
    assert owner_client.post(url, told).status_code == 302
    # The units change; the money the prices are in does not.
    assert owner_client.post(
        url, sent | {"units": "metric", "currency": ""}
    ).status_code
    assert Farm.objects.get(pk=world.farm.pk).currency == "CAD"
