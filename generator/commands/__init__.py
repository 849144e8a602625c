"""The commands, one file each; with cli.py the only place that prints."""
