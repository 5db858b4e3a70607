"""Where the formulas for heat, frost and odds come from."""

# One source a line, so that the list reads as a bibliography.
# ruff: noqa: E501
# fmt: off

from __future__ import annotations

from reports.calc.sources.entry import Source, Tier

ENTRIES = (
    Source("HYNDMAN96", Tier.A, "Hyndman and Fan", "Sample quantiles in statistical packages", 1996, "American Statistician 50:361-365", "", False),
    Source("MCMASTER97", Tier.A, "McMaster and Wilhelm", "Growing degree-days: one equation, two interpretations", 1997, "Agricultural and Forest Meteorology 87:291-300, abstract", "", True),
    Source("MSU-GDD", Tier.A, "Michigan State University", "Degree days worked example", None, "Extension page", "", True),
    Source("NCEI-NORMALS", Tier.A, "NOAA National Centers for Environmental Information", "U.S. climate normals: documentation and station files", None, "1981-2010 and 1991-2020", "http://www1.ncdc.noaa.gov/pub/data/normals/1981-2010/supplemental/readme-supp.txt", True),
    Source("NSSH", Tier.A, "USDA-NRCS", "National soil survey handbook: frost-free days", None, "rule for odds of frost dates", "", True),
    Source("SHARPSHOOTR", Tier.A, "National Cooperative Soil Survey", "sharpshootR at 811de94, frost-free days and its test values", None, "open source, re-implemented here and not copied", "https://search.r-project.org/CRAN/refmans/sharpshootR/html/FFD.html", True),
    Source("UCIPM-SINE", Tier.A, "Zalom and others", "Degree-days: the calculation and use of heat units in pest management, leaflet 21373", 1983, "University of California, by way of its sine page and code", "", True),
    Source("UW-GDD", Tier.A, "University of Wisconsin Extension", "Growing degree days worked example", None, "Extension column", "", True),
    Source("VICTORY-NOAA", Tier.C, "Victory Seeds", "Frost dates for Clemson, South Carolina, reproducing NOAA's normals", None, "seed firm's page", "https://victoryseeds.com/a/h/frost-dates/Clemson+Univ%2C+SC", True),
    Source("XCLIM", Tier.A, "xclim developers", "xclim 0.62.0, climate indices", None, "open source, run for comparison", "https://pypi.org/project/xclim/", True),
)
