"""Every noun a farm writes down: its form, its list, who may write it."""

from records.nouns import duties, harvest, inputs, land, rulings, seed, stands, upkeep
from records.nouns.base import Column, Noun

NOUNS = (
    *land.NOUNS,
    *seed.NOUNS,
    *stands.NOUNS,
    *duties.NOUNS,
    *inputs.NOUNS,
    *harvest.NOUNS,
    *upkeep.NOUNS,
    *rulings.NOUNS,
)
BY_SLUG = {noun.slug: noun for noun in NOUNS}
BY_MODEL = {noun.model._meta.model_name: noun for noun in NOUNS}

__all__ = ["BY_MODEL", "BY_SLUG", "NOUNS", "Column", "Noun"]
