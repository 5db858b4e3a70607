"""A long paper printed by the worker, told how far it is, and kept when it is done."""

from __future__ import annotations

import threading
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from functools import partial

from django.db import OperationalError, connection
from django.http import QueryDict
from django.utils.translation import gettext_lazy as _
from django_tasks import task

from farm.language import spoken_for
from farm.models import Farm
from reports.ledger import prints
from reports.ledger.prints import PrintJob, StoppedError
from reports.papers.findings_history import keep_printed
from reports.papers.packet import packet_paper
from reports.papers.season import season_paper
from reports.pdf import PdfUnavailableError
from reports.pdf.kept import Heard
from reports.pdf.presses import Presses, PressLostError
from reports.prints.packet import print_packet
from reports.prints.season import print_season

PROCESSES = 2
BEAT_S = 10.0
LOST = _(
    "A process that printed was ended from outside, perhaps for want of memory. What"
    " was printed so far is kept: print it again."
)


@task()
def print_in_background(pk: int) -> None:
    """Print a job by its number; one that was stopped or is done is left alone."""
    job = prints.take_up(pk)
    if job is None:
        return
    try:
        with _alive(pk):
            with spoken_for(job.query, job.asked_by):
                data = printed(job, heard=partial(prints.tell, pk))
            prints.finish(job, data)
    except StoppedError:
        return
    except PdfUnavailableError as error:
        prints.fail(pk, error.remedy)
    except PressLostError:
        with spoken_for(job.query, job.asked_by):
            prints.fail(pk, str(LOST))
    except Exception as error:
        prints.fail(pk, f"{type(error).__name__}: {error}")
        raise


def put_lost_back() -> int:
    """Give jobs whose worker is gone to whoever is there."""
    again = prints.lost()
    for pk in again:
        print_in_background.enqueue(pk)
    return len(again)


def printed(job: PrintJob, *, heard: Heard) -> bytes:
    """The file of a job; its fingerprint is kept."""
    asked, farm = QueryDict(job.query), job.farm.read_in(job.asked_by.units)
    if job.paper == PrintJob.Paper.SEASON:
        paper = season_paper(farm, job.year, today=job.today)
        data, parts = print_season(paper, heard=heard), ""
    else:
        data, parts = _packet(job, farm, asked, heard)
    prints.keep(
        farm,
        data,
        name=job.paper,
        year=job.year,
        sections=parts,
        by=job.asked_by,
        now=job.asked_at,
    )
    return data


def _packet(
    job: PrintJob, farm: Farm, asked: QueryDict, heard: Heard
) -> tuple[bytes, str]:
    """The papers for certification, and which of their parts were chosen."""
    with Presses(PROCESSES) as presses:
        paper = packet_paper(
            farm,
            job.year,
            today=job.today,
            chosen=asked.getlist("part"),
            lot=asked.get("lot", ""),
            by=str(job.asked_by),
        )
        data = print_packet(paper, presses=presses, heard=heard)
    keep_printed(farm, job.year, paper, by=job.asked_by, now=job.asked_at)
    return data, " ".join(sorted(paper["chosen"]))


@contextmanager
def _alive(pk: int) -> Iterator[None]:
    """Signs of life while the work is at one long step."""
    over = threading.Event()

    def beats() -> None:
        while not over.wait(BEAT_S):
            # A database that is locked just now hears the next one.
            with suppress(OperationalError):
                prints.beat(pk)
        connection.close()

    thread = threading.Thread(target=beats, daemon=True)
    thread.start()
    try:
        yield
    finally:
        over.set()
        thread.join()
