"""Every record through its pages: entered, mended, voided, and noted each time."""

import datetime as dt
import uuid

import pytest
from django import forms
from django.db import IntegrityError
from django.urls import reverse

from farm import writing
from farm.models import Change
from records.models import Termination
from records.nouns import BY_SLUG, NOUNS
from tests.records.typed import standing, typed

# Stations begin with their file, own figures with the figure they overrule.
ENTERED = [noun for noun in NOUNS if not noun.begins_at]


def every(nouns):
    return pytest.mark.parametrize("noun", nouns, ids=lambda noun: noun.slug)


def url(name, world, noun, *rest):
    return reverse(f"records:{name}", args=[world.farm.slug, noun.slug, *rest])


def changes_of(row):
    noun = row._meta.model_name
    return Change.objects.filter(noun=noun, object_id=row.pk).order_by("pk")


def newest(noun, world):
    return noun.model.objects.filter(farm=world.farm).latest("pk")


def voided(client, world, noun, row):
    at = url("void", world, noun, row.pk)
    return client.post(at, {"reason": "Written on the wrong field"})


@every(NOUNS)
def test_the_cast_has_one_of_every_record_and_what_to_type_for_it(noun, world):
    assert isinstance(world.ours[noun.slug], noun.model)
    assert typed(noun.slug, world.ours)


@every(ENTERED)
def test_a_record_is_entered_through_its_form(noun, world, owner_client):
    answer = owner_client.post(
        url("new", world, noun), typed(noun.slug, world.ours), follow=True
    )
    assert answer.redirect_chain, answer.context["form"].errors
    row = newest(noun, world)
    assert answer.redirect_chain[-1][0] == url("page", world, noun, row.pk)
    assert row.written_by == world.owner
    assert row.farm == world.farm
    (change,) = changes_of(row)
    assert (change.verb, change.by, change.before) == ("wrote", world.owner, {})
    assert change.at == row.written_at


@every(NOUNS)
def test_a_record_is_mended_and_the_change_is_noted(noun, world, owner_client):
    row = world.ours[noun.slug]
    edit = url("edit", world, noun, row.pk)
    form = owner_client.get(edit).context["form"]
    told = "notes" if "notes" in form.fields else "reason"
    sent = {**as_shown(form), told: "Mended the day after."}
    answer = owner_client.post(edit, sent)
    assert answer.status_code == 302, answer.context["form"].errors
    (change,) = changes_of(row)
    assert (change.verb, change.by) == ("changed", world.owner)
    assert change.after == {told: "Mended the day after."}
    assert change.before.keys() == {told}


def as_shown(form):
    """A form sent back as the browser shows it, nothing touched."""
    sent = {}
    parts = [form]
    for rows in getattr(form, "formsets", []):
        parts += [rows.management_form, *rows.forms]
    for part in parts:
        for box in part:
            value = box.value()
            if isinstance(box.field, forms.BooleanField):
                value = "on" if value else None
            if value is not None:
                sent[box.html_name] = str(box.field.prepare_value(value))
    return sent


@every(NOUNS)
def test_a_form_sent_back_untouched_changes_nothing(noun, world, owner_client):
    row = world.ours[noun.slug]
    edit = url("edit", world, noun, row.pk)
    before = writing.told(noun.model.objects.get(pk=row.pk))
    answer = owner_client.post(edit, as_shown(owner_client.get(edit).context["form"]))
    assert answer.status_code == 302, answer.context["form"].errors
    assert writing.told(noun.model.objects.get(pk=row.pk)) == before
    assert not changes_of(row).exists()


@every(ENTERED)
def test_a_record_is_voided_with_a_reason_and_stays(noun, world, owner_client):
    owner_client.post(url("new", world, noun), typed(noun.slug, world.ours))
    row = newest(noun, world)
    voided(owner_client, world, noun, row)
    row.refresh_from_db()
    assert row.voided_by == world.owner
    assert row.void_reason == "Written on the wrong field"
    change = changes_of(row).last()
    assert (change.verb, change.reason, change.at) == (
        "voided",
        row.void_reason,
        row.voided_at,
    )
    page = owner_client.get(url("page", world, noun, row.pk)).content.decode()
    assert "Written on the wrong field" in page
    assert url("edit", world, noun, row.pk) not in page


def test_a_void_without_a_reason_is_refused(world, owner_client):
    noun, row = BY_SLUG["trainings"], world.ours["trainings"]
    answer = owner_client.post(url("void", world, noun, row.pk), {"reason": "  "})
    assert answer.context["form"].errors["reason"]
    row.refresh_from_db()
    assert row.voided_at is None


def test_what_is_voided_is_neither_voided_again_nor_mended(world, owner_client):
    noun, row = BY_SLUG["trainings"], world.ours["trainings"]
    voided(owner_client, world, noun, row)
    again = voided(owner_client, world, noun, row)
    assert "It is voided already." in again.content.decode()
    edit = url("edit", world, noun, row.pk)
    assert owner_client.get(edit).url == url("page", world, noun, row.pk)
    owner_client.post(edit, typed("trainings", world.ours))
    assert changes_of(row).count() == 1


