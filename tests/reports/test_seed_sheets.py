"""Sowing sheets, labels and calibration, through the pages."""

import datetime as dt
import io
import re

import pytest
from django.urls import reverse
from django.utils import timezone
from pypdf import PdfReader

from farm.units import KG_PER_LB, M2_PER_ACRE
from records.models import Calibration, Planting, SeedDressing, SeedLot
from reports.calc.shapes.ledger import Method
from reports.ledger.settings import latest, settings_of
from tests.factories import (
    CalibrationFactory,
    EquipmentFactory,
    FieldFactory,
    InputProductFactory,
    KindFigureFactory,
    PlantingFactory,
    SeedDressingFactory,
    SeedLotFactory,
)

pytestmark = pytest.mark.django_db


@pytest.fixture
def today():
    return timezone.localdate()


@pytest.fixture
def vetch(world, today):
    """Two acres of our kind, drilled in three days at 50 lb/ac, with a lot for it."""
    kind = world.ours.kind
    kind.group = "legume"
    kind.save()
    KindFigureFactory(kind=kind, fifty_pounds_drilled=True)
    field = FieldFactory(farm=world.farm, name="Creek side", area_m2=2 * M2_PER_ACRE)
    PlantingFactory(
        farm=world.farm,
        written_by=world.owner,
        field=field,
        area_m2=field.area_m2,
        method="drilled",
        sown_on=None,
        planned_on=today + dt.timedelta(3),
        line__kind=kind,
        line__lot=None,
        line__seed_kg=None,
    )
    return kind


def asked(world, client, name, **told):
    return client.get(reverse(f"reports:{name}", args=[world.farm.slug]), told)


def test_the_sheet_names_field_lot_weight_fills_and_setting(
    world, as_person, vetch, today
):
    lot = {"purity_share": 1.0, "germination_share": 1.0, "tested_on": today}
    SeedLotFactory(
        farm=world.farm, written_by=world.owner, kind=vetch, lot_number="HV-9", **lot
    )
    CalibrationFactory(
        farm=world.farm, written_by=world.owner, kind=vetch, setting="gate 22"
    )
    told = {"overage": "0", "hopper_kg": "60 lb"}
    answer = asked(world, as_person(world.crew), "sowing-sheet", **told)
    text = answer.content.decode()
    # 2 ac × 50 lb/ac, less what a day's age of the test takes.
    assert "Creek side" in text
    assert re.search(r"HV-9: 100\s+lb \(2 fills, 50\s+lb\)", text)
    assert "gate 22" in text
    assert "inoculate" in text


def test_what_no_lot_covers_is_said_to_be_short(world, owner_client, vetch):
    text = asked(world, owner_client, "sowing-sheet", overage="0").content.decode()
    assert re.search(r"short of 100\s+lb", text)


def inoculated(world, vetch, until):
    told = {"farm": world.farm, "written_by": world.owner}
    peat = InputProductFactory(**told, name="Pea peat", type="inoculant")
    dose = {"dose_share": 5 / 800, "good_until": until}
    SeedDressingFactory(**told, kind=vetch, product=peat, **dose)


def test_inoculant_is_weighed_by_its_label_and_its_month_is_watched(
    world, owner_client, vetch, today
):
    lot = {"purity_share": 1.0, "germination_share": 1.0, "tested_on": today}
    SeedLotFactory(farm=world.farm, written_by=world.owner, kind=vetch, **lot)
    assert SeedDressing.objects.filter(product__type="inoculant").count() == 0
    bare = asked(world, owner_client, "seed-order").content.decode()
    assert "no dose of an inoculant is written down" in bare
    inoculated(world, vetch, today - dt.timedelta(60))
    text = asked(world, owner_client, "sowing-sheet", overage="0").content.decode()
    # 100 lb at 5 oz to 50 lb are ten ounces.
    assert re.search(r"10\s+oz of Pea peat \(5\s+oz/50\s+lb\)", text)
    assert "past its month" in text
    order = asked(world, owner_client, "seed-order", overage="0").content.decode()
    assert "over by the sowing" in order
    assert "no dose of an inoculant" not in order
    much = {"area_m2": "2 ac", "method": "drilled", "on": today.isoformat()}
    much |= {"told_by": "rate", "overage": "0", "lot0": SeedLot.objects.latest("pk").pk}
    assert re.search(
        r"10\s+oz", asked(world, owner_client, "how-much", **much).content.decode()
    )


