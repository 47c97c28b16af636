"""The files of the pages: their scripts and those of the widgets, for who came in."""

from http.client import responses

from jupyter_server.base.handlers import FileFindHandler
from tornado import web
from voila.static_file_handler import MultiStaticFileHandler


class _Inside:
    """A file that only who came in may have."""

    def get_current_user(self):
        """As for every other address."""
        return self.settings["identity_provider"].get_user(self)

    def prepare(self):
        """Look at the cookie."""
        if self.current_user is None and not self.settings["identity_provider"].sees_board(self):
            raise web.HTTPError(403)
        return super().prepare()

    def write_error(self, status_code, **why):
        """No more than the number."""
        self.finish(responses.get(status_code, "Trouble"))


class Static(_Inside, MultiStaticFileHandler):
    """The scripts of the pages."""

    def validate_absolute_path(self, root, absolute_path):
        """What is outside, or a folder, is not there."""
        try:
            return super().validate_absolute_path(root, absolute_path)
        except web.HTTPError:
            raise web.HTTPError(404) from None


class Extensions(FileFindHandler):
    """The scripts of the widgets."""

    async def prepare(self):
        """Look at the cookie before anything is looked for."""
        await super().prepare()
        if self.current_user is None:
            raise web.HTTPError(403)

    def write_error(self, status_code, **why):
        """No more than the number."""
        self.finish(responses.get(status_code, "Trouble"))
