"""What Cornell's cover crop pages and buckwheat handbook print."""

# One source a line, so that the list reads as a bibliography.
# ruff: noqa: E501
# fmt: off

from __future__ import annotations

from reports.calc.sources.entry import Source, Tier

ENTRIES = (
    Source("CORN-BW", Tier.A, "T. Bjorkman", "Buckwheat", None, "Cornell University, species page", "https://covercrop.org/cover_crops/buckwheat/", True),
    Source("CORN-BW24", Tier.A, "T. Bjorkman", "Buckwheat as a summer cover crop for weed suppression", 2024, "Cornell University", "https://covercrop.org/blog/buckwheat-as-a-summer-cover-crop-for-weed-suppression", True),
    Source("CORN-BWLIFE", Tier.A, "T. Bjorkman", "The life of buckwheat", None, "Cornell University; one crop, Geneva NY, sown 8 July 1997", "https://covercrop.org/buckwheat-growth/", True),
    Source("CORN-CRUC", Tier.A, "T. Bjorkman", "Late summer crucifers", None, "Cornell University", "http://covercrop.org/main-page/newsletter-articles/late-summer-crucifers/", True),
    Source("CORN-HB-BEN", Tier.A, "Bjorkman, Bellinder, Hahn and Shail", "Buckwheat cover crop handbook: expected benefits", 2008, "Cornell University", "http://hort.cornell.edu/bjorkman/lab/buck/handbook/benefits.php", True),
    Source("CORN-HB-IDLE", Tier.A, "Bjorkman, Bellinder, Hahn and Shail", "Buckwheat cover crop handbook: bringing idle land into production", 2008, "Cornell University", "http://hort.cornell.edu/bjorkman/lab/buck/handbook/idleland.php", True),
    Source("CORN-HB-KEY", Tier.A, "Bjorkman, Bellinder, Hahn and Shail", "Buckwheat cover crop handbook: keys to success", 2008, "Cornell University", "http://www.hort.cornell.edu/bjorkman/lab/buck/handbook/success.php", True),
    Source("CORN-HB-WINT", Tier.A, "Bjorkman, Bellinder, Hahn and Shail", "Buckwheat cover crop handbook: use winter protection", 2008, "Cornell University", "http://hort.cornell.edu/bjorkman/lab/buck/handbook/winterprotection.php", True),
    Source("CORN-LATESUM", Tier.A, "T. Bjorkman", "Mid and late summer", None, "Cornell University", "http://covercrop.org/main-page/newsletter-articles/mid-and-late-summer", True),
    Source("CORN-MUST", Tier.A, "T. Bjorkman", "Mustard, fall", None, "Cornell University, species page", "https://covercrop.org/cover-crop-information/mustard-fall/", True),
    Source("CORN-OAT", Tier.A, "T. Bjorkman", "Oats", None, "Cornell University, species page", "https://covercrop.org/cover-crop-information/oats-3/", True),
    Source("CORN-REDCL", Tier.A, "T. Bjorkman", "Red clover", None, "Cornell University, species page", "https://covercrop.org/cover-crop-information/red-clover/", True),
    Source("CORN-RYE", Tier.A, "T. Bjorkman", "Rye", None, "Cornell University, species page", "https://covercrop.org/cover_crops/rye/", True),
    Source("CORN-SUDAN", Tier.A, "T. Bjorkman", "Sudangrass and sorghum-sudangrass", None, "Cornell University, species page", "https://covercrop.org/sudangrass/", True),
    Source("CORN-SUMMER", Tier.A, "T. Bjorkman", "Early summer: buckwheat and sudangrass", None, "Cornell University", "https://covercrop.org/main-page/newsletter-articles/early-summer", True),
    Source("CORN-WPHOTO", Tier.A, "T. Bjorkman", "Mustard, turnip and rapeseed after winter", 2007, "Cornell University; crops sown 30 August 2007", "https://covercrop.org/main-page/photos-3/mustard-turnip-and-rapeseed-after-winter/", True),
)
