"""Values that others have printed, as case files, and what asks our sums for the same."""
