"""Long papers: printed by the worker, watched, stopped, and begun again when lost."""

import datetime as dt
import io
import multiprocessing
import time

import pytest
from django.core.files.storage import default_storage
from django.core.management import call_command
from django.urls import reverse
from django.utils import timezone
from django_tasks_db.management.commands import db_worker
from django_tasks_db.models import DBTaskResult

from records import printing
from records.models import PrintedPaper, PrintJob
from reports.pdf import kept
from reports.pdf.pieces import Leaf
from reports.pdf.presses import Presses, PressLostError
from reports.prints import jobs
from reports.prints.jobs import print_in_background, put_lost_back
from tests.factories import PrintJobFactory

pytestmark = pytest.mark.django_db
YEAR, SLUG = 2026, "alder-hill"
LONG_AGO = dt.datetime(2020, 1, 1, tzinfo=dt.UTC)
State = PrintJob.State


@pytest.fixture(autouse=True)
def one_process(monkeypatch):
    """A second process would take longer to start than a small paper to print."""
    monkeypatch.setattr(jobs, "PROCESSES", 1)


@pytest.fixture(autouse=True)
def one_connection(monkeypatch):
    """The worker would close the connection that will undo what the test writes."""
    monkeypatch.setattr(db_worker, "close_old_connections", lambda: None)


@pytest.fixture
def long(monkeypatch):
    for view in ("reports.views", "reports.inspection.packet_views"):
        monkeypatch.setattr(f"{view}.is_long", lambda paper: True)


def begun(client, paper="packet", query="part=training"):
    at = reverse("reports:print-begin", args=[SLUG, paper, YEAR])
    answer = client.post(at, {"query": query})
    return PrintJob.objects.get(key=answer.url.rstrip("/").rpartition("/")[2])


@pytest.mark.parametrize(
    ("paper", "name"), [("season", "season-pdf"), ("packet", "packet-pdf")]
)
def test_a_long_paper_is_offered_in_the_background(
    paper, name, long, world, owner_client
):
    answer = owner_client.get(reverse(f"reports:{name}", args=[SLUG, YEAR]))
    at = reverse("reports:print-begin", args=[SLUG, paper, YEAR])
    assert at in answer.content.decode()
    assert not PrintJob.objects.exists()


def test_the_worker_prints_what_waits_and_the_file_waits_for_the_person(
    world, owner_client
):
    job = begun(owner_client)
    page = reverse("reports:print", args=[SLUG, job.key])
    assert "Waiting to be printed" in owner_client.get(page).content.decode()
    call_command("work", batch=True)
    assert "It is finished" in owner_client.get(page).content.decode()
    file = owner_client.get(reverse("reports:print-file", args=[SLUG, job.key])).content
    at_once = reverse("reports:packet-pdf", args=[SLUG, YEAR])
    assert file == owner_client.get(at_once, {"part": "training"}).content
    assert PrintedPaper.objects.get().sha256 == printing_of(file)


def printing_of(file):
    return jobs.prints.fingerprint(file)


def test_the_season_report_has_the_same_bytes_from_worker_and_command(
    world, owner_client, tmp_path
):
    job = begun(owner_client, paper="season", query="")
    print_in_background.func(job.pk)
    with default_storage.open(job.file) as file:
        printed = file.read()
    told = {"today": job.today, "output": tmp_path / "season.pdf"}
    call_command("print_season", SLUG, YEAR, stdout=io.StringIO(), **told)
    assert (tmp_path / "season.pdf").read_bytes() == printed
    job.refresh_from_db()
    assert (job.state, job.total) == (State.DONE, 0)
    assert job.done >= 1


