"""Run at the start of every kernel of a seat: its memory used up is said in one sentence."""

from dryward.language import message


def _said(
    shell: object,
    kind: type,
    error: MemoryError,
    place: object,
    tb_offset: int | None = None,
    # Asked for at the start: once the memory is used up no file can be read.
    words: str = message("school.memory-used-up"),
) -> None:
    print(words)


if "get_ipython" in globals():
    get_ipython().set_custom_exc((MemoryError,), _said)  # type: ignore[name-defined] # noqa: F821
del _said, message
