"""A lesson's page made on a kernel: the one cell of the page is run, and its widget put into the template."""

from copy import deepcopy

from nbclient.exceptions import CellExecutionError, DeadKernelError
from voila.execute import VoilaExecutor, strip_code_cell_warnings
from voila.exporter import VoilaExporter
from voila.notebook_renderer import NotebookRenderer

from dryward.cli.classroom.lines import Gone


class Opening(NotebookRenderer):
    """Voila's own, on a kernel that is ready, over the line to it that is open already."""

    async def html(self, client, kernel, kernel_id):
        """The page.

        Parameters
        ----------
        client : AsyncKernelClient
        kernel : AsyncKernelManager
        kernel_id : str

        Returns
        -------
        str

        Raises
        ------
        Gone
            When the kernel died before the page was made.
        """
        self._client = client
        await self.initialize()
        return await self.generate_content_str(kernel_id, kernel)

    async def initialize(self):
        """Each lesson and the template are read once: when a class comes in together, there is no time to spare."""
        kept, told = self.request_handler.settings["openings"], self.voila_configuration
        if self.notebook_path not in kept:
            kept[self.notebook_path] = await self.load_notebook(self.notebook_path)
        if "exporter" not in kept:
            kept["exporter"] = VoilaExporter(
                template_paths=self.template_paths,
                template_name=told.template,
                config=self.traitlet_config,
                contents_manager=self.contents_manager,
                theme=told.theme,
                base_url=self.base_url,
            )
        self.cwd, self.exporter = "", kept["exporter"]
        self.template_name, self.theme = told.template, told.theme
        self.notebook = self.prelaunch_hook(
            self.request_handler, notebook=deepcopy(kept[self.notebook_path]), cwd=self.cwd
        )
        self.page_config["jupyterLabTheme"] = self.theme
        self.resources = {
            "base_url": self.base_url,
            "theme": self.theme,
            "template": self.template_name,
            "metadata": {"name": self.notebook_path},
            "page_config": self.page_config,
        }

    async def _jinja_kernel_start(self, nb, kernel_id, kernel_future):
        self.executor = VoilaExecutor(nb, km=kernel_future, config=self.traitlet_config, show_tracebacks=False)
        self.executor.kc = self._client
        self._client.allow_stdin = False
        return kernel_id

    async def _jinja_cell_generator(self, nb, kernel_id):
        for number, cell in enumerate(nb.cells):
            try:
                await self.executor.execute_cell(cell, None, number, store_history=False)
            except DeadKernelError:
                raise Gone from None
            except CellExecutionError:  # the template says it in plain words
                strip_code_cell_warnings(cell)
                self.executor.strip_code_cell_errors(cell)
            yield cell
