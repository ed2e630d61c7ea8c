"""Whether a printed name is the one it stands for."""


def says(text: str, of: str) -> bool:
    """Whether a label's text is the id, or the beginning of a long name and an ellipsis."""
    return text == of or (text.endswith("…") and of.startswith(text[:-1]) and len(text) > 1)
