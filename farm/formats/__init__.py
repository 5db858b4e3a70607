"""How numbers and days are written in each language that is ours."""
