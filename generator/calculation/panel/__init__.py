"""One tucked panel across: wishes come in, counts, marks, margins, check points and findings go out."""
