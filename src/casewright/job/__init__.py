"""The job: its file, and what can be done with it, one use case a module."""
