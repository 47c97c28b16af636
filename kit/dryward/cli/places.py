"""Where things are: the lessons that came with the kit, and the learner's own folder."""

from pathlib import Path

import platformdirs

from dryward.checks import BadFile

#: The folder of this package.
PACKAGE = Path(__file__).resolve().parent.parent
#: Of a server's ports.
HIGHEST_PORT = 65535
#: What the launcher hands to Jupyter.
JUPYTER = PACKAGE / "cli" / "jupyter"


def shipped_lessons():
    """The folder of the lessons that came with the kit.

    Returns
    -------
    Path
        In an installed kit inside the package, in a checkout beside it.

    Raises
    ------
    BadFile
        When neither is there.
    """
    for folder in (PACKAGE / "lessons", PACKAGE.parent.parent / "lessons"):
        if any(folder.glob("[0-9][0-9]-*.ipynb")):
            return folder
    raise BadFile("The lessons that came with the kit are missing; install the kit again.")


def own_lessons():
    """The folder the learner's own copy goes to, unless told otherwise.

    Returns
    -------
    Path
    """
    return platformdirs.user_documents_path() / "dryward-lessons"


def class_folder():
    """The folder in which the answers of a class are kept, unless told otherwise.

    Returns
    -------
    Path
    """
    return platformdirs.user_documents_path() / "dryward-class"
