"""What cannot be: a sentence beside the box, what was typed kept, nothing saved."""

import datetime as dt
import json

import pytest
from django.urls import reverse
from django.utils.html import escape

from farm.models import Change
from records.nouns import BY_SLUG
from tests.factories import KindFactory, SeedLotFactory
from tests.records.typed import rows, typed

TOMORROW = str(dt.datetime.now(dt.UTC).date() + dt.timedelta(days=2))
# Stands for the whole form, where no one box is to blame.
FORM = "__all__"


def polygon(*corners):
    return json.dumps({"type": "Polygon", "coordinates": [corners]})


WEST, EAST, SOUTH, NORTH = -76.651, -76.649, 42.729, 42.731
BOW_TIE = polygon(
    [WEST, SOUTH], [EAST, NORTH], [EAST, SOUTH], [WEST, NORTH], [WEST, SOUTH]
)
OPEN = polygon([WEST, SOUTH], [EAST, SOUTH], [EAST, NORTH], [WEST, NORTH])
SWAPPED = polygon([SOUTH, WEST], [SOUTH, EAST], [NORTH, EAST], [SOUTH, WEST])

CASES = [
    # Land
    ("fields", {"area": "0 ac"}, "area", "more than nothing"),
    ("fields", {"area": "-2 ac"}, "area", "nothing"),
    ("fields", {"area": "5 parsecs"}, "area", "parsecs"),
    ("fields", {"area": "a few acres"}, "area", ""),
    ("fields", {"area": "300 ft"}, "area", ""),
    ("fields", {"area": "9" * 70 + " ac"}, "area", ""),
    ("fields", {"area": ""}, "area", "Give an area"),
    ("fields", {"area": "", "length_m": "30 ft"}, "area", "Give an area"),
    ("fields", {"outline_text": BOW_TIE}, "outline_text", "crosses itself near"),
    ("fields", {"outline_text": OPEN}, "outline_text", "closed"),
    ("fields", {"outline_text": SWAPPED}, "outline_text", "swapped"),
    ("fields", {"outline_text": "{north"}, "outline_text", "Look at line 1"),
    ("fields", {"name": ""}, "name", "required"),
    ("fields", {"name": "North"}, "name", "Another field has this name."),
    ("fields", {"status_since": TOMORROW}, "status_since", "still to come"),
    ("fields", {"kind": "castle"}, "kind", "castle"),
    ("land-statements", {"last": "2020-12-31"}, "last", "ends before it begins"),
    ("land-statements", {"signed_on": TOMORROW}, "signed_on", "still to come"),
    ("edges", {"buffer_m": "-3 ft"}, "buffer_m", "nothing"),
    # Seed
    ("seed-lots", {"received_kg": "0 lb"}, "received_kg", "more than nothing"),
    ("seed-lots", {"received_kg": "50 ac"}, "received_kg", ""),
    ("seed-lots", {"purity_share": "101"}, "purity_share", "100"),
    ("seed-lots", {"purity_share": "-1"}, "purity_share", "0"),
    ("seed-lots", {"hard_share": "20"}, "germination_share", "pass 100 %"),
    ("seed-lots", {"germination_share": "0"}, "germination_share", "No live seed"),
    ("seed-offers", {"germination_share": "0"}, "germination_share", "No live seed"),
    ("seed-offers", {"stock_kg": "-5 lb"}, "stock_kg", "more than nothing"),
    ("seed-dressings", {"dose_share": "0 oz/50 lb"}, "dose_share", "Write a weight"),
    ("seed-dressings", {"packet_kg": "0 oz"}, "packet_kg", "more than nothing"),
    ("stock-counts", {"mass_kg": "-1 lb"}, "mass_kg", "less than nothing"),
    ("seed-lots", {"status": "treated"}, "treatment", "treated with"),
    ("seed-lots", {"tested_on": TOMORROW}, "tested_on", "still to come"),
    ("seed-lots", {"received_on": "2026-02-30"}, "received_on", "valid date"),
    ("seed-lots", {"received_on": "0026-02-03"}, "received_on", "too far back"),
    ("seed-lots", {"lot_number": "BW-26"}, "lot_number", "already written down"),
    ("seed-searches", {"asked-0-asked_on": TOMORROW}, "asked-0-asked_on", "to come"),
    ("seed-searches", {"asked-0-answer": ""}, "asked-0-answer", "name, day and answer"),
    # Plantings
    ("plantings", {"area_m2": "0"}, "area_m2", "more than nothing"),
    ("plantings", {"area_m2": "2 ac"}, "area_m2", "more than the field has"),
    ("plantings", {"sown_on": TOMORROW}, "sown_on", "still to come"),
    ("plantings", {"sown_on": ""}, "sown_on", "Give the day"),
    ("plantings", {"sown_on": "tomorrow"}, "sown_on", "valid date"),
    ("plantings", {"next_crop_on": "2026-07-01"}, "next_crop_on", "before this one"),
    ("plantings", {"depth_m": "3 ft"}, "depth_m", "between 0 and 50 cm"),
    ("plantings", {"lines-0-seed_kg": "500 lb"}, "lines-0-seed_kg", "not hold this"),
    ("plantings", {"lines-0-seed_kg": "-5 lb"}, "lines-0-seed_kg", "nothing"),
    ("plantings", {"lines-0-seed_kg": "0 lb"}, "lines-0-seed_kg", "nothing"),
    ("plantings", {"lines-0-seed_kg": "30 mm"}, "lines-0-seed_kg", ""),
    ("plantings", {"lines-0-share": "60"}, FORM, "add up to 60 %"),
    ("plantings", {"lines-0-share": "160"}, "lines-0-share", "100"),
    ("plantings", {"method": "self_sown"}, "lines-0-lot", "no seed of a lot"),
    ("plantings", {"sown_on": "2026-03-01"}, "lines-0-lot", "received after"),
    ("plantings", {"lines-0-kind": "", "lines-0-lot": ""}, "lines-0-kind", "which"),
    ("plantings", rows("lines"), FORM, "Say what was sown"),
    # What was seen, cut and ended
    ("observations", {"seen_on": "2026-05-31"}, "seen_on", "not yet sown"),
    ("observations", {"seen_on": TOMORROW}, "seen_on", "still to come"),
    ("observations", {"bloom_share": ""}, "bloom_share", "how much is in bloom"),
    ("observations", {"bloom_share": "140"}, "bloom_share", "100"),
    ("observations", {"weeds": "9"}, "weeds", "9"),
    ("biomass-samples", {"dry_share": "0"}, "dry_share", "more than nothing"),
    ("biomass-samples", {"cut_on": "2026-05-01"}, "cut_on", "not yet sown"),
    ("biomass-samples", {"frames-0-wet_kg": ""}, "frames-0-wet_kg", "its weight"),
    ("biomass-samples", {"frames-0-area_m2": "0 sq m"}, "frames-0-area_m2", "nothing"),
    ("biomass-samples", rows("frames"), FORM, "at least one frame"),
    ("terminations", {"ended_on": "2026-05-31"}, "ended_on", "before it was sown"),
    ("terminations", {"ended_on": TOMORROW}, "ended_on", "still to come"),
    ("terminations", {"area_m2": "3 ac"}, "area_m2", "Not so much"),
    (
        "terminations",
        {"residue": "worked_in", "worked_in_on": "2026-07-01"},
        "worked_in_on",
        "before it ended",
    ),
    ("terminations", {"method": "tilled_in"}, "residue", "means worked in"),
    (
        "terminations",
        {"method": "tarped", "outcome": "regrows"},
        "outcome",
        "does not grow back",
    ),
    (
        "terminations",
        {"tarp_removed_on": "2026-07-01"},
        "tarp_removed_on",
        "came off before",
    ),
    # Inputs
    ("input-products", {"nitrogen_percent": "140"}, "nitrogen_percent", "100"),
    ("input-products", {"reentry_hours": "-1"}, "reentry_hours", "0"),
    ("applications", {"amount": "0 lb"}, "amount", "nothing"),
    ("input-lots", {"amount": "0 lb"}, "amount", "nothing"),
    ("input-lots", {"amount": "some"}, "amount", ""),
    ("input-lots", {"product": ""}, "product", "required"),
    ("applications", {"amount": "12"}, "amount", ""),
    ("applications", {"amount": "5 parsecs"}, "amount", "parsecs"),
    ("applications", {"area_m2": "3 ac"}, "area_m2", "more than the field has"),
    ("applications", {"worked_in_on": "2026-05-01"}, "worked_in_on", "before it was"),
    ("applications", {"product": ""}, "product", "required"),
    (
        "compost-batches",
        {"finished_on": "2026-04-01"},
        "finished_on",
        "before it was started",
    ),
    ("compost-batches", {"days-0-temp_c": "300 F"}, "days-0-temp_c", "cold or hot"),
    ("compost-batches", {"days-0-day": "2026-04-01"}, "days-0-day", "not yet started"),
    ("grazings", {"out_on": "2026-08-01"}, "out_on", "went out before they came in"),
    ("grazings", {"head": "-4"}, "head", "0"),
    ("irrigations", {"water_mm": "0 in"}, "water_mm", "between 0 and 1000 mm"),
    ("irrigations", {"water_mm": "-1 in"}, "water_mm", "nothing"),
    ("mulch-films-and-tarps", {"area_m2": "3 ac"}, "area_m2", "more than the field"),
    ("mulch-films-and-tarps", {"area_m2": "0"}, "area_m2", "more than nothing"),
    ("mulch-films-and-tarps", {"material": "other"}, "material_words", "in words"),
    ("mulch-films-and-tarps", {"material": "glass"}, "material", "glass"),
    ("mulch-films-and-tarps", {"laid_on": ""}, "laid_on", "required"),
    ("mulch-films-and-tarps", {"laid_on": TOMORROW}, "laid_on", "still to come"),
    (
        "mulch-films-and-tarps",
        {"taken_off_on": "2026-06-01"},
        "taken_off_on",
        "before it was laid",
    ),
    ("mulch-films-and-tarps", {"taken_off_on": ""}, "taken_off_on", "Give the day"),
    ("soil-tests", {"readings-0-unit": ""}, "readings-0-unit", "its unit"),
    ("soil-tests", rows("readings"), FORM, "at least one value"),
    # What left the field
    ("harvest-lots", {"mass_kg": "0 lb"}, "mass_kg", "more than nothing"),
    ("harvest-lots", {"harvested_on": TOMORROW}, "harvested_on", "still to come"),
    ("sales", {"mass_kg": "2000 lb"}, "mass_kg", "not hold this much"),
    ("sales", {"sold_on": "2026-09-01"}, "sold_on", "not yet harvested"),
    ("storages", {"stored_on": "2026-09-01"}, "stored_on", "not yet harvested"),
    ("stock-counts", {"harvest_lot": ""}, FORM, "Count one thing"),
]


