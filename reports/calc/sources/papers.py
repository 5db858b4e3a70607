"""Papers on cover crops, mostly read as abstracts."""

# One source a line, so that the list reads as a bibliography.
# ruff: noqa: E501
# fmt: off

from __future__ import annotations

from reports.calc.sources.entry import Source, Tier

ENTRIES = (
    Source("CREAMER00", Tier.A, "Creamer and Baldwin", "An evaluation of summer cover crops for use in vegetable production systems in North Carolina", 2000, "HortScience 35:600-603, abstract", "https://acnpsearch.tweb-dev.unibo.it/singlejournalindex/73964215", True),
    Source("HARRIS06", Tier.A, "Harris, Lee and Gaskin", "Small grain cover crops in Georgia, abstract P25245", 2006, "American Society of Agronomy meeting", "https://crops.confex.com/crops/2006am/techprogram/P25245.HTM", True),
    Source("HT2013", Tier.A, "Bjorkman and Shail", "Using a buckwheat cover crop for maximum weed suppression after early vegetables", 2013, "HortTechnology 23:575-580, abstract", "https://www.sciencegate.app/document/10.21273/horttech.23.5.575", True),
    Source("KANTAR14", Tier.A, "Kantar and Porter", "Rye anthesis and growing degree days", 2014, "Crop Management 13, abstract", "https://m.booksci.cn/literaturecn/71951019.htm", True),
    Source("KUMAR08", Tier.A, "Kumar, Brainard and Bellinder", "Suppression of Powell amaranth, shepherd's-purse and corn chamomile by buckwheat residues: role of nitrogen and fungal pathogens", 2008, "Weed Science, abstract", "https://cambridge.org/core/journals/weed-science/article/abs/suppression-of-powell-amaranth-amaranthus-powellii-shepherdspurse-capsella-bursapastoris-and-corn-chamomile-anthemis-arvensis-by-buckwheat-residues-role-of-nitrogen-and-fungal-pathogens/56F7BB0DC4A218A1FDF806F900A5A022", True),
    Source("KUMAR09A", Tier.A, "Kumar, Brainard and Bellinder", "Suppression of Powell amaranth by buckwheat residues: role of allelopathy", 2009, "Weed Science 57(1), abstract", "https://bioone.org/journals/weed-science/volume-57/issue-1/WS-08-028.1/Suppression-of-Powell-Amaranth-Amaranthus-powellii-by-Buckwheat-Residues/10.1614/WS-08-028.1.short", True),
    Source("MDPI-REDCL", Tier.A, "", "Expanding red clover usage, table 1", 2015, "Sustainability 7(11):15487", "http://mdpi.com/2071-1050/7/11/15487", True),
    Source("NORBACK21", Tier.A, "Norback and Wieslander", "A review on epidemiological and clinical studies on buckwheat allergy", 2021, "Plants 10:607, abstract", "https://docslib.org/doc/10534839/", True),
    Source("PESSOTTO23", Tier.A, "Pessotto and others", "Base and best temperatures of cereal rye, crimson clover and balansa clover", 2023, "Agrosystems, Geosciences & Environment 6:e20393", "", True),
)
