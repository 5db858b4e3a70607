"""What each rule asks, in our own words: a summary, and no text of a law."""

from __future__ import annotations

from collections.abc import Mapping

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.rules import RuleId

ASKED: Mapping[RuleId, Promise] = {
    RuleId.LAND_CLOCK: _(
        "A lot is called organic only where nothing prohibited was put on the ground "
        "for the months named before its harvest; in the European Union, before its "
        "sowing."
    ),
    RuleId.LAND_HISTORY: _(
        "Somebody says what was put on the ground in those months. What nobody tells "
        "counts as not eligible."
    ),
    RuleId.LAND_STATEMENTS: _(
        "Signed statements about one piece of land do not overlap, and do not tell "
        "different things of the same days."
    ),
    RuleId.LAND_KEPT: _(
        "Land in transition is managed as organic land is: something tells of soil, "
        "rotation or pests in those years."
    ),
    RuleId.BOUNDARY: _(
        "Each organic field has boundaries that can be told apart, drawn as an outline."
    ),
    RuleId.EDGES: _(
        "Along each side something keeps the field apart from what a neighbour may "
        "use: a buffer of the width named, or a barrier."
    ),
    RuleId.MANURE: _(
        "Raw manure is worked in the days named before food is harvested: more where "
        "the part eaten touches the soil. Left on top, the days do not begin."
    ),
    RuleId.COMPOST: _(
        "Compost with manure in it was hot for the days named, turned as often as "
        "named, from a mix with the C:N named; else it counts as raw manure."
    ),
    RuleId.MANURE_NITROGEN: _(
        "The nitrogen of manure put on in a year stays under the mass for each area "
        "named."
    ),
    RuleId.SEED_STATUS: _(
        "Seed is organic with a certificate, or it is untreated and a search for "
        "organic seed is written down. A mix is looked at kind by kind."
    ),
    RuleId.SEED_SEARCH: _(
        "A search names as many sources as asked, before the sowing and not long "
        "before it, with the traits wanted and a reason. Price is not taken as a "
        "reason."
    ),
    RuleId.SEED_TREATED: _(
        "Seed with a treatment is not sown on organic ground or ground in transition,"
        " unless the certifier let it be."
    ),
    RuleId.SEED_LINKED: _(
        "Each planting names the lot of the seed of every kind in it."
    ),
    RuleId.SEED_TAG: _(
        "What the tag says is written down: purity, germination, month of the test."
    ),
    RuleId.TAG_AGE: _(
        "Seed that goes from State to State was tested within the months named. That "
        "is the seller’s duty; an older test calls for another, or for more seed."
    ),
    RuleId.INOCULANT: _(
        "Where legume seed is inoculated, the product is named, is approved, and was "
        "still good when it was sown."
    ),
    RuleId.SUPPLIER: _(
        "Certificates of suppliers of organic seed are looked up within the months "
        "named, and have not run out."
    ),
    RuleId.APPROVAL: _(
        "Each product was approved by the certifier before it was put on, and the "
        "approval had not run out."
    ),
    RuleId.APPLICATOR: _(
        "Each application names who put it on, an address where that person is found,"
        " and how it was done."
    ),
    RuleId.TRIGGER: _(
        "A pest-control material follows something seen or tried before, and its "
        "record says against what it was."
    ),
    RuleId.SPRAYED: _(
        "No stand is ended with a spray that is not approved: it may begin the months"
        " of transition anew. Ask first."
    ),
    RuleId.TARP: _(
        "Films and tarps are taken off when the season they served is over."
    ),
    RuleId.SHEET_MATERIAL: _(
        "Film is not PVC, and one that is left to rot is approved."
    ),
    RuleId.BURNING: _("Residue is not burned to be rid of it."),
    RuleId.REENTRY: _(
        "Nobody works in a sprayed field, and no work is planned there, before the "
        "hours on the label are over."
    ),
    RuleId.POSTING: _(
        "What was sprayed is on show within the hours named and before anybody goes "
        "in, stays there for the days named, and is kept for the years named."
    ),
    RuleId.TRAINED: _(
        "Who works where something was sprayed lately was trained within the months "
        "named. Owners and close family are left out."
    ),
    RuleId.RESTRICTED_RECORD: _(
        "The record of a restricted-use product names product, registration, amount, "
        "area, crop or site, place, day and who put it on."
    ),
    RuleId.RESTRICTED_DAYS: _(
        "A restricted-use product is written down within the days named."
    ),
    RuleId.CONTRACTOR_COPY: _(
        "A contractor’s copy of such a record is kept within the days named."
    ),
    RuleId.LICENCE: _(
        "A restricted-use product is put on under a licence that is written down and "
        "held on that day."
    ),
    RuleId.PREHARVEST: _("No lot is harvested before the days on the label are over."),
    RuleId.PLANT_BACK: _(
        "A cover that is grazed, hayed or threshed was sown after the months on the "
        "label; where the label names none, after its longest."
    ),
    RuleId.GRAZING_LABEL: _("Labels are read before animals go onto sprayed ground."),
    RuleId.HARVEST_CHAIN: _(
        "From a harvest lot one can walk back to field, planting and seed, and on to "
        "store, sale and invoice."
    ),
    RuleId.HARVEST_ORDER: _(
        "Nothing is harvested before it was sown, or stored and sold before it was "
        "harvested."
    ),
    RuleId.LOTS_APART: _(
        "Lots from buffers, from transition and from ground that is not organic are "
        "not called organic and are stored apart."
    ),
    RuleId.SALE_STATUS: _("No lot is sold under a status above its own."),
    RuleId.CLEAN_OUT: _(
        "A machine or store is cleaned between use that is not organic and organic "
        "use, and that is written down."
    ),
    RuleId.INCIDENT: _(
        "Drift, a spill or a forbidden use is told to the certifier, and what was "
        "done is written down."
    ),
    RuleId.ENGINEERED: _(
        "Seed of kinds of which engineered varieties are sold is organic, or shown by"
        " a statement or a test not to be one."
    ),
    RuleId.DONE_BY: _("Each record names who did the work."),
    RuleId.REVIEW: _(
        "Records of training, compost and cleaning are looked over within the days "
        "named."
    ),
    RuleId.COVER_SEED: _("No seed is threshed from a cover crop under contract."),
    RuleId.COVER_PLAN: _(
        "The weight of seed sown for a cover under contract is written down, and how "
        "deep it was drilled."
    ),
    RuleId.COVER_END: _(
        "Where a crop was sown in place of a cover, the end of the cover is written "
        "down within the days named."
    ),
    RuleId.COVER_INOCULANT: _(
        "Legumes in a cover under contract get the inoculant they need."
    ),
    RuleId.TERMINATION_DAY: _(
        "On insured dry land a cover is ended so many days before the crop is sown as"
        " its zone says."
    ),
    RuleId.STOCK: _(
        "No more goes out of a lot than came in, and what was counted agrees within "
        "the tolerance."
    ),
    RuleId.LATE: _("What happened is written down within the days named."),
    RuleId.NO_RECORDS: _("A season holds at least one record."),
    RuleId.DOCUMENT: _(
        "Tags and invoices are kept with seed, labels and data sheets with sprays."
    ),
}