def named(case):
    noun, over, box, _ = case
    told = ", ".join(f"{key}={str(value)[:20]}" for key, value in over.items())
    return f"{noun}: {told or box}"


def sent_and_refused(client, world, noun, sent):
    """Post a form that must be refused; hand back the form and its page."""
    kept = BY_SLUG[noun].model.objects.count(), Change.objects.count()
    url = reverse("records:new", args=[world.farm.slug, noun])
    answer = client.post(url, sent)
    assert answer.status_code == 200, "it was written down"
    assert kept == (BY_SLUG[noun].model.objects.count(), Change.objects.count())
    return answer.context["form"], answer.content.decode()


def messages(form, box):
    """What is said beside a box: of the form, of one of its rows, or over it all."""
    if box == FORM:
        return [str(error) for error in form.non_field_errors()]
    if box in form.fields:
        return form.errors.get(box, [])
    prefix, place, part = box.rsplit("-", 2)
    (told,) = [rows for rows in form.formsets if rows.prefix == prefix]
    return told.forms[int(place)].errors.get(part, [])


@pytest.mark.parametrize("case", CASES, ids=named)
def test_what_cannot_be_is_refused_beside_what_was_typed(case, world, owner_client):
    noun, over, box, words = case
    sent = {**typed(noun, world.ours), **over}
    form, page = sent_and_refused(owner_client, world, noun, sent)
    said = messages(form, box)
    assert any(words in message for message in said), (said, form.errors)
    assert all(escape(message) in page for message in said)
    lost = {
        name: value
        for name, value in sent.items()
        if not kept_in_its_box(form, name, value, page)
    }
    assert lost == {}


