"""Pieces without tucks: each kind of piece of a project file is worked into its sizes and facts."""
