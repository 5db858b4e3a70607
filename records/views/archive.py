"""The whole farm as one file, for its owner."""

from __future__ import annotations

import tempfile

from django.contrib import messages
from django.http import FileResponse, HttpResponse
from django.shortcuts import render
from django.utils import timezone
from django.utils.translation import ngettext
from django.views.decorators.http import require_http_methods

from farm.access import OWNERS, FarmRequest, for_members
from farm.models import Farm
from records.tables.archive import save_farm

# Up to this size an archive is made without touching the disk.
IN_MEMORY = 16 * 1024 * 1024


@require_http_methods(["GET", "HEAD", "POST"])
@for_members(*OWNERS)
def archive(request: FarmRequest, farm: Farm) -> HttpResponse | FileResponse:
    if request.method != "POST":
        return render(request, "records/archive.html", {"farm": farm})
    now = timezone.now()
    target = tempfile.SpooledTemporaryFile(IN_MEMORY)  # noqa: SIM115
    saved = save_farm(Farm.objects.get(pk=farm.pk), target, now=now)
    if saved.lost:
        messages.warning(request, lost(len(saved.lost)))
    target.seek(0)
    name = f"{farm.slug}-{farm.today(now):%Y-%m-%d}.zip"
    return FileResponse(target, as_attachment=True, filename=name)


def lost(count: int) -> str:
    return ngettext(
        "%(n)s paper is written down but its file is gone: it is not in the archive.",
        "%(n)s papers are written down but their files are gone: they are not in the "
        "archive.",
        count,
    ) % {"n": count}
