"""Answers to what could not be read at all."""

from __future__ import annotations

from django.conf import settings
from django.core.exceptions import RequestDataTooBig
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render


def not_read(request: HttpRequest, exception: Exception) -> HttpResponse:
    """Say that it was too much, where it was; else that it could not be read."""
    too_big = isinstance(exception, RequestDataTooBig)
    page = {
        "too_big": too_big,
        "megabytes": settings.DATA_UPLOAD_MAX_MEMORY_SIZE // (1024 * 1024),
    }
    return render(request, "400.html", page, status=413 if too_big else 400)
