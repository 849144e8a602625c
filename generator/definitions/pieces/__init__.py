"""Kinds of piece: each class owns its word, its edges and its measures; ``kinds`` knows them all."""
