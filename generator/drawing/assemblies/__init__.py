"""How pieces go together: one file a kind of making up, each a small drawing."""
