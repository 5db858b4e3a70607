"""Who works here, on what land, and the record every page is built on."""

from farm.models.changes import Change, ChangeHead
from farm.models.farms import Farm
from farm.models.invitations import Invitation
from farm.models.land import Edge, Field, LandStatement
from farm.models.looks import Look
from farm.models.people import Membership, Role, User
from farm.models.record import Record, RecordQuerySet
from farm.models.sign_ins import RecoveryCode, SignIn

__all__ = [
    "Change",
    "ChangeHead",
    "Edge",
    "Farm",
    "Field",
    "Invitation",
    "LandStatement",
    "Look",
    "Membership",
    "Record",
    "RecordQuerySet",
    "RecoveryCode",
    "Role",
    "SignIn",
    "User",
]
