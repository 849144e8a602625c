"""Shapes that are no rectangles: their lines, how long these are, and where the cloth is cut; pure sums."""
