"""Project files that were written to do harm, and what checks that they do none."""
