"""From a paper’s values to its file, at once or in the background."""
