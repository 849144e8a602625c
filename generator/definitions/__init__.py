"""Project files: YAML text comes in, checked and frozen definitions with file, line and column go out."""
