"""What a check found, in a sentence with the finding's own values."""

from reports.labels.matters.inputs import INPUTS
from reports.labels.matters.keeping import KEEPING
from reports.labels.matters.laid import LAID
from reports.labels.matters.land import LAND
from reports.labels.matters.lots import LOTS
from reports.labels.matters.seed import SEED
from reports.labels.matters.soil import SOIL
from reports.labels.matters.sprays import SPRAYS

MATTER = {**LAND, **SOIL, **SEED, **INPUTS, **LAID, **SPRAYS, **LOTS, **KEEPING}

__all__ = ["MATTER"]
