"""Pages for the day the inspector comes, and for every day before it."""