@pytest.mark.parametrize(
    "slug",
    ["fields", "plantings", "seed-lots", "input-products", "harvest-lots", "equipment"],
)
def test_a_void_is_refused_while_other_records_lean_on_it(slug, world, owner_client):
    noun, row = BY_SLUG[slug], world.ours[slug]
    answer = voided(owner_client, world, noun, row)
    assert answer.status_code == 200
    assert "Other records lean on this one" in answer.content.decode()
    row.refresh_from_db()
    assert row.voided_at is None
    assert not changes_of(row).exists()


@every(ENTERED)
def test_a_form_sent_twice_is_recorded_once(noun, world, owner_client):
    sent = {**typed(noun.slug, world.ours), "client_key": str(uuid.uuid4())}
    first = owner_client.post(url("new", world, noun), sent)
    before = noun.model.objects.count()
    again = owner_client.post(url("new", world, noun), sent)
    assert again.status_code == 302, again.context["form"].errors
    assert again.url == first.url
    assert noun.model.objects.count() == before
    assert changes_of(newest(noun, world)).count() == 1


def test_an_act_on_several_places_sent_twice_is_recorded_once(world, owner_client):
    stand = standing(world.ours)
    key = f"at{stand.pk}-client_key"
    sent = {
        "place": stand.pk,
        key: str(uuid.uuid4()),
        **typed("terminations", world.ours),
    }
    url = reverse("records:write-act", args=[world.farm.slug, "end"])
    before = Termination.objects.count()
    answers = [owner_client.post(url, sent) for _ in range(2)]
    assert [answer.status_code for answer in answers] == [302, 302]
    assert Termination.objects.count() == before + 1


def test_every_form_carries_a_key_of_its_own(world, owner_client):
    new = url("new", world, BY_SLUG["fields"])
    keys = {
        owner_client.get(new).context["form"]["client_key"].value() for _ in range(2)
    }
    assert len(keys) == 2


def test_record_and_change_are_written_together_or_not_at_all(
    world, owner_client, monkeypatch
):
    def stops(*_, **__):
        raise IntegrityError("the disk is full")

    monkeypatch.setattr(writing, "_add", stops)
    noun, before = BY_SLUG["trainings"], BY_SLUG["trainings"].model.objects.count()
    with pytest.raises(IntegrityError, match="the disk is full"):
        owner_client.post(url("new", world, noun), typed("trainings", world.ours))
    assert noun.model.objects.count() == before


def test_a_change_tells_what_stood_before_and_what_stands_now(world, owner_client):
    noun, row = BY_SLUG["observations"], world.ours["observations"]
    sent = typed("observations", world.ours, bloom_share="60")
    owner_client.post(url("edit", world, noun, row.pk), sent)
    change = changes_of(row).get()
    assert (change.before["seen"], change.after["seen"]) == ("first_flower", "bloom")
    assert (change.before["bloom_share"], change.after["bloom_share"]) == ("", "0.6")
    page = owner_client.get(url("page", world, noun, row.pk)).content.decode()
    assert "first flower → bloom" in page
    listed = owner_client.get(reverse("records:changes", args=[world.farm.slug]))
    assert "first flower → bloom" in listed.content.decode()


def test_a_line_of_a_mix_that_changes_is_told_too(world, owner_client):
    noun, row = BY_SLUG["plantings"], world.ours["plantings"]
    sent = typed("plantings", world.ours, **{"lines-0-seed_kg": "10 kg"})
    sent["sown_on"] = str(row.sown_on)
    owner_client.post(url("edit", world, noun, row.pk), sent)
    change = changes_of(row).get()
    assert change.before["lines.1.seed_kg"] == "20.0"
    assert change.after["lines.1.seed_kg"] == "10.0"


@pytest.mark.parametrize(("days_ago", "late"), [(0, False), (1, False), (2, True)])
def test_what_is_written_later_than_the_day_after_is_marked(
    days_ago, late, world, owner_client
):
    today = dt.datetime.now(dt.UTC).date()
    noun = BY_SLUG["irrigations"]
    sent = typed("irrigations", world.ours)
    sent["watered_on"] = str(today - dt.timedelta(days=days_ago))
    owner_client.post(url("new", world, noun), sent)
    row = newest(noun, world)
    page = owner_client.get(url("page", world, noun, row.pk)).content.decode()
    assert ("written late" in page) == late


@every(NOUNS)
def test_a_record_has_a_page_with_its_facts_and_its_history(noun, world, owner_client):
    row = world.ours[noun.slug]
    page = owner_client.get(url("page", world, noun, row.pk)).content.decode()
    assert "<dl" in page
    assert "Every change, the latest first" in page
    listed = owner_client.get(url("list", world, noun)).content.decode()
    assert url("page", world, noun, row.pk) in listed
    assert url("page", world, noun, world.theirs[noun.slug].pk) not in listed


def test_an_inspector_is_offered_nothing_to_write(world, as_person):
    client = as_person(world.inspector)
    noun, row = BY_SLUG["plantings"], world.ours["plantings"]
    page = client.get(url("page", world, noun, row.pk)).content.decode()
    assert url("edit", world, noun, row.pk) not in page
    assert url("void", world, noun, row.pk) not in page
    assert (
        url("new", world, noun)
        not in client.get(url("list", world, noun)).content.decode()
    )


def test_a_noun_nobody_knows_is_not_found(world, owner_client):
    answer = owner_client.get(
        reverse("records:list", args=[world.farm.slug, "weeds-of-mars"])
    )
    assert answer.status_code == 404
