"""The record: everything of a job that its owner may see, for the owner, an insurer or the next repairer."""
