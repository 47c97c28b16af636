"""The printed page of the roof on the bench."""

from dryward import storage
from dryward.checks import BadFile
from dryward.panels.bench import parts

_KINDS = {"pdf": "application/pdf", "html": "text/html"}


class Printing:
    """Makes the page from the findings, and offers it."""

    def __init__(self):
        self.made, self.trouble, self.said = {}, "", ""

    def make(self, checking, work, kind, size, system):
        """Make one form of the page and put it into the learner's folder.

        Parameters
        ----------
        checking : Checking
        work : Work
        kind : {"pdf", "html"}
        size : {"letter", "a4"}
        system : {"us", "si"}
        """
        self.trouble, self.said = "", ""
        if checking.review is None or checking.job != work.job:
            self.trouble = "Run all checks first: the page prints what they found."
            return
        from dryward.report import document, printed  # the PDF library is not needed before

        content = document.document(checking.review, system, work.name)
        made = printed.pdf(content, size) if kind == "pdf" else printed.html(content, size).encode("utf-8")
        name = f"{work.name.removesuffix('.toml')}.{kind}"
        self.made[kind] = (name, made)
        target = work.path(work.name).with_name(name)
        try:
            storage.write_whole(target, made)
            self.said = f"{name} stands in your folder."
        except OSError as error:
            raise BadFile(f"{name}: it cannot be written ({error.strerror}); save it with the link instead.") from None

    def section(self, size):
        """Buttons, and a link for what was made.

        Parameters
        ----------
        size : {"letter", "a4"}

        Returns
        -------
        dict
        """
        return parts.section(
            "print",
            "The printed page",
            parts.row(
                parts.select("print:size", "Paper", (("letter", "US letter"), ("a4", "A4")), size),
                parts.button("print:pdf", "Make the PDF"),
                parts.button("print:html", "Make the web page"),
                *(
                    parts.download(f"print:save-{kind}", f"Save {name}", name, content, _KINDS[kind])
                    for kind, (name, content) in self.made.items()
                ),
            ),
            parts.text(self.trouble, "dw-trouble", alert=True) if self.trouble else None,
            parts.text(self.said) if self.said else None,
            fold="open",
        )
