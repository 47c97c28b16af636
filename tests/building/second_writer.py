"""A program of its own that opens a job, waits for others to have opened it too, and saves it."""

import dataclasses

from dryward.building import job_files
from dryward.checks import PlainError


def write(path, years, opened, answers):
    """Save the job of a file with other years; the answer is the sentence it was told, or nothing.

    Who is told so keeps its work under a name of its own.
    """
    job, token = job_files.load(path)
    mine = dataclasses.replace(job, years=years)
    opened.wait(60)
    try:
        job_files.save(mine, path, token)
    except PlainError as reason:
        job_files.save(mine, path.with_name(f"mine-{years}.toml"), "new")
        answers.put((years, str(reason)))
    else:
        answers.put((years, ""))