def test_the_crew_reads_long_papers_but_not_those_with_licences(
    world, owner_client, as_person
):
    """A packet prints licence numbers and addresses, which are not for the crew."""
    packet, crew = begun(owner_client), as_person(world.crew)
    season = begun(crew, paper="season", query="")
    listed = crew.get(reverse("reports:prints", args=[SLUG])).content.decode()
    assert str(season.key) in listed
    assert str(packet.key) not in listed
    watched = reverse("reports:print", args=[SLUG, season.key])
    assert crew.get(watched).status_code == 200
    for name in ("print", "print-file"):
        at = reverse(f"reports:{name}", args=[SLUG, packet.key])
        assert crew.get(at).status_code == 403
    home = crew.get(reverse("farm", args=[SLUG])).content.decode()
    assert (
        reverse("reports:packet", args=[SLUG, world.farm.season_year(season.today)])
        not in home
    )


def test_asking_twice_begins_one_print(world, owner_client):
    first, second = begun(owner_client), begun(owner_client)
    assert first == second
    assert DBTaskResult.objects.count() == 1
    assert begun(owner_client, query="part=land") != first


def test_a_print_is_stopped_before_it_begins_and_in_its_midst(world, owner_client):
    job = begun(owner_client)
    at = reverse("reports:print-stop", args=[SLUG, job.key])
    assert "stopped" in owner_client.post(at, follow=True).content.decode()
    print_in_background.func(job.pk)
    assert not default_storage.exists(job.file)
    running = PrintJobFactory(farm=world.farm, state=State.RUNNING)
    printing.tell(running.pk, 1, 9)
    owner_client.post(reverse("reports:print-stop", args=[SLUG, running.key]))
    with pytest.raises(printing.StoppedError):
        printing.tell(running.pk, 2, 9)


def test_only_who_asked_or_a_manager_stops_a_print(world, as_person):
    job = PrintJobFactory(farm=world.farm, asked_by=world.owner)
    at = reverse("reports:print-stop", args=[SLUG, job.key])
    as_person(world.inspector).post(at)
    job.refresh_from_db()
    assert job.state == State.WAITING
    as_person(world.manager).post(at)
    job.refresh_from_db()
    assert job.state == State.STOPPED


def test_a_print_whose_worker_was_lost_is_begun_again(world):
    told = {"farm": world.farm, "state": State.RUNNING, "query": "part=training"}
    lost = PrintJobFactory(beat_at=LONG_AGO, tries=1, **told)
    tired = PrintJobFactory(beat_at=LONG_AGO, tries=printing.MOST_TRIES, **told)
    alive = PrintJobFactory(**told)
    printing.beat(alive.pk)
    assert put_lost_back() == 1
    call_command("work", batch=True)
    states = {}
    for job in (lost, tired, alive):
        job.refresh_from_db()
        states[job] = job.state
    assert states == {lost: State.DONE, tired: State.FAILED, alive: State.RUNNING}
    assert lost.tries == 2


def test_a_sign_of_life_that_the_database_wrote_grows_old_too(world, monkeypatch):
    job = PrintJobFactory(farm=world.farm, state=State.RUNNING)
    printing.beat(job.pk)
    assert printing.lost() == []
    monkeypatch.setattr(printing, "SILENT", -dt.timedelta(minutes=1))
    assert printing.lost() == [job.pk]
    assert printing.lost() == []


def test_a_print_that_goes_wrong_says_what_and_may_be_asked_for_again(
    world, owner_client, monkeypatch
):
    def broken(*args, **more):
        raise ValueError("the roof leaks")

    monkeypatch.setattr(jobs, "print_packet", broken)
    job = begun(owner_client)
    call_command("work", batch=True)
    page = owner_client.get(reverse("reports:print", args=[SLUG, job.key]))
    assert "the roof leaks" in page.content.decode()
    assert begun(owner_client) != job


def test_a_press_that_was_lost_is_told_in_words_of_whoever_asked(
    world, owner_client, monkeypatch
):
    def killed(*args, **more):
        raise PressLostError

    monkeypatch.setattr(jobs, "print_packet", killed)
    job = begun(owner_client)
    print_in_background.func(job.pk)
    page = owner_client.get(reverse("reports:print", args=[SLUG, job.key]))
    assert "ended from outside" in page.content.decode()
    world.owner.language = "es"
    world.owner.save()
    again = begun(owner_client)
    print_in_background.func(again.pk)
    again.refresh_from_db()
    assert "desde fuera" in again.trouble


