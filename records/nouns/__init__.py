"""Every noun a farm writes down: its form, its list, who may write it."""

from records.nouns import (
    duties,
    harvest,
    inputs,
    land,
    licences,
    mulch,
    rulings,
    seed,
    stands,
    upkeep,
)
from records.nouns.base import Column, Noun

NOUNS = (
    *land.NOUNS,
    *seed.NOUNS,
    *stands.NOUNS,
    *duties.NOUNS,
    *inputs.NOUNS,
    *mulch.NOUNS,
    *harvest.NOUNS,
    *upkeep.NOUNS,
    *rulings.NOUNS,
    *licences.NOUNS,
)
BY_SLUG = {noun.slug: noun for noun in NOUNS}
BY_MODEL = {noun.model._meta.model_name: noun for noun in NOUNS}


def closed_to(role: str) -> list[str]:
    """The records a role is told nothing of, by their names in the changes."""
    return [str(word) for word, noun in BY_MODEL.items() if role not in noun.readers]


__all__ = ["BY_MODEL", "BY_SLUG", "NOUNS", "Column", "Noun", "closed_to"]
