"""The course of a job."""
