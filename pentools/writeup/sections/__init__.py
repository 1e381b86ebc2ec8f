"""One module a stage: the stage's entries as blocks of a page, for the owner or for publication."""
