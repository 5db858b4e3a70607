"""Looking ahead: forecasts, windows and gaps, from the years on record."""