def test_a_broadcast_sowing_is_not_shown_the_setting_of_a_drill(world, today):
    told = {"farm": world.farm, "written_by": world.owner}
    spreader = EquipmentFactory(**told, part="spreader")
    CalibrationFactory(**told, equipment=spreader, kind=world.ours.kind, setting="5")
    found = {
        method: latest(settings_of(world.farm), world.ours.kind.slug, today, method)
        for method in (Method.DRILLED, Method.BROADCAST)
    }
    assert found[Method.DRILLED].part == "drill"
    assert found[Method.BROADCAST].setting == "5"


def test_the_rate_really_sown_stands_beside_the_plan_with_what_it_missed(
    world, owner_client, vetch, today
):
    lot = SeedLotFactory(farm=world.farm, written_by=world.owner, kind=vetch)
    planting = Planting.objects.get(field__name="Creek side")
    planting.sown_on = today
    planting.save()
    planting.lines.update(lot=lot, seed_kg=100 * KG_PER_LB)
    text = page_of_balance(world, owner_client, today.year)
    # 100 lb on 2 ac at 98 % × 85 % are 41.65 lb/ac alive, of 50 planned.
    assert re.search(r"41\.7\s+lb/ac", text)
    assert "\N{MINUS SIGN}17" in text
    assert "Rates really sown" in text


def page_of_balance(world, client, year):
    url = reverse("reports:seed-balance", args=[world.farm.slug, year])
    return client.get(url).content.decode()


def test_sheets_and_labels_print_with_a_portion_each(world, owner_client, vetch, today):
    lot = {"lot_number": "HV-9", "tested_on": today}
    SeedLotFactory(farm=world.farm, written_by=world.owner, kind=vetch, **lot)
    for name in ("sowing-sheet-pdf", "labels-pdf"):
        printed = asked(world, owner_client, name, overage="0").content
        text = "".join(
            page.extract_text() for page in PdfReader(io.BytesIO(printed)).pages
        )
        assert "Creek side" in text
        assert "HV-9" in text


def test_days_that_make_no_sense_are_refused_in_place(world, owner_client):
    told = {"first": "2026-05-02", "last": "2026-05-01"}
    answer = asked(world, owner_client, "sowing-sheet", **told).content.decode()
    assert "two years after it" in answer
    assert asked(world, owner_client, "labels-pdf", **told).status_code == 200


def test_the_catch_of_eight_rows_over_twenty_feet_is_26_grams(world, owner_client):
    """SoilHealthLabs, How to Calibrate a Grain Drill, part five, 25 lb/ac."""
    told = {"rate_kg_m2": "25 lb/ac", "row_width_m": "7.5 in", "rows": "8"}
    answer = asked(world, owner_client, "calibration", **told, distance_m="20 ft")
    assert "(26 g)" in answer.content.decode()


def test_a_twentieth_of_an_acre_is_145_feet_behind_24_rows(world, owner_client):
    """Southeast Farm Press: 24 rows of 7.5 in, 145.2 ft."""
    told = {"rate_kg_m2": "90 lb/ac", "row_width_m": "7.5 in", "rows": "24"}
    answer = asked(world, owner_client, "calibration", **told, area_m2="0.05 ac")
    text = answer.content.decode()
    assert re.search(r"14[56](\.\d)?\s+ft", text)
    assert re.search(r"4\.5\s+lb", text)


