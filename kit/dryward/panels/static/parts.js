// Small helpers that every part of the page uses.

// What the page says by itself, in the reader's language; `say` puts facts in their places.
const texts = {};

function say(name, facts = {}) {
  return texts[name].replace(/\{(\w+)\}/g, (whole, fact) => (fact in facts ? facts[fact] : whole));
}

// A number as JavaScript writes it, with the reader's decimal mark; its minus is the hyphen of the keys.
function typedFigures(text) {
  return text.replace(".", () => texts["decimal-mark"]);
}

// No number is parted from its unit at the end of a line, no unit within itself, nor an R-value from its R.
function together(text) {
  const kept = text.replace(/(\d) (?=[^\s\d])/g, "$1\u00a0").replace(/\bR-(?=\d)/g, "R\u2011");
  return texts["parted-signs"].split("\n").reduce((found, sign) => found.replaceAll(sign, sign.replaceAll(" ", "\u00a0")), kept);
}

// The same of every text in what the kit tells.
function allTogether(told) {
  return JSON.parse(JSON.stringify(told), (name, each) => (typeof each === "string" ? together(each) : each));
}

// An element with attributes and children; a string child is text, never markup.
function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else element.setAttribute(name, value === true ? "" : value);
  }
  element.append(...children.filter((child) => child !== null && child !== undefined));
  return element;
}

// Lab acts on single keys ("m", "x", "d d") unless the focused element itself says no.
function reachable(element, key) {
  element.setAttribute("data-lm-suppress-shortcuts", "true");
  element.dataset.key = key;
  return element;
}

function button(key, words, act, attributes = {}) {
  return reachable(make("button", { type: "button", class: "dw-button", onclick: act, ...attributes }, words), key);
}

// A group of choices, one of which may be chosen: native radio buttons.
function choices(key, legend, texts, { chosen = null, locked = false, marks = {}, act }) {
  const group = make("fieldset", { class: "dw-choices" }, make("legend", {}, legend));
  texts.forEach((text, index) => {
    const radio = reachable(
      make("input", {
        type: "radio",
        name: `dw-${key}-${choices.serial}`,
        value: String(index),
        checked: chosen === index,
        disabled: locked,
        onchange: () => act(index),
      }),
      `${key}-${index}`,
    );
    const mark = marks[index] ? make("span", { class: "dw-mark" }, marks[index]) : null;
    group.append(make("label", { class: "dw-choice" }, radio, make("span", {}, text), mark));
  });
  choices.serial += 1;
  return group;
}
choices.serial = 0;

function setText(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

// A lesson's address: beside a notebook the notebook in the same folder, on the pages a lesson's name, on the
// same way; null where neither is known.
function lessonAddress({ id, file }) {
  const path = location.pathname;
  if (/\/lesson\/[^/]*$/.test(path)) return `${id}${location.search}`;
  if (path.endsWith(".ipynb")) return path.replace(/[^/]*$/, file);
  const config = document.getElementById("jupyter-config-data");
  const view = path.match(/\/(lab|doc)\b/);
  return config && view ? `${JSON.parse(config.textContent).baseUrl}${view[1]}/tree/${file}` : null;
}

function lessonLink(part) {
  return reachable(make("a", { href: lessonAddress(part), class: "dw-lesson-link" }, part.text), part.key);
}
