"""One room a paper: from the ledger to what the page prints."""
