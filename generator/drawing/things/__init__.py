"""The finished thing as a line drawing: laid-out pieces and the form they take come in, one picture goes out."""
