"""The papers for certification, on the screen and printed, and told again."""

from __future__ import annotations

from typing import Any

from django.http import HttpResponse
from django.shortcuts import render
from django.utils import timezone
from django.views.decorators.http import require_GET, require_http_methods

from farm.access import PRIVY, FarmRequest, for_members
from farm.models import Farm
from reports.inspection.forms import FileForm
from reports.inspection.print_views import long_paper, pdf_answer
from reports.labels.packet import parts_said
from reports.ledger import prints
from reports.papers.findings_history import keep_printed
from reports.papers.packet import packet_paper
from reports.pdf import PdfUnavailableError
from reports.prints.packet import is_long, print_packet


@require_GET
@for_members(*PRIVY)
def packet(request: FarmRequest, farm: Farm, year: int) -> HttpResponse:
    paper = asked(request, farm, year)
    paper |= {"query": request.GET.urlencode(), "is_long": is_long(paper)}
    return render(request, "reports/packet.html", paper)


@require_GET
@for_members(*PRIVY)
def packet_pdf(request: FarmRequest, farm: Farm, year: int) -> HttpResponse:
    paper = asked(request, farm, year)
    if is_long(paper):
        return long_paper(request, farm, year, paper="packet")
    try:
        printed = print_packet(paper)
    except PdfUnavailableError as error:
        page = {"farm": farm, "year": year, "remedy": error.remedy}
        return render(request, "reports/no_pdf.html", page, status=503)
    kept(request, farm, printed, year, paper)
    part = f"-{min(paper['chosen'])}" if len(paper["chosen"]) == 1 else ""
    return pdf_answer(printed, f"{farm.slug}-packet-{year}{part}")


@require_http_methods(["GET", "HEAD", "POST"])
@for_members()
def verify(request: FarmRequest, farm: Farm) -> HttpResponse:
    form = FileForm(request.POST or None, request.FILES or None)
    page = {"farm": farm, "form": form, "asked": False}
    if request.method == "POST" and form.is_valid():
        data = form.cleaned_data["file"].read()
        print_ = prints.found(farm, data)
        page |= {"asked": True, "print": print_}
        page["parts"] = parts_said(print_.sections) if print_ else ""
        page |= {"sha256": prints.fingerprint(data), "is_pdf": data[:5] == b"%PDF-"}
    return render(request, "reports/verify.html", page)


def kept(
    request: FarmRequest, farm: Farm, printed: bytes, year: int, paper: dict[str, Any]
) -> None:
    """Keep the fingerprint of what was handed out, and the findings as they stood."""
    now = timezone.now()
    prints.keep(
        farm,
        printed,
        name="packet",
        year=year,
        sections=" ".join(sorted(paper["chosen"])),
        by=request.user,
        now=now,
    )
    keep_printed(farm, year, paper, by=request.user, now=now)


def asked(request: FarmRequest, farm: Farm, year: int) -> dict[str, Any]:
    """The packet as the address asks for it: parts, and a lot to trace."""
    return packet_paper(
        farm,
        year,
        today=farm.today(timezone.now()),
        chosen=request.GET.getlist("part"),
        lot=request.GET.get("lot", ""),
        by=str(request.user),
    )
