"""Pictures and papers: added to a record, given out through the door only."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from django.contrib import messages
from django.http import FileResponse, Http404, HttpResponse, HttpResponseBase
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_GET, require_http_methods

from farm.access import WRITERS, FarmRequest, for_members, let
from farm.models import Farm
from farm.writing import void
from records.forms.attachments import AttachmentForm
from records.forms.void import VoidForm
from records.models import Attachment
from records.nouns import BY_MODEL
from records.reading.pictures import small
from records.views.pages import noun_for, one

GET_OR_POST = ["GET", "HEAD", "POST"]
# Whatever a file holds, the browser is to do nothing with it but show it.
SEALED = {
    "X-Content-Type-Options": "nosniff",
    "Content-Security-Policy": "default-src 'none'; sandbox",
    "Cache-Control": "private, max-age=3600",
}


@require_http_methods(GET_OR_POST)
@for_members(*WRITERS)
def attach(request: FarmRequest, farm: Farm, noun: str, pk: int) -> HttpResponse:
    named = noun_for(request, noun)
    row = one(farm, named, pk)
    if row.voided_at:
        return redirect("records:page", farm.slug, named.slug, row.pk)
    now = timezone.now()
    sent = (request.POST or None, request.FILES or None)
    form = AttachmentForm(*sent, row=row, today=farm.today(now))
    if request.method == "POST" and form.is_valid():
        form.record(by=request.user, now=now)
        messages.success(request, _("Kept with the record."))
        return redirect("records:page", farm.slug, named.slug, row.pk)
    page = {"farm": farm, "noun": named, "row": row, "form": form}
    return render(request, "records/attach.html", page)


@require_GET
@for_members()
def attachment(request: FarmRequest, farm: Farm, attachment: UUID) -> HttpResponseBase:
    kept = found(request, farm, attachment)
    return FileResponse(
        opened(kept),
        as_attachment=not kept.is_picture,
        filename=f"{kept.pk}.{kept.ending}",
        content_type=kept.type,
        headers=SEALED,
    )


@require_GET
@for_members()
def attachment_small(
    request: FarmRequest, farm: Farm, attachment: UUID
) -> HttpResponseBase:
    """A picture at the size of a stamp, so that a list of them loads in the field."""
    kept = found(request, farm, attachment)
    if not kept.is_picture:
        return redirect("records:attachment", farm.slug, attachment)
    with opened(kept) as file:
        stamp = small(file.read())
    return HttpResponse(stamp, content_type="image/jpeg", headers=SEALED)


@require_http_methods(GET_OR_POST)
@for_members(*WRITERS)
def detach(request: FarmRequest, farm: Farm, attachment: UUID) -> HttpResponse:
    """Strike an attachment out with a reason; the file stays."""
    kept = found(request, farm, attachment)
    noun = BY_MODEL[kept.noun]
    form = VoidForm(request.POST or None, row=kept)
    if request.method == "POST" and form.is_valid():
        reason = form.cleaned_data["reason"]
        void(kept, by=request.user, now=timezone.now(), reason=reason)
        messages.success(request, _("Voided. The file stays, struck out."))
        return redirect("records:page", farm.slug, noun.slug, kept.object_id)
    row = one(farm, noun, kept.object_id)
    page = {"farm": farm, "noun": noun, "row": row, "kept": kept, "form": form}
    return render(request, "records/detach.html", page)


def found(request: FarmRequest, farm: Farm, key: UUID) -> Attachment:
    kept: Attachment | None = Attachment.objects.on(farm).filter(client_key=key).first()
    if kept is None:
        raise Http404
    let(request, BY_MODEL[kept.noun].readers)
    if farm.period is not None:
        # Seen with the record it belongs to, or not at all.
        one(farm, BY_MODEL[kept.noun], kept.object_id)
    return kept


def opened(kept: Attachment) -> Any:
    """The file as it lies on the disk, from which somebody may have taken it."""
    try:
        return kept.file.open("rb")
    except FileNotFoundError as error:
        raise Http404 from error
