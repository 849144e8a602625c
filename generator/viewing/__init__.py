"""Looking at a room while one writes: its files come in, pages go out to a browser on this machine."""
