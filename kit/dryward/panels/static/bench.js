// The bench of a page: sections with fields, tables and buttons, drawn from what the kernel
// says.  Each part has a key; what the reader does goes back as { key, value }.

function benchParts(parts, bench) {
  return (parts || []).filter(Boolean).map((part) => benchKinds[part.kind](part, bench));
}

function labelled(part, input, tail) {
  const id = `dw-${bench_serial()}`;
  input.id = id;
  const error = part.error ? make("span", { class: "dw-error", id: `${id}-error` }, part.error) : null;
  if (error) {
    input.setAttribute("aria-invalid", "true");
    input.setAttribute("aria-describedby", `${id}-error`);
  }
  if (part.bare) {
    input.setAttribute("aria-label", part.label);
    return make("span", { class: "dw-bench-bare" }, input, tail, error);
  }
  return make("div", { class: "dw-bench-field" }, make("label", { for: id }, part.label), make("span", { class: "dw-entry" }, input, tail), error,
    part.hint ? make("span", { class: "dw-hint" }, part.hint) : null);
}

let benchCount = 0;
function bench_serial() {
  benchCount += 1;
  return benchCount;
}

const benchKinds = {
  text: (part) => make("p", { class: part.class || null, role: part.alert ? "alert" : null }, part.text),
  head: (part) => make("h4", {}, part.text),
  list: (part) => make(part.ordered ? "ol" : "ul", {}, ...part.items.map((item) => make("li", {}, item))),
  // A lesson's address: in JupyterLab a notebook of the same folder, on the pages a lesson's name.
  lesson: (part) => {
    const lab = document.getElementById("jupyter-config-data");
    const base = lab ? JSON.parse(lab.textContent).baseUrl : "";
    const href = lab && /\/(lab|doc)\//.test(location.pathname)
      ? `${base}${/\/doc\//.test(location.pathname) ? "doc" : "lab"}/tree/${part.file}` : part.id;
    return reachable(make("a", { href, class: "dw-lesson-link" }, part.text), part.key);
  },
  row: (part, bench) => make("div", { class: `dw-bench-row ${part.class || ""}` }, ...benchParts(part.parts, bench)),
  button: (part, bench) => button(part.key, part.text, () => bench.act(part.key, part.value ?? null),
    { disabled: part.disabled, title: part.title, "aria-label": part.label, "aria-pressed": part.pressed === undefined ? null : String(part.pressed) }),
  field: (part, bench) => {
    const input = reachable(make("input", {
      type: "text", class: "dw-typed dw-bench-typed", value: String(part.value ?? ""), size: part.size || 8,
      list: part.options ? `dw-list-${part.key}` : null, disabled: part.disabled, autocomplete: "off", spellcheck: "false",
      onchange: (event) => bench.act(part.key, event.target.value),
    }), part.key);
    const offers = part.options
      ? make("datalist", { id: `dw-list-${part.key}` }, ...part.options.map((each) => make("option", { value: each })))
      : null;
    return labelled(part, input, make("span", {}, part.unit ? make("span", { class: "dw-unit" }, part.unit) : "", offers));
  },
  area: (part, bench) => labelled(part, reachable(make("textarea", {
    class: "dw-bench-area", rows: part.rows || 3, onchange: (event) => bench.act(part.key, event.target.value),
  }, part.value ?? ""), part.key), null),
  select: (part, bench) => {
    const options = part.options.map((each) => make("option", { value: each.id, selected: each.id === part.value }, each.text));
    return labelled(part, reachable(make("select", {
      class: "dw-select dw-bench-select", disabled: part.disabled, onchange: (event) => bench.act(part.key, event.target.value),
    }, ...options), part.key), null);
  },
  check: (part, bench) => {
    const box = reachable(make("input", { type: "checkbox", checked: part.value, onchange: (event) => bench.act(part.key, event.target.checked) }), part.key);
    return make("label", { class: "dw-choice" }, box, make("span", {}, part.label));
  },
  file: (part, bench) => labelled(part, reachable(make("input", {
    type: "file", accept: part.accept, onchange: async (event) => {
      const file = event.target.files[0];
      if (!file) return;
      if (file.size > part.most) bench.act(`${part.key}-too-large`, file.name);
      else bench.act(part.key, file.name, [await file.arrayBuffer()]);
    },
  }), part.key), null),
  download: (part) => {
    const address = URL.createObjectURL(new Blob([part.bytes], { type: part.type }));
    return reachable(make("a", { class: "dw-button dw-bench-link", href: address, download: part.name }, part.text), part.key);
  },
  table: (part, bench) => make("div", { class: "dw-bench-scroll" }, make("table", { class: `dw-bench-table ${part.class || ""}` },
    part.caption ? make("caption", {}, part.caption) : null,
    make("thead", {}, make("tr", {}, ...part.head.map((each) => make("th", { scope: "col" }, each)))),
    make("tbody", {}, ...part.rows.map((row) => make("tr", { class: row.class || null }, ...row.cells.map((cell, index) => {
      const inside = typeof cell === "string" ? [cell] : benchParts([cell], bench);
      return make(index ? "td" : "th", index ? {} : { scope: "row" }, ...inside);
    })))))),
  picture: (part) => {
    const address = URL.createObjectURL(new Blob([part.bytes], { type: part.type || "image/webp" }));
    const image = make("img", { class: "dw-picture", src: address, alt: part.alt });
    image.addEventListener("load", () => URL.revokeObjectURL(address), { once: true });
    return image;
  },
  progress: (part) => make("div", { class: "dw-bench-field" }, make("label", {}, part.label,
    make("progress", { max: String(part.total), value: String(part.done) })), make("span", {}, `${part.done} of ${part.total}`)),
  card: (part) => make("div", { class: `dw-check ${{ "✓": "dw-speaks-for", "◆": "dw-near-limit", "▲": "dw-speaks-against" }[part.mark] || ""}` },
    make("h4", {}, make("span", { class: "dw-mark", "aria-hidden": "true" }, `${part.mark} `), part.title),
    ...part.lines.map((each) => make("p", {}, each)), make("p", { class: "dw-hint" }, part.small)),
};

function benchSection(section, bench) {
  const inside = benchParts(section.parts, bench);
  if (section.fold === undefined) {
    return make("section", { class: `dw-bench-section ${section.class || ""}`, "aria-label": section.title }, make("h3", {}, section.title), ...inside);
  }
  const box = make("details", { class: "dw-fold dw-bench-section", open: bench.open.has(section.key) || section.fold === "open" && !bench.shut.has(section.key) },
    reachable(make("summary", {}, section.title), `fold-${section.key}`), ...inside);
  box.addEventListener("toggle", () => {
    (box.open ? bench.open : bench.shut).add(section.key);
    (box.open ? bench.shut : bench.open).delete(section.key);
  });
  return box;
}

// Build the bench into its place; focus stays on the part that has it.
function putBench(place, view, bench) {
  bench.unsaved = Boolean(view.unsaved);
  if (!bench.leave) {
    // Closing the tab with unsaved work asks first; a bench that is gone does not.
    bench.leave = (event) => {
      if (!bench.unsaved || !place.isConnected) return;
      event.preventDefault();
      event.returnValue = "";
    };
    window.addEventListener("beforeunload", bench.leave);
  }
  const focus = place.contains(document.activeElement) ? document.activeElement.dataset.key : null;
  place.replaceChildren(...(view.sections || []).map((section) => benchSection(section, bench)));
  if (!focus) return;
  const again = place.querySelector(`[data-key="${CSS.escape(focus)}"]`);
  if (again) again.focus({ preventScroll: true });
}
