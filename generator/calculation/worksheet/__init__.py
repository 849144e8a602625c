"""The worksheet: a project, a size and an edition come in, everything that they come to goes out."""
