"""Writers: a plot, a document or a table in, bytes out."""
