"""Pages and sheets: worksheets and pictures come in, HTML text and PDF bytes go out."""
