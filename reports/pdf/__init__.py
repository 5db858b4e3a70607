"""Printing: one room knows the engine, and its neighbours join what it printed."""

from reports.pdf.paper import print_paper
from reports.pdf.printing import (
    REMEDY,
    FetchRefusedError,
    PdfUnavailableError,
    piece,
    to_pdf,
)

__all__ = [
    "REMEDY",
    "FetchRefusedError",
    "PdfUnavailableError",
    "piece",
    "print_paper",
    "to_pdf",
]
