"""Publishing: decides what is stale, runs workers, and is the only stage that writes."""
