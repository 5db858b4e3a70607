"""Nutrients: what residue gives back and when, and what a label's figures hold."""

from reports.calc.nutrients.content import (
    K2O_PER_K,
    K_PER_K2O,
    P2O5_PER_P,
    P_PER_P2O5,
    PhosphorusNote,
    nutrient_content,
    phosphorus_note,
    product_for,
)
from reports.calc.nutrients.nitrogen import (
    Climate,
    NitrogenNote,
    OnTop,
    nitrogen_note,
    plant_available_n,
    released_by_day,
    rough_available_n,
)

__all__ = [
    "Climate",
    "K2O_PER_K",
    "K_PER_K2O",
    "NitrogenNote",
    "OnTop",
    "P2O5_PER_P",
    "P_PER_P2O5",
    "PhosphorusNote",
    "nitrogen_note",
    "nutrient_content",
    "phosphorus_note",
    "plant_available_n",
    "product_for",
    "released_by_day",
    "rough_available_n",
]
