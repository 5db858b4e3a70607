"""What templates of reports may call."""
