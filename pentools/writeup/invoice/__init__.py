"""The invoice as a page and as a table for a spreadsheet."""
