// Runs a lesson of dryward when it is opened, and gives it a quiet page.  Nothing else is
// ever run: the file must be one of the lessons the launcher named, and say so in its metadata.
// Written by hand so that nothing has to be built.
(() => {
  let scope = null;

  async function shared(name) {
    const versions = scope[name];
    const newest = Object.keys(versions).sort().pop();
    return (await versions[newest].get())();
  }

  const STYLE = `
    .dw-lesson .jp-Notebook { --jp-cell-prompt-width: 0px; --jp-notebook-padding: 6px; }
    .dw-lesson .jp-InputPrompt, .dw-lesson .jp-OutputPrompt, .dw-lesson .jp-OutputArea-promptOverlay { display: none; }
    .dw-lesson .jp-Notebook-footer { display: none; }
    .dw-lesson .jp-Cell { padding: 1px 4px; }
    .dw-lesson .jp-Placeholder-content { height: 18px; min-height: 18px; padding: 0 6px; border-color: transparent; background: transparent; }
    .dw-lesson .jp-InputPlaceholder .jp-Placeholder-content .jp-MoreHorizIcon { height: 12px; }
    .dw-lesson .jp-PlaceholderText { font-size: 11px; line-height: 18px; color: #4d5962; }
    .dw-lesson .jp-MarkdownOutput h1 { font-size: 1.35em; margin: 2px 0; }
    .dw-lesson .jp-MarkdownOutput p { margin: 2px 0 4px; }
    .dw-lesson .jp-OutputArea-output { overflow: visible; }
  `;

  function isLesson(panel, names) {
    const flag = panel.model && panel.model.getMetadata("dryward");
    return Boolean(flag && flag.lesson && names.includes(panel.context.path));
  }

  async function open(panel, names, NotebookActions) {
    await panel.context.ready;
    if (!isLesson(panel, names)) return;
    panel.addClass("dw-lesson");
    panel.toolbar.hide();
    await panel.sessionContext.ready;
    await panel.revealed;
    // Not "run all": that scrolls to the last cell, and the page would move under a learner's click.
    await NotebookActions.runCells(panel.content, panel.content.widgets, panel.sessionContext);
  }

  async function extension() {
    const [{ INotebookTracker, NotebookActions }, { PageConfig }] = await Promise.all([
      shared("@jupyterlab/notebook"), shared("@jupyterlab/coreutils"),
    ]);
    const names = JSON.parse(PageConfig.getOption("drywardLessons") || "[]");
    return {
      __esModule: true,
      default: {
        id: "dryward-lessons:open",
        autoStart: true,
        requires: [INotebookTracker],
        activate: (app, tracker) => {
          const style = document.createElement("style");
          style.textContent = STYLE;
          document.head.append(style);
          tracker.widgetAdded.connect((_, panel) => {
            open(panel, names, NotebookActions).catch((reason) => console.warn("dryward:", reason));
          });
        },
      },
    };
  }

  window._JUPYTERLAB = window._JUPYTERLAB || {};
  window._JUPYTERLAB["dryward-lessons"] = {
    init: (given) => { scope = given; },
    get: async () => { const found = await extension(); return () => found; },
  };
})();
