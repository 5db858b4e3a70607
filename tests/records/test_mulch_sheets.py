"""Films and tarps: what is typed, who types it, and how they are found again."""

import datetime as dt

import pytest
from django.urls import reverse
from django.utils import timezone

from records.models import MulchSheet
from tests.factories import FieldFactory, MulchSheetFactory, PlantingFactory
from tests.records.typed import typed

NOUN = "mulch-films-and-tarps"
SLUG = "alder-hill"

pytestmark = pytest.mark.django_db


@pytest.fixture
def crew_client(world, as_person):
    return as_person(world.crew)


def send(client, world, **over):
    sent = typed(NOUN, world.ours, **over)
    return client.post(reverse("records:new", args=[SLUG, NOUN]), sent)


def test_a_crew_lays_a_tarp_on_bare_ground_and_the_whole_field_is_meant(
    world, crew_client
):
    bare = {"planting": "", "area_m2": "", "taken_off_on": "", "went": ""}
    send(crew_client, world, material="tarp", **bare)
    row = MulchSheet.objects.latest("pk")
    assert (row.material, row.taken_off_on) == ("tarp", None)
    assert row.area_m2 == pytest.approx(world.ours["fields"].area_m2)


def test_it_is_taken_off_by_mending_the_record(world, crew_client):
    row = MulchSheetFactory(
        farm=world.farm,
        written_by=world.crew,
        field=world.ours["fields"],
        taken_off_on=None,
        went="",
    )
    address = reverse("records:edit", args=[SLUG, NOUN, row.pk])
    over = {"planting": "", "laid_on": "2026-05-04", "taken_off_on": "2026-09-30"}
    crew_client.post(address, typed(NOUN, world.ours, **over))
    row.refresh_from_db()
    assert (row.taken_off_on, row.went) == (dt.date(2026, 9, 30), "collected")


def test_its_page_leads_to_the_day_it_came_off_while_it_lies(world, crew_client):
    here = {"farm": world.farm, "written_by": world.crew}
    lying = MulchSheetFactory(
        **here, field=world.ours["fields"], taken_off_on=None, went=""
    )
    edit = reverse("records:edit", args=[SLUG, NOUN, lying.pk]) + "?do=off"
    for row, is_led in ((lying, True), (world.ours[NOUN], False)):
        page = crew_client.get(reverse("records:page", args=[SLUG, NOUN, row.pk]))
        assert ("?do=off" in page.content.decode()) is is_led
    shown = crew_client.get(edit).context["form"]
    assert shown["taken_off_on"].value() == world.farm.today(timezone.now())


def test_a_sheet_is_called_by_the_farms_own_words_where_it_has_some():
    row = MulchSheetFactory(material="other", material_words="Wool felt")
    assert str(row) == "Wool felt · 2026-05-04"


def test_pvc_is_a_question_for_the_certifier_as_it_is_written_down(world, owner_client):
    sent = typed(NOUN, world.ours, material="pvc")
    address = reverse("records:new", args=[SLUG, NOUN])
    told = owner_client.post(address, sent, follow=True).content.decode()
    assert "a question for the certifier" in told


def test_a_planting_of_another_field_is_refused_beside_its_box(world, owner_client):
    here = {"farm": world.farm, "written_by": world.owner}
    other = PlantingFactory(**here, field=FieldFactory(**here, name="Creek"))
    answer = send(owner_client, world, planting=other.pk)
    errors = answer.context["form"].errors
    assert errors == {"planting": ["This planting is on another field."]}


def test_the_list_can_be_narrowed_to_what_still_lies(world, owner_client):
    here = {"farm": world.farm, "written_by": world.owner}
    lying = MulchSheetFactory(
        **here, field=world.ours["fields"], taken_off_on=None, went=""
    )
    address = reverse("records:list", args=[SLUG, NOUN])
    shown = owner_client.get(address, {"lies": "on"}).context["page_obj"]
    assert [row.pk for row in shown] == [lying.pk]


def test_the_form_warns_of_wind_and_fire_and_leaves_what_may_lie_to_the_certifier(
    world, owner_client
):
    page = owner_client.get(reverse("records:new", args=[SLUG, NOUN]))
    told = page.content.decode()
    for words in ("Wind lifts a sheet", "Never burn or bury", "certifier decides"):
        assert words in told
    assert "guards on" in told


def test_several_fields_are_covered_in_one_go_from_the_crews_page(world, crew_client):
    here = {"farm": world.farm, "written_by": world.owner}
    fields = [FieldFactory(**here, name=name) for name in ("Bed 1", "Bed 2")]
    sent = {
        "place": [field.pk for field in fields],
        "laid_on": "2026-05-06",
        "material": "fabric",
        "key": "0f3c2a52-7c1f-4f0c-9a52-2f6a1a3f9a10",
    }
    crew_client.post(reverse("records:crew-act", args=[SLUG, "lay"]), sent)
    rows = MulchSheet.objects.filter(material="fabric")
    assert {row.field for row in rows} == set(fields)


def test_a_field_is_not_struck_out_from_under_its_tarp(world, owner_client):
    row = MulchSheetFactory(farm=world.farm, written_by=world.owner)
    address = reverse("records:void", args=[SLUG, "fields", row.field_id])
    answer = owner_client.post(address, {"reason": "Written twice"})
    assert "Void those first" in answer.content.decode()
