"""Pieces without tucks and their closures: finished sizes come in, cut sizes and places go out."""
