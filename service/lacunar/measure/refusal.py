"""The one error for what is no length, or could be more than one."""


class LengthTextError(ValueError):
    """A text, or a bare number, that cannot be taken for a length.

    `text` is what was to be read, `position` the index in it of the character where reading
    stopped (its end where something is missing), `reason` what is wrong there and `remedy` what to
    write instead, both plain sentences.
    """

    def __init__(self, reason: str, position: int, text: str, remedy: str) -> None:
        super().__init__(f"{reason} {remedy}")
        self.reason = reason
        self.position = position
        self.text = text
        self.remedy = remedy
