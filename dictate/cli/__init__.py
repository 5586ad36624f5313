"""The command line: options in, note and files out, one line for every error."""
