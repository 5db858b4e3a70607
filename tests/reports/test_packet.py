"""The papers for certification: every part, alone and together, and told again."""

import datetime as dt

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from records.models import PrintedPaper
from reports.calc.changes import changes_between
from reports.calc.shapes.basics import Span
from reports.calc.shapes.changes import Part
from reports.labels.packet import SECTIONS
from reports.papers.packet import packet_paper
from tests.calc import books as at
from tests.calc.books import but, day, spoiled
from tests.factories import ApplicationFactory, FieldFactory, PlantingFactory

SLUG, YEAR = "alder-hill", 2026
TODAY = dt.date(2027, 1, 15)


@pytest.mark.django_db
@pytest.mark.parametrize("key", SECTIONS)
def test_every_part_can_be_had_alone(key, world, owner_client):
    page = owner_client.get(reverse("reports:packet", args=[SLUG, YEAR]), {"part": key})
    assert [one.key for one in page.context["sections"]] == [key]
    assert page.status_code == 200


@pytest.mark.django_db
def test_all_parts_are_there_where_none_is_chosen_or_none_is_known(world):
    for chosen in ((), ("nonsense",)):
        paper = packet_paper(world.farm, YEAR, today=TODAY, chosen=chosen)
        assert [one.key for one in paper["sections"]] == list(SECTIONS)


@pytest.mark.django_db
def test_registers_hold_what_was_written_down(world, owner_client):
    page = owner_client.get(reverse("reports:packet", args=[SLUG, YEAR]))
    told = page.content.decode()
    for words in ("BW-26", "Squash", "Cold room", "Leaf compost", "A. Hand"):
        assert words in told
    assert "complian" not in told.lower()


@pytest.mark.django_db
def test_a_season_without_records_prints_that_none_is_recorded(world, owner_client):
    page = owner_client.get(reverse("reports:packet", args=[SLUG, 1999]))
    assert page.content.decode().count("None recorded.") > 10


@pytest.mark.django_db
def test_the_packet_asks_the_same_for_one_field_or_many(world):
    def queries():
        with CaptureQueriesContext(connection) as asked:
            packet_paper(world.farm, YEAR, today=TODAY)
        return len(asked)

    before = queries()
    for _ in range(3):
        field = FieldFactory(farm=world.farm, written_by=world.owner)
        PlantingFactory(farm=world.farm, field=field)
        ApplicationFactory(farm=world.farm, field=field)
    assert queries() == before


@pytest.mark.django_db
def test_a_printed_packet_is_known_again_and_a_changed_one_is_not(world, owner_client):
    at_ = reverse("reports:packet-pdf", args=[SLUG, YEAR])
    printed = owner_client.get(at_, {"part": ["land", "attestation"]}).content
    assert printed.startswith(b"%PDF")
    kept = PrintedPaper.objects.get(farm=world.farm)
    assert (kept.sections, kept.bytes) == ("attestation land", len(printed))
    again = owner_client.get(at_, {"part": ["land", "attestation"]}).content
    assert again == printed
    assert PrintedPaper.objects.count() == 1
    verify = reverse("reports:verify", args=[SLUG])

    def asked(data):
        file = SimpleUploadedFile("x.pdf", data, "application/pdf")
        return owner_client.post(verify, {"file": file}).content.decode()

    assert "Found: packet, season 2026" in asked(printed)
    assert "Not found" in asked(printed[:-1] + b"?")
    assert owner_client.post(verify, {}).status_code == 200


def test_what_came_and_what_went_is_told_by_the_records():
    last = but(at.STAND, id=7, sown_on=day("2025-05-01"))
    other = but(last, lines=(at.rows.Line("Rye", False, None),))
    books = spoiled(stands=(at.STAND, other))
    before = Span(day("2025-01-01"), day("2025-12-31"))
    told = {one.part: one for one in changes_between(books, before, at.SEASON)}
    assert told[Part.KINDS].came == ("Buckwheat",)
    assert told[Part.KINDS].went == ("Rye",)
    assert Part.LAND not in told
    assert changes_between(books, at.SEASON, at.SEASON) == ()
