"""A farm out of its file, row by row as it was."""

import pytest
from django.db import transaction
from django.template.loader import render_to_string

from farm.history import verified
from farm.models import Change, Farm, User
from records.models import WeatherDay
from records.tables.archive import ArchiveError
from reports.papers.season import season_paper
from tests.factories import (
    FarmFactory,
    KindFactory,
    MembershipFactory,
    UserFactory,
)
from tests.records.archive.files import (
    PICTURE,
    TODAY,
    archived,
    both,
    lived_on,
    members,
    numbers_come_again,
    owner_of,
    packed,
    plain,
    refusal,
    restored,
)
from tests.world import furnished, make_world


# PostgreSQL goes on counting rows after a rollback, so a farm put back within one
@numbers_come_again
def test_a_farm_is_restored_row_by_row_as_it_was(saved):
    farm = restored(saved, owner=owner_of(saved)).farm
    assert members(archived(farm)) == members(saved)
    assert WeatherDay.objects.filter(tmin_c=-15.6).exists()
    assert WeatherDay.objects.filter(tmin_c=0.1 + 0.2, rain_mm=None).exists()
    assert farm.fields.get(name="=North").parent.name == "-15.6"
    assert farm.seedlots.get().lot_number == "007"


def test_the_history_is_restored_with_its_seals(saved):
    told = restored(saved, owner=owner_of(saved))
    walked = verified(told.farm)
    assert not told.is_resealed
    assert walked.broken is None
    assert walked.entries == Change.objects.count() > 5


@numbers_come_again
def test_where_numbers_are_taken_the_history_is_sealed_anew_and_holds(saved):
    """Another farm's records have the numbers: keys stay, numbers and seals do not."""
    furnished(FarmFactory(slug="hay-creek"), by=UserFactory())
    told = restored(saved, owner=owner_of(saved))
    walked = verified(told.farm)
    assert told.is_resealed
    assert walked.broken is None
    assert walked.entries == told.farm.changes.count()
    for name, (before, after) in both(saved, archived(told.farm)).items():
        strange = {"id", "object_id", "prev", "digest", "file"}
        assert plain(before, strange) == plain(after, strange), name
    lot, paper = told.farm.seedlots.get(), told.farm.attachments.get()
    assert paper.object_id == lot.pk
    void_ = told.farm.changes.get(verb="voided")
    assert void_.object_id == told.farm.incidents.get().pk


def test_the_season_report_of_a_restored_farm_is_the_same_to_the_byte(
    db, settings, tmp_path
):
    settings.MEDIA_ROOT = tmp_path / "media"
    with transaction.atomic():
        farm = lived_on(make_world())
        data, printed = archived(farm), report(farm)
        transaction.set_rollback(True)
    farm = restored(data, owner=owner_of(data)).farm
    assert report(farm) == printed
    assert "=North" in printed and "the tag" in printed


def report(farm):
    paper = season_paper(farm, 2026, today=TODAY)
    return render_to_string("reports/season_print.html", paper)


def test_papers_come_back_with_their_bytes(saved):
    farm = restored(saved, owner=owner_of(saved)).farm
    paper = farm.attachments.get()
    assert paper.file.read() == PICTURE
    assert members(saved)["files/attachments/9/tag.jpg"] == PICTURE


def test_people_come_back_by_name_and_role_and_without_their_passwords(saved):
    farm = restored(saved, owner=owner_of(saved)).farm
    assert farm.memberships.count() == 4
    assert not any(user.has_usable_password() for user in User.objects.all())
    assert b"pbkdf2" not in saved
    assert "password" not in members(saved)["people.csv"].decode().splitlines()[0]


def test_somebody_known_here_keeps_their_password_and_name(saved):
    mine = User.objects.create_user(owner_of(saved), "deep clover roots", name="Me")
    restored(saved, owner=mine.email)
    mine.refresh_from_db()
    assert (mine.name, mine.check_password("deep clover roots")) == ("Me", True)


def test_an_owner_who_was_not_on_the_farm_is_let_in(saved):
    farm = restored(saved, owner="New@Example.org").farm
    assert farm.memberships.get(user__email="new@example.org").role == "owner"


def test_it_is_not_restored_over_the_farm_it_came_from(world):
    data = archived(lived_on(world))
    with pytest.raises(ArchiveError, match="here already"), transaction.atomic():
        restored(data)


def test_a_farm_under_another_name_cannot_have_the_same_records_twice(world):
    told = members(archived(world.farm))
    told["farm.csv"] = told["farm.csv"].replace(b"alder-hill", b"other-hill")
    with pytest.raises(ArchiveError, match="here already"), transaction.atomic():
        restored(packed(told))
    assert not Farm.objects.filter(slug="other-hill").exists()


def test_it_takes_the_place_of_a_farm_without_records(saved):
    empty = FarmFactory(slug="alder-hill", name="Set up by mistake")
    MembershipFactory(farm=empty)
    farm = restored(saved, owner=owner_of(saved)).farm
    assert (farm.pk, farm.name) == (empty.pk, "Alder Hill")
    assert Farm.objects.count() == 1
    assert farm.memberships.count() == 4
    assert verified(farm).broken is None


def test_it_wants_the_catalogue_of_kinds(db, settings, tmp_path):
    settings.MEDIA_ROOT = tmp_path / "media"
    with transaction.atomic():
        world = make_world()
        world.ours.kind.farm = None
        world.ours.kind.save()
        data = archived(world.farm)
        transaction.set_rollback(True)
    assert "catalogue of kinds" in refusal(data)
    KindFactory(slug=world.ours.kind.slug)
    assert restored(data).rows > 20
