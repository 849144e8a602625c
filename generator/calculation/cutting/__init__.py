"""Cloth: cut sizes come in, layouts, joins and lengths to buy go out."""
