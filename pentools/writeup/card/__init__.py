"""The speaking card: what may be said of a pen to everybody, in short sentences on one page."""
