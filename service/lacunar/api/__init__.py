"""The HTTP service: resources, problems, the published description, and the server it runs on.

Comes in: a request. Goes out: an answer in the media type asked for, or a problem (RFC 9457).
Must not happen here: arithmetic, decisions about a ceiling, wording of a fault. A resource reads
what it was asked, calls one function of `workflow`, and hands back what that made.
"""
