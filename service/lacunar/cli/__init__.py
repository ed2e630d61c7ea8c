"""The command line: the workflow from a shell.

Comes in: arguments and spec files. Goes out: files, JSON or plain lines on standard output, and an
exit code; everything meant for a person's eye goes to standard error.
Must not happen here: anything a program calling the service would also need.
"""