def kept_in_its_box(form, name, value, page):
    """Whether a box still holds what was typed into it."""
    sets = getattr(form, "formsets", [])
    parts = [form, *(row for rows in sets for row in rows.forms)]
    boxes = {box.html_name: box for part in parts for box in part}
    if name not in boxes or value in {"", "on"}:
        return True
    return str(boxes[name].value()) == str(value) and escape(value) in page


def test_a_mix_says_how_far_its_shares_are_from_the_whole(world, owner_client):
    pea = KindFactory(name="Field pea")
    mix = rows(
        "lines",
        {"kind": world.ours.kind.pk, "share": "60"},
        {"kind": pea.pk, "share": "60"},
    )
    sent = typed("plantings", world.ours, **mix)
    form, page = sent_and_refused(owner_client, world, "plantings", sent)
    assert "The shares of the mix add up to 120 %, not 100 %." in page
    assert messages(form, FORM)


def test_each_kind_of_a_mix_needs_its_share(world, owner_client):
    mix = rows(
        "lines",
        {"kind": world.ours.kind.pk, "share": "60"},
        {"kind": KindFactory().pk, "share": ""},
    )
    sent = typed("plantings", world.ours, **mix)
    form, _ = sent_and_refused(owner_client, world, "plantings", sent)
    assert "its share" in messages(form, "lines-1-share")[0]


