"""The making up of a thing, in words and order: pieces, seams and techniques come in, recipes and findings go out."""
