"""Diagrams: a worksheet comes in, positions are decided as exact numbers, then written as SVG."""