def test_one_kind_and_lot_cannot_stand_in_two_lines(world, owner_client):
    line = {"kind": world.ours.kind.pk, "lot": world.ours["seed-lots"].pk, "share": 50}
    sent = typed("plantings", world.ours, **rows("lines", line, line))
    form, _ = sent_and_refused(owner_client, world, "plantings", sent)
    assert messages(form, "lines-1-lot") == ["This seed stands twice: add it up."]


def test_two_lines_cannot_together_take_more_than_the_lot_holds(world, owner_client):
    lot, kind = world.ours["seed-lots"], world.ours.kind
    other = SeedLotFactory(farm=world.farm, kind=kind, received_kg=5)
    mix = rows(
        "lines",
        {"kind": kind.pk, "lot": lot.pk, "seed_kg": "70 kg", "share": 50},
        {"kind": kind.pk, "lot": other.pk, "seed_kg": "6 kg", "share": 50},
    )
    sent = typed("plantings", world.ours, **mix)
    form, _ = sent_and_refused(owner_client, world, "plantings", sent)
    assert messages(form, "lines-0-seed_kg") == []
    assert "not hold this much" in messages(form, "lines-1-seed_kg")[0]


def test_a_lot_of_another_kind_is_refused(world, owner_client):
    line = {"kind": KindFactory().pk, "lot": world.ours["seed-lots"].pk}
    sent = typed("plantings", world.ours, **rows("lines", line))
    form, _ = sent_and_refused(owner_client, world, "plantings", sent)
    assert "another kind" in messages(form, "lines-0-lot")[0]


