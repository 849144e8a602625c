"""The sums: pure functions of exact numbers, and the worksheet that applies them to project, size and edition."""
