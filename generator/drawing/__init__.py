"""Diagrams: a worksheet comes in, positions are decided as exact numbers, then drawn on a matplotlib Figure as SVG."""
