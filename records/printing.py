"""Long papers under way: asked for, taken up, told how far, stopped, finished."""

from __future__ import annotations

import datetime as dt

from django.core.files.base import ContentFile
from django.core.files.storage import default_storage
from django.db.models import F, QuerySet
from django.db.models.functions import Now

from farm.models import Farm, User
from records.models import PrintJob

State = PrintJob.State
OPEN = (State.WAITING, State.RUNNING)
MOST_TRIES = 3
# A job that gives no sign of life for so long has lost its worker.
SILENT = dt.timedelta(minutes=1)
# How long a finished file waits; its fingerprint is kept for ever.
KEPT_DAYS = 30


class StoppedError(Exception):
    """Somebody stopped the print."""


def ask(
    farm: Farm,
    paper: str,
    year: int,
    *,
    query: str,
    by: User,
    now: dt.datetime,
) -> PrintJob:
    """Write a wish down; whoever asks twice gets the one that is under way."""
    today = farm.today(now)
    told = {"paper": paper, "year": year, "query": query, "today": today}
    open_jobs = PrintJob.objects.filter(farm=farm, asked_by=by, state__in=OPEN, **told)
    return open_jobs.first() or PrintJob.objects.create(
        farm=farm, asked_by=by, asked_at=now, **told
    )


def jobs_of(farm: Farm) -> QuerySet[PrintJob]:
    """What was asked for on a farm, the newest first."""
    rows: QuerySet[PrintJob] = PrintJob.objects.filter(farm=farm)
    return rows.select_related("asked_by").order_by("-asked_at", "-pk")


def take_up(pk: int) -> PrintJob | None:
    """Begin with a job, unless it was stopped or another worker has it."""
    waiting = PrintJob.objects.filter(pk=pk, state=State.WAITING)
    told = {"state": State.RUNNING, "beat_at": Now(), "tries": F("tries") + 1}
    if not waiting.update(done=0, total=0, **told):
        return None
    return PrintJob.objects.select_related("farm", "asked_by").get(pk=pk)


def beat(pk: int) -> None:
    """Give a sign of life."""
    PrintJob.objects.filter(pk=pk, state=State.RUNNING).update(beat_at=Now())


def tell(pk: int, done: int, total: int) -> None:
    """Say how far a job is.

    Raises
    ------
    StoppedError
        If somebody stopped it.
    """
    running = PrintJob.objects.filter(pk=pk, state=State.RUNNING)
    if not running.update(done=done, total=total, beat_at=Now()):
        raise StoppedError


def finish(job: PrintJob, printed: bytes) -> None:
    """Keep the file where it waits for the person."""
    if default_storage.exists(job.file):
        default_storage.delete(job.file)
    default_storage.save(job.file, ContentFile(printed))
    PrintJob.objects.filter(pk=job.pk, state=State.RUNNING).update(state=State.DONE)


def fail(pk: int, trouble: str) -> None:
    rows = PrintJob.objects.filter(pk=pk, state__in=OPEN)
    rows.update(state=State.FAILED, trouble=trouble[:500])


def stop(job: PrintJob) -> bool:
    """Stop a job that is not finished; it ends at its next step."""
    rows = PrintJob.objects.filter(pk=job.pk, state__in=OPEN)
    return bool(rows.update(state=State.STOPPED))


def lost() -> list[int]:
    """Jobs whose worker is gone, put back among those that wait."""
    silent = PrintJob.objects.filter(state=State.RUNNING, beat_at__lt=Now() - SILENT)
    tired = silent.filter(tries__gte=MOST_TRIES).values_list("pk", flat=True)
    for pk in list(tired):
        fail(pk, "")
    # Asked anew for each: another worker may have been quicker.
    rows = list(silent.values_list("pk", flat=True))
    return [pk for pk in rows if silent.filter(pk=pk).update(state=State.WAITING)]


def is_busy() -> bool:
    """Whether a worker gave a sign of life just now."""
    return PrintJob.objects.filter(
        state=State.RUNNING, beat_at__gte=Now() - SILENT
    ).exists()


def clear_old() -> int:
    """Clear away files that were there for long enough, and the wishes for them."""
    told = PrintJob.objects.exclude(state__in=OPEN)
    old = list(told.filter(asked_at__lt=Now() - dt.timedelta(days=KEPT_DAYS)))
    for job in old:
        default_storage.delete(job.file)
        job.delete()
    return len(old)
