"""Makers: the open room, a place to write and what is told come in; files are written, and a card goes out."""
