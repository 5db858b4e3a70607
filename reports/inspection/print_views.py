"""Long papers: asked for, watched, stopped, and fetched when they are finished."""

from __future__ import annotations

import datetime as dt
import uuid

from django.contrib import messages
from django.core.files.storage import default_storage
from django.http import Http404, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_POST

from farm.access import MANAGERS, PRIVY, FarmRequest, for_members, let, may
from farm.language import asked_in
from farm.models import Farm
from reports.ledger import prints
from reports.ledger.prints import PrintJob
from reports.prints.jobs import print_in_background

MOST_LISTED = 30
# A worker that is there takes a job up within a second or two.
PATIENCE = dt.timedelta(seconds=10)
# A worker gives a sign of life every ten seconds; a quieter one may be lost.
QUIET = dt.timedelta(seconds=25)


@require_POST
@for_members()
def begin(request: FarmRequest, farm: Farm, paper: str, year: int) -> HttpResponse:
    if paper not in PrintJob.Paper.values:
        raise Http404
    let_read(request, paper)
    now, query = timezone.now(), asked_in(request.POST.get("query", "")[:1000])
    job = prints.ask(farm, paper, year, query=query, by=request.user, now=now)
    if job.asked_at == now:
        print_in_background.enqueue(job.pk)
    return redirect("reports:print", farm.slug, job.key)


@require_GET
@for_members()
def all_prints(request: FarmRequest, farm: Farm) -> HttpResponse:
    jobs = prints.jobs_of(farm)
    if not may(request, PRIVY):
        jobs = jobs.exclude(paper=PrintJob.Paper.PACKET)
    told = [job for job in jobs if farm.opens(job.year)][:MOST_LISTED]
    page = {"farm": farm, "jobs": told, "kept_days": prints.KEPT_DAYS}
    return render(request, "reports/prints.html", page)


@require_GET
@for_members()
def one_print(request: FarmRequest, farm: Farm, key: uuid.UUID) -> HttpResponse:
    job = found(request, farm, key)
    page = {"farm": farm, "job": job, "kept_days": prints.KEPT_DAYS}
    page |= how_it_waits(job, timezone.now())
    part = "_print.html" if request.htmx else "print.html"
    return render(request, f"reports/{part}", page)


@require_POST
@for_members()
def stop(request: FarmRequest, farm: Farm, key: uuid.UUID) -> HttpResponse:
    job = found(request, farm, key)
    if job.asked_by != request.user and not may(request, MANAGERS):
        messages.warning(request, _("Only who asked for it may stop it."))
    elif prints.stop(job):
        messages.success(request, _("The print was stopped."))
    else:
        messages.warning(request, _("It was over before it could be stopped."))
    return redirect("reports:print", farm.slug, key)


@require_GET
@for_members()
def fetch(request: FarmRequest, farm: Farm, key: uuid.UUID) -> HttpResponse:
    job = found(request, farm, key)
    if job.state != PrintJob.State.DONE or not default_storage.exists(job.file):
        raise Http404
    with default_storage.open(job.file) as file:
        return pdf_answer(file.read(), f"{farm.slug}-{job.paper}-{job.year}")


def found(request: FarmRequest, farm: Farm, key: uuid.UUID) -> PrintJob:
    job = prints.jobs_of(farm).filter(key=key).first()
    if job is None or not farm.opens(job.year):
        raise Http404
    let_read(request, job.paper)
    return job


def let_read(request: FarmRequest, paper: str) -> None:
    """Refuse the crew a paper that prints licences and addresses."""
    if paper == PrintJob.Paper.PACKET:
        let(request, PRIVY)


def how_it_waits(job: PrintJob, now: dt.datetime) -> dict[str, bool]:
    """Whether a job waits for another paper or for a worker, or its own went quiet."""
    waits = job.state == PrintJob.State.WAITING and now - job.asked_at > PATIENCE
    is_next = waits and prints.is_busy()
    runs, last = job.state == PrintJob.State.RUNNING, job.beat_at
    is_silent = runs and last is not None and now - last > QUIET
    ignored = waits and not is_next
    return {"is_next": is_next, "is_ignored": ignored, "is_silent": is_silent}


def long_paper(
    request: FarmRequest, farm: Farm, year: int, *, paper: str
) -> HttpResponse:
    """Say that a paper is long, and offer to print it in the background."""
    page = {"farm": farm, "year": year, "paper": paper}
    page["query"] = request.GET.urlencode()
    return render(request, "reports/long_paper.html", page)


def pdf_answer(printed: bytes, name: str) -> HttpResponse:
    told = {"Content-Disposition": f'inline; filename="{name}.pdf"'}
    return HttpResponse(printed, "application/pdf", headers=told)
