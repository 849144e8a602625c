"""Seams as they are laid, sewn, and opened or turned out: what a step joins comes in, one picture goes out."""
