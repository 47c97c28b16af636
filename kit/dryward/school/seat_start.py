"""Run at the start of every kernel of a seat: its memory used up is said in one sentence."""


def _said(shell: object, kind: type, error: MemoryError, place: object, tb_offset: int | None = None) -> None:
    print(
        "The memory that this seat may use is used up. "
        "Choose Kernel > Restart Kernel, close other lessons, and open this lesson again; your answers are kept."
    )


if "get_ipython" in globals():
    get_ipython().set_custom_exc((MemoryError,), _said)  # type: ignore[name-defined] # noqa: F821
del _said
