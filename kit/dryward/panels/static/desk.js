// The desk of a page that is worked on: sections with fields, tables and buttons, drawn from what the kernel
// says.  Each part has a key; what the reader does goes back as { key, value }.

function deskParts(parts, desk) {
  return (parts || []).filter(Boolean).map((part) => deskKinds[part.kind](part, desk));
}

function labelled(part, input, tail) {
  const id = `dw-${deskSerial()}`;
  input.id = id;
  const error = part.error ? make("span", { class: "dw-error", id: `${id}-error` }, part.error) : null;
  if (error) {
    input.setAttribute("aria-invalid", "true");
    input.setAttribute("aria-describedby", `${id}-error`);
  }
  if (part.bare) {
    input.setAttribute("aria-label", part.label);
    return make("span", { class: "dw-desk-bare" }, input, tail, error);
  }
  return make("div", { class: "dw-desk-field" }, make("label", { for: id }, part.label), make("span", { class: "dw-entry" }, input, tail), error,
    part.hint ? make("span", { class: "dw-hint" }, part.hint) : null);
}

let deskCount = 0;
function deskSerial() {
  deskCount += 1;
  return deskCount;
}

const deskKinds = {
  text: (part) => make("p", { class: part.class || null, role: part.alert ? "alert" : null }, part.text),
  list: (part) => make("ul", { class: "dw-desk-list" }, ...part.items.map((item) => make("li", {}, item))),
  lesson: (part) => (lessonAddress(part) ? lessonLink(part) : make("span", {}, part.text)),
  row: (part, desk) => make("div", { class: `dw-desk-row ${part.class || ""}` }, ...deskParts(part.parts, desk)),
  button: (part, desk) => button(part.key, part.text, () => desk.act(part.key, null),
    { disabled: part.disabled, title: part.title, "aria-label": part.label }),
  field: (part, desk) => {
    const input = reachable(make("input", {
      type: "text", class: "dw-typed dw-desk-typed", value: String(part.value ?? ""), size: part.size || 8,
      autocomplete: "off", spellcheck: "false",
      onchange: (event) => desk.act(part.key, event.target.value),
    }), part.key);
    return labelled(part, input, part.unit ? make("span", { class: "dw-unit" }, part.unit) : null);
  },
  area: (part, desk) => labelled(part, reachable(make("textarea", {
    class: "dw-desk-area", rows: part.rows || 3, onchange: (event) => desk.act(part.key, event.target.value),
  }, part.value ?? ""), part.key), null),
  select: (part, desk) => {
    const options = part.options.map((each) => make("option", { value: each.id, selected: each.id === part.value }, each.text));
    return labelled(part, reachable(make("select", {
      class: "dw-select dw-desk-select", onchange: (event) => desk.act(part.key, event.target.value),
    }, ...options), part.key), null);
  },
  check: (part, desk) => {
    const box = reachable(make("input", { type: "checkbox", checked: part.value, onchange: (event) => desk.act(part.key, event.target.checked) }), part.key);
    return make("label", { class: "dw-choice" }, box, make("span", {}, part.label));
  },
  file: (part, desk) => labelled(part, reachable(make("input", {
    type: "file", accept: part.accept, onchange: async (event) => {
      const file = event.target.files[0];
      if (!file) return;
      if (file.size > part.most) desk.act(`${part.key}-too-large`, file.name);
      else desk.act(part.key, file.name, [await file.arrayBuffer()]);
    },
  }), part.key), null),
  download: (part) => {
    const address = URL.createObjectURL(new Blob([part.bytes], { type: part.type }));
    return reachable(make("a", { class: "dw-button dw-desk-link", href: address, download: part.name }, part.text), part.key);
  },
  table: (part, desk) => make("div", { class: "dw-desk-scroll" }, make("table", { class: "dw-desk-table" },
    make("thead", {}, make("tr", {}, ...part.head.map((each) => make("th", { scope: "col" }, each)))),
    make("tbody", {}, ...part.rows.map((row) => make("tr", { class: row.class || null }, ...row.cells.map((cell, index) => {
      const inside = typeof cell === "string" ? [cell] : deskParts([cell], desk);
      return make(index ? "td" : "th", index ? {} : { scope: "row" }, ...inside);
    })))))),
  picture: (part) => {
    const address = URL.createObjectURL(new Blob([part.bytes], { type: "image/webp" }));
    const image = make("img", { class: "dw-picture", src: address, alt: part.alt });
    image.addEventListener("load", () => URL.revokeObjectURL(address), { once: true });
    return image;
  },
  progress: (part) => make("div", { class: "dw-desk-field" }, make("label", {}, part.label,
    make("progress", { max: String(part.total), value: String(part.done) })), make("span", {}, say("so-many-of", { done: part.done, total: part.total }))),
  card: (part) => make("div", { class: `dw-check ${{ "✓": "dw-speaks-for", "◆": "dw-near-limit", "▲": "dw-speaks-against" }[part.mark] || ""}` },
    make("h4", {}, make("span", { class: "dw-mark", "aria-hidden": "true" }, `${part.mark} `), part.title),
    ...part.lines.map((each) => make("p", {}, each)), make("p", { class: "dw-hint" }, part.small)),
};

function deskSection(section, desk) {
  const inside = deskParts(section.parts, desk);
  if (section.fold === undefined) {
    return make("section", { class: "dw-desk-section", "aria-label": section.title }, make("h3", {}, section.title), ...inside);
  }
  const box = make("details", { class: "dw-fold dw-desk-section", open: desk.open.has(section.key) || section.fold === "open" && !desk.shut.has(section.key) },
    reachable(make("summary", {}, section.title), `fold-${section.key}`), ...inside);
  box.addEventListener("toggle", () => {
    (box.open ? desk.open : desk.shut).add(section.key);
    (box.open ? desk.shut : desk.open).delete(section.key);
  });
  return box;
}

// Build the desk into its place; focus stays on the part that has it.
function putDesk(place, view, desk) {
  desk.unsaved = Boolean(view.unsaved);
  if (!desk.leave) {
    // Closing the tab with unsaved work asks first; a desk that is gone does not.
    desk.leave = (event) => {
      if (!desk.unsaved || !place.isConnected) return;
      event.preventDefault();
      event.returnValue = "";
    };
    window.addEventListener("beforeunload", desk.leave);
  }
  const focus = place.contains(document.activeElement) ? document.activeElement.dataset.key : null;
  place.replaceChildren(...(view.sections || []).map((section) => deskSection(section, desk)));
  if (!focus) return;
  const again = place.querySelector(`[data-key="${CSS.escape(focus)}"]`);
  if (again) again.focus({ preventScroll: true });
}