def test_a_lot_of_another_farm_is_refused_by_name(world, owner_client):
    line = {"lot": world.theirs["seed-lots"].pk}
    sent = typed("plantings", world.ours, **rows("lines", line))
    form, _ = sent_and_refused(owner_client, world, "plantings", sent)
    assert "not one of the farm’s" in messages(form, "lines-0-lot")[0]


@pytest.mark.parametrize("until", ["", "2026-12-31"])
def test_rules_cannot_be_followed_twice_on_the_same_days(until, world, owner_client):
    """The world follows those on workers from 2024 on."""
    told = {"which": "workers", "since": "2025-03-01", "until": until}
    sent = typed("rules-followed", world.ours, **told)
    form, _ = sent_and_refused(owner_client, world, "rules-followed", sent)
    assert "on some of these days already" in messages(form, "since")[0]


def test_rules_may_be_taken_up_again_after_they_were_left(world, owner_client):
    row = world.ours["rules-followed"]
    type(row).objects.filter(pk=row.pk).update(until=dt.date(2024, 12, 31))
    told = {"which": "workers", "since": "2025-01-01", "until": ""}
    at = reverse("records:new", args=[world.farm.slug, "rules-followed"])
    owner_client.post(at, typed("rules-followed", world.ours, **told))
    assert type(row).objects.filter(farm=world.farm).count() == 2


def test_a_day_of_compost_cannot_stand_twice(world, owner_client):
    day = {"day": "2026-04-14", "temp_c": "60 C"}
    sent = typed("compost-batches", world.ours, **rows("days", day, day))
    form, _ = sent_and_refused(owner_client, world, "compost-batches", sent)
    assert "twice" in messages(form, "days-1-day")[0]


@pytest.mark.parametrize(
    "broken",
    [
        {"lines-TOTAL_FORMS": "1000"},
        {"lines-TOTAL_FORMS": "many"},
        {"lines-TOTAL_FORMS": ""},
        {"lines-0-kind": "buckwheat"},
        {"lines-0-lot": "99999999999999999999999"},
        {"field": "-1"},
        {"client_key": "not a key"},
        {"notes": "x" * 4001},
        {"notes": "nothing\0follows"},
    ],
    ids=str,
)
def test_a_form_that_no_page_of_ours_sends_breaks_nothing(broken, world, owner_client):
    sent = typed("plantings", world.ours, **broken)
    sent_and_refused(owner_client, world, "plantings", sent)


@pytest.mark.parametrize(
    ("noun", "over", "box", "words"),
    [
        ("own-figures", {"low": "3"}, "high", "below the first"),
        ("own-figures", {"reason": ""}, "reason", "required"),
        ("own-assumptions", {"value": "99"}, "value", "outside the range"),
        ("stations", {"latitude": "north"}, "latitude", "number"),
        ("seed-lots", {"received_kg": "10 kg"}, "received_kg", "already sown"),
        ("plantings", {"sown_on": "2026-08-01"}, "sown_on", "ended before this day"),
        ("fields", {"parent": "itself"}, "parent", "valid choice"),
    ],
)
def test_a_record_cannot_be_mended_into_what_cannot_be(
    noun, over, box, words, world, owner_client
):
    row = world.ours[noun]
    over = {
        name: row.pk if value == "itself" else value for name, value in over.items()
    }
    sent = {**typed(noun, world.ours), **over}
    url = reverse("records:edit", args=[world.farm.slug, noun, row.pk])
    answer = owner_client.post(url, sent)
    assert answer.status_code == 200
    assert words in messages(answer.context["form"], box)[0]
    assert not Change.objects.filter(object_id=row.pk, verb="changed").exists()


def test_what_a_person_types_is_never_read_as_part_of_the_page(world, owner_client):
    sent = typed("trainings", world.ours, person="<script>alert(1)</script>")
    url = reverse("records:new", args=[world.farm.slug, "trainings"])
    page = owner_client.post(url, sent, follow=True).content.decode()
    assert "<script>alert" not in page
    assert "&lt;script&gt;alert(1)" in page