def test_without_a_worker_the_page_says_what_to_start(world, owner_client):
    job = PrintJobFactory(farm=world.farm, asked_at=LONG_AGO)
    at = reverse("reports:print", args=[SLUG, job.key])
    assert "manage.py work" in owner_client.get(at).content.decode()
    part = owner_client.get(at, headers={"HX-Request": "true"}).content.decode()
    assert "<html" not in part
    assert 'hx-trigger="every 1s"' in part


def test_a_print_whose_worker_went_quiet_says_what_happens_next(world, owner_client):
    told = {"farm": world.farm, "state": State.RUNNING}
    for job, is_said in (
        (PrintJobFactory(**told, beat_at=LONG_AGO), True),
        (PrintJobFactory(**told, beat_at=timezone.now()), False),
    ):
        page = owner_client.get(reverse("reports:print", args=[SLUG, job.key]))
        assert ("Its worker has gone quiet." in page.content.decode()) is is_said


def test_what_is_no_paper_cannot_be_asked_for(world, owner_client):
    at = reverse("reports:print-begin", args=[SLUG, "novel", YEAR])
    assert owner_client.post(at).status_code == 404


def test_a_print_behind_another_is_told_so(world, owner_client):
    PrintJobFactory(farm=world.farm, state=State.RUNNING)
    printing.beat(PrintJob.objects.get().pk)
    job = PrintJobFactory(farm=world.farm, asked_at=LONG_AGO)
    page = owner_client.get(reverse("reports:print", args=[SLUG, job.key]))
    assert "this one is next" in page.content.decode()
    assert "manage.py work" not in page.content.decode()


def test_old_files_are_cleared_away_and_their_fingerprints_are_kept(world):
    month = dt.timedelta(days=printing.KEPT_DAYS)
    now = timezone.now()
    told = {"farm": world.farm, "state": State.RUNNING}
    old = PrintJobFactory(asked_at=now - month - dt.timedelta(hours=1), **told)
    young = PrintJobFactory(asked_at=now - month + dt.timedelta(hours=1), **told)
    open_one = PrintJobFactory(asked_at=LONG_AGO, **told)
    for job in (old, young):
        jobs.prints.keep(
            world.farm,
            bytes(job.file, "ascii"),
            name="packet",
            year=YEAR,
            sections="",
            by=world.owner,
            now=now,
        )
        printing.finish(job, b"%PDF")
    assert printing.clear_old() == 1
    assert set(PrintJob.objects.all()) == {young, open_one}
    assert not default_storage.exists(old.file)
    assert default_storage.exists(young.file)
    assert PrintedPaper.objects.count() == 2


def test_a_print_is_stopped_while_its_pieces_are_printed():
    """No piece is waited for: the printing processes end with the wish."""
    leaves = [Leaf(f"<html lang=en><title>{n}</title><p>{n}", "") for n in "abc"]

    def heard(done, total):
        assert multiprocessing.active_children()
        if done:
            raise printing.StoppedError

    with Presses(2) as presses, pytest.raises(printing.StoppedError):
        kept.pieces_of(leaves, presses=presses, heard=heard)
    end = time.monotonic() + 10
    while multiprocessing.active_children() and time.monotonic() < end:
        time.sleep(0.05)
    assert multiprocessing.active_children() == []


def test_a_print_is_written_in_the_units_of_who_asked_for_it(
    world, owner_client, monkeypatch
):
    seen = []
    monkeypatch.setattr(
        jobs, "season_paper", lambda farm, *_, **__: seen.append(farm.units)
    )
    monkeypatch.setattr(jobs, "print_season", lambda *_, **__: b"%PDF")
    assert world.farm.units == "us"
    world.owner.units = "metric"
    world.owner.save()
    print_in_background.func(begun(owner_client, paper="season", query="").pk)
    assert seen == ["metric"]
    world.farm.refresh_from_db()
    assert world.farm.units == "us"
