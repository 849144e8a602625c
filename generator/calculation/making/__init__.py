"""What the work takes: thread, time, money, and all of it for a class."""
