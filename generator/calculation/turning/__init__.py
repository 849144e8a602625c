"""Tack rows: turn plans and wishes come in, turns, words, places of rows, draw-in and layers go out."""
