"""The handout: acts of a worksheet, planned on even pages, with their pictures drawn at the size they get."""
