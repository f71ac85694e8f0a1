"""The command line: parse, call the job, show."""
