"""Sprays, and what their labels hold back."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.rules import Matter

SPRAYS = {
    Matter.ENTERED_EARLY: _(
        "%(field)s: work on %(day)s, while the interval of %(product)s ran until "
        "%(over)s. Read the label; there are exceptions for early entry."
    ),
    Matter.PLANNED_EARLY: _(
        "%(field)s: work is planned for %(day)s, and the interval of %(product)s runs "
        "until %(over)s. Read the label."
    ),
    Matter.INTERVAL_UNKNOWN: _(
        "%(product)s: the re-entry interval of its label is not written down."
    ),
    Matter.REGISTRATION_UNKNOWN: _(
        "%(product)s: the registration number of its label is not written down, and is "
        "to be shown with what was sprayed. Where the label has none, write so."
    ),
    Matter.HOURS_UNKNOWN: _(
        "%(product)s on %(field)s, %(applied)s: from when until when is not written "
        "down."
    ),
    Matter.POSTED_NOT: _(
        "%(product)s on %(field)s, %(applied)s: that it was posted by %(due)s is not "
        "written down."
    ),
    Matter.POSTED_LATE: _(
        "%(product)s on %(field)s, %(applied)s was posted after %(due)s."
    ),
    Matter.HARVESTED_EARLY: _(
        "Lot %(lot)s from %(field)s was harvested %(days)s days after %(product)s; its "
        "label, as typed, asks for %(need)s."
    ),
    Matter.PREHARVEST_UNKNOWN: _(
        "%(product)s: the pre-harvest interval of its label is not written down, and "
        "lot %(lot)s followed after %(days)s days."
    ),
    Matter.PLANT_BACK_SHORT: _(
        "%(kind)s on %(field)s, sown %(sown)s, was grazed, hayed or threshed on "
        "%(used)s; %(product)s went on there on %(applied)s, and its label, as typed, "
        "asks for %(months)s months. Ask the licensed applicator."
    ),
    Matter.PLANT_BACK_UNKNOWN: _(
        "%(kind)s on %(field)s, sown %(sown)s, was grazed, hayed or threshed on "
        "%(used)s; %(product)s went on there on %(applied)s. Read its label: a stand "
        "that is eaten or threshed is no longer a cover crop."
    ),
    Matter.LABEL_NOT_READ: _(
        "Animals (%(animals)s) went onto %(field)s, where %(product)s was put on "
        "%(applied)s; that its label was read first is not written down."
    ),
    Matter.RESTRICTED_NO_PRODUCT: _(
        "A restricted-use product on %(field)s, %(applied)s: no brand or product name."
    ),
    Matter.RESTRICTED_NO_AMOUNT: _(
        "%(product)s on %(field)s, %(applied)s: no total amount."
    ),
    Matter.RESTRICTED_NO_AREA: _(
        "%(product)s on %(field)s, %(applied)s: no size of the area treated."
    ),
    Matter.RESTRICTED_NO_PLACE: _(
        "%(product)s, put on %(applied)s: the field it was put on has no name."
    ),
    Matter.RESTRICTED_NO_NUMBER: _(
        "%(product)s on %(field)s, %(applied)s: no registration number."
    ),
    Matter.RESTRICTED_NO_CROP: _(
        "%(product)s on %(field)s, %(applied)s: no crop or site is named."
    ),
    Matter.RESTRICTED_NO_NAME: _(
        "%(product)s on %(field)s, %(applied)s: no certified applicator is named."
    ),
    Matter.RESTRICTED_LATE: _(
        "%(product)s on %(field)s, %(applied)s was written down on %(written)s; "
        "within %(need)s days is asked for."
    ),
    Matter.RESTRICTED_NO_COPY: _(
        "%(product)s on %(field)s, %(applied)s, put on by %(who)s: the contractor’s "
        "copy of the record was due by %(due)s and is not kept with it. Those days are "
        "cited from memory, unverified: check the current text."
    ),
    Matter.LICENCE_MISSING: _(
        "%(product)s, restricted use, on %(field)s, %(applied)s: no licence is written "
        "down."
    ),
    Matter.LICENCE_UNKNOWN: _(
        "%(product)s, restricted use, on %(field)s, %(applied)s: the licence named "
        "with it is not among the applicators’ licences written down."
    ),
    Matter.LICENCE_NOT_YET: _(
        "%(product)s, restricted use, on %(field)s, %(applied)s: the licence named "
        "with it holds from %(since)s."
    ),
    Matter.LICENCE_RAN_OUT: _(
        "%(product)s, restricted use, on %(field)s, %(applied)s: the licence named "
        "with it held until %(until)s."
    ),
    Matter.LICENCE_SOON: _(
        "The licence of %(holder)s, named this season, holds until %(until)s, and no "
        "renewal is written down."
    ),
    Matter.UNTRAINED_WORKED: _(
        "%(who)s worked on %(field)s on %(day)s, where %(product)s was used on "
        "%(applied)s: no training in worker protection in the %(months)s months before "
        "is written down."
    ),
    Matter.UNTRAINED_PLANNED: _(
        "%(who)s is given work on %(field)s from %(day)s, where %(product)s was used "
        "on %(applied)s: no training in worker protection in the %(months)s months "
        "before is written down. Train before the work, or give it to somebody who was."
    ),
}
