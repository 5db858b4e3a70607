"""Spanish of the United States and Mexico: a point for decimals, Monday first."""

DECIMAL_SEPARATOR = "."
THOUSAND_SEPARATOR = ","
NUMBER_GROUPING = 3
FIRST_DAY_OF_WEEK = 1
