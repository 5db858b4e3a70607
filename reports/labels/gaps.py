"""Words for gaps, what a cover is wanted for, and what speaks against a kind."""

from django.utils.translation import gettext_lazy as _

from reports.calc.shapes.gaps import Against, Aim, Bound, RankBy

AIM = {
    Aim.WEEDS: _("holding weeds back"),
    Aim.NITROGEN: _("bringing nitrogen"),
    Aim.CATCHING: _("catching nutrients"),
    Aim.LOOSENING: _("loosening soil"),
    Aim.BEES: _("bees and other beneficial insects"),
    Aim.FORAGE: _("forage"),
    Aim.MULCH: _("mulch"),
}
AGAINST = {
    Against.FAMILY_BEFORE: _("The crop before is of the same family."),
    Against.FAMILY_AFTER: _("The next crop is of the same family."),
    Against.WHEAT_NEAR: _("Wheat grows or is planned on the farm."),
    Against.ANIMALS: _("It can harm the farm’s animals."),
    Against.COMES_BACK: _("It can come back as a weed."),
    Against.NO_TIME: _("There is not time enough for it to cover the ground."),
    Against.SOIL_COLD: _("The soil is too cold while there is time."),
    Against.SEED_UNTESTED: _("The seed on hand has no germination test."),
    Against.SEED_SHORT: _("There is not seed enough on hand."),
    Against.NO_SEED: _("There is no seed of it on hand."),
    Against.RATE_UNKNOWN: _("No rate is in print for it."),
}
RANK = {
    RankBy.FITS: _("it fits in the time, the next one does not"),
    RankBy.AGAINST: _("less speaks against it than against the next one"),
    RankBy.COVER: _("it covers the ground more surely than the next one"),
    RankBy.WEED_DAYS: _("it holds weeds back longer than the next one"),
    RankBy.SEED: _("more of its seed is on hand than of the next one’s"),
    RankBy.NAME: _("alike with the next one; by name"),
}
BOUND = {
    Bound.TODAY: _("bare from today"),
    Bound.STAND_ENDS: _("after the end of what stands there"),
    Bound.NOTHING_BEFORE: _("nothing written down before"),
    Bound.NEXT_CROP: _("until the next crop"),
    Bound.HORIZON: _("nothing planned"),
}
LISTS = (AIM, AGAINST, RANK, BOUND)
