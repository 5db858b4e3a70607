"""Who works here, on what land, and the record every page is built on."""

from farm.models.changes import Change, ChangeHead
from farm.models.land import Edge, Farm, Field, LandStatement
from farm.models.looks import Look
from farm.models.people import Membership, Role, User
from farm.models.record import Record, RecordQuerySet

__all__ = [
    "Change",
    "ChangeHead",
    "Edge",
    "Farm",
    "Field",
    "LandStatement",
    "Look",
    "Membership",
    "Record",
    "RecordQuerySet",
    "Role",
    "User",
]
