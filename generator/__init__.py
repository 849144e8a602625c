"""Printable instruction sheets, per size, for sewing projects made of hand-manipulated tucks."""