@pytest.mark.parametrize(
    "told", [{"rate_kg_m2": "25 lb/ac"}, {"rate_kg_m2": "0 lb/ac", "area_m2": "1 ac"}]
)
def test_a_catch_without_ground_or_rate_is_refused_in_place(world, owner_client, told):
    answer = asked(world, owner_client, "calibration", **told)
    assert answer.context["form"].errors
    assert answer.context["catch"] is None


def test_a_setting_is_kept_with_the_machine(world, owner_client, today):
    machine = world.ours["equipment"]
    url = reverse("records:new", args=[world.farm.slug, "calibrations"])
    sent = {
        "equipment": machine.pk,
        "kind": world.ours.kind.pk,
        "calibrated_on": today.isoformat(),
        "setting": "gate 40",
        "caught_kg": "2 lb",
        "area_m2": "2000 sq ft",
        "wanted_kg_m2": "40 lb/ac",
    }
    assert owner_client.post(url, sent).status_code == 302
    machine.refresh_from_db()
    assert machine.setting == "gate 40"
    text = asked(world, owner_client, "calibration").content.decode()
    # 2 lb on 2,000 sq ft are 43.56 lb/ac, 8.9 % above.
    assert re.search(r"43\.6\s+lb/ac", text)
    assert re.search(r"\+9\s+%", text)


@pytest.mark.parametrize(
    "over",
    [
        {"distance_m": "", "area_m2": ""},
        {"distance_m": "20 ft", "area_m2": "1 ac"},
        {"distance_m": "20 ft", "rows": "", "area_m2": ""},
        {"caught_kg": "0 lb", "area_m2": "1 ac"},
        {"distance_m": "0 ft"},
        {"distance_m": "", "area_m2": "0 ac"},
    ],
)
def test_a_calibration_over_no_known_ground_is_refused(
    world, owner_client, today, over
):
    url = reverse("records:new", args=[world.farm.slug, "calibrations"])
    before = Calibration.objects.count()
    sent = {
        "equipment": world.ours["equipment"].pk,
        "kind": world.ours.kind.pk,
        "calibrated_on": today.isoformat(),
        "setting": "40",
        "caught_kg": f"{KG_PER_LB} kg",
        **over,
    }
    assert owner_client.post(url, sent).status_code == 200
    assert Calibration.objects.count() == before


def test_a_planting_is_written_down_as_sown_just_as_the_sheet_tells_it(
    world, as_person, vetch, today
):
    client, told = as_person(world.crew), {"farm": world.farm, "kind": vetch}
    planting = Planting.objects.get(field__name="Creek side")
    Planting.objects.filter(pk=planting.pk).update(next_crop="garlic")
    bare = asked(world, client, "sowing-sheet").content.decode()
    assert "Write down Creek side as sown" not in bare
    full = {"purity_share": 1.0, "germination_share": 1.0, "tested_on": today}
    for number, kg in (("A-1", 30 * KG_PER_LB), ("A-2", 200 * KG_PER_LB)):
        SeedLotFactory(
            **told, **full, written_by=world.owner, lot_number=number, received_kg=kg
        )
    SeedLot.objects.filter(kind=vetch, lot_number__startswith="A").update(
        received_on=today
    )
    text = asked(world, client, "sowing-sheet", overage="0").content.decode()
    assert "Write down Creek side as sown like this" in text
    boxes = dict(re.findall(r'type="hidden" name="([^"]+)" value="([^"]*)"', text))
    boxes.pop("csrfmiddlewaretoken")
    url = reverse("records:edit", args=[world.farm.slug, "plantings", planting.pk])
    assert client.post(url, boxes).status_code == 302
    planting.refresh_from_db()
    assert (planting.sown_on, planting.next_crop) == (today, "garlic")
    lines = planting.lines.order_by("lot__lot_number")
    assert [line.lot.lot_number for line in lines] == ["A-1", "A-2"]
    assert sum(line.seed_kg for line in lines) == pytest.approx(
        100 * KG_PER_LB, rel=1e-3
    )
    assert sum(line.share for line in lines) == pytest.approx(1)
