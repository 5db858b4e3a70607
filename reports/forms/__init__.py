"""What is asked before something is worked out."""
