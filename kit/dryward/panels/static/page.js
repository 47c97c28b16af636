// The page of one lesson.  `frame` is what rarely changes (words, units, locks) and builds
// the page; `live` is what a slider changes and is written into it: one message a move.

// Narrower than this [px] the page is a phone's.
const NARROW = 560;

function switchPart(frame, page) {
  const toggle = (key, words, on, message, title) =>
    button(key, words, () => page.send(message), { "aria-pressed": String(on), title });
  return make("div", { class: "dw-switches", role: "group", "aria-label": say("switches") },
    toggle("us", say("us"), frame.system === "us", { kind: "system", value: "us" }, say("us-title")),
    toggle("si", say("si"), frame.system === "si", { kind: "system", value: "si" }, say("si-title")),
    toggle("projector", say("projector"), frame.projector, { kind: "projector", value: !frame.projector }, say("projector-title")),
    toggle("instructor", say("instructor"), frame.instructor, { kind: "instructor", value: !frame.instructor },
      say("instructor-title")));
}

function predictionPart(frame, page) {
  const ask = frame.prediction;
  if (!ask) return null;
  const part = make("section", { class: "dw-prediction", "aria-label": say("prediction") });
  if (frame.instructor) {
    const group = make("div", { class: "dw-hands" }, make("span", { class: "dw-ask" }, ask.prompt));
    ask.choices.forEach((text, index) => {
      const less = button(`less-${index}`, "−", () => page.send({ kind: "hands", choice: index, by: -1 }),
        { "aria-label": say("hand-fewer", { choice: text }) });
      const more = button(`more-${index}`, "+", () => page.send({ kind: "hands", choice: index, by: 1 }),
        { "aria-label": say("hand-more", { choice: text }) });
      const right = frame.reveal && index === ask.right;
      group.append(make("span", { class: `dw-hand ${right ? "dw-right" : ""}` }, less,
        make("output", {}, String(ask.hands[index])), more, make("span", {}, right ? say("marked-right", { choice: text }) : text)));
    });
    group.append(button("reveal", say(frame.reveal ? "hide-key" : "reveal-key"), () => page.send({ kind: "reveal" }),
      { "aria-pressed": String(frame.reveal) }));
    part.append(group);
  } else if (ask.chosen === null) {
    part.append(choices("prediction", ask.prompt, ask.choices, {
      act: (index) => page.send({ kind: "predict", choice: index }),
    }), make("div", { class: "dw-hint" },
      say(frame.locked ? "guess-locked" : "guess", { needs: frame.needs })));
  } else {
    part.append(make("span", { class: "dw-said" }, say("you-predicted"), make("strong", {}, ask.choices[ask.chosen])),
      button("reveal", say(frame.reveal ? "hide" : "what-is-right"), () => page.send({ kind: "reveal" }),
        { "aria-expanded": String(frame.reveal) }),
      button("again", say("again"), () => page.send({ kind: "predict", choice: null })));
  }
  if (frame.reveal) {
    const own = !frame.instructor && ask.chosen !== null;
    const right = ask.chosen === ask.right;
    const mark = own ? make("strong", { class: "dw-mark" }, say(right ? "bet-right" : "bet-not-right")) : null;
    part.append(make("div", { class: "dw-reveal", role: "status" }, mark, mark ? " " : null, ask.reply));
  }
  return part;
}

// --- below the working part: folds, takeaway, cautions ---

function steps(list) {
  return list.map((step) => make("li", {},
    make("span", { class: "dw-step-words" }, step.words),
    step.formula ? make("code", { class: "dw-formula" }, step.formula) : null,
    step.result ? make("strong", { class: "dw-result" }, step.result) : null));
}

function fold(key, title, body, opened, toggled) {
  const summary = reachable(make("summary", {}, title), `fold-${key}`);
  const element = make("details", { class: "dw-fold" }, summary, body);
  element.open = opened;
  element.addEventListener("toggle", () => toggled(key, element.open));
  return element;
}

function listPart(title, items, kind) {
  if (!items.length) return null;
  return make("section", { class: kind }, make("h3", {}, title), make("ul", {}, ...items.map((item) =>
    item.title ? make("li", {}, make("strong", {}, say("titled", { title: item.title })), item.text) : make("li", {}, item))));
}

// --- pictures ---

// A picture is two images of one size: the ground that stands, and over it what moves.
function layeredPicture() {
  // Both are put on the screen in the frame that shows them, never one a little later.
  const still = { alt: "", draggable: "false", decoding: "sync" };
  const ground = make("img", { class: "dw-ground", "aria-hidden": "true", ...still });
  const moving = make("img", { class: "dw-picture", ...still });
  moving.addEventListener("contextmenu", () => laidTogether(ground, moving));
  return { element: make("div", { class: "dw-layers" }, ground, moving), ground, moving, next: null, under: null, asked: 0, shown: 0 };
}

// Who asks to save or copy a picture gets the whole of it, not the layer that lies on top.
function laidTogether(ground, moving) {
  if (!moving.naturalWidth) return;
  const canvas = make("canvas", { width: ground.naturalWidth, height: ground.naturalHeight });
  for (const each of [ground, moving]) canvas.getContext("2d").drawImage(each, 0, 0);
  putAddress(moving, canvas.toDataURL("image/png"));
}

function picturePart(frame, kept) {
  const column = make("div", { class: "dw-pictures" });
  frame.pictures.forEach((each, index) => {
    // Before the bet there is no picture at all, only where it will stand.
    if (frame.locked) return column.append(make("p", { class: "dw-cover" }, say("covered")));
    // The same img elements throughout: a new one would blink while it decodes.
    if (!kept[index]) kept[index] = layeredPicture();
    column.append(kept[index].element);
  });
  return column;
}

// On a phone the sentence and one control at a time stand at the lower edge, the picture in sight above them.
function dockPart(frame, page, parts, board) {
  const several = frame.controls.length > 1;
  const shown = frame.controls.find((spec) => spec.name === page.inUse) || frame.controls[0];
  // The words of a strip may be many lines: they stand under the dock, not in it.
  const words = frame.controls.map((spec) => parts.controls[spec.name].element.querySelector(".dw-strip-words"));
  const show = (name) => {
    page.inUse = name;
    frame.controls.forEach((spec, index) => {
      words[index].hidden = parts.controls[spec.name].element.hidden = spec.name !== name;
    });
  };
  if (shown) show(shown.name);
  const which = several ? reachable(make("select", { class: "dw-select", "aria-label": say("in-use") },
    ...frame.controls.map((spec) => make("option", { value: spec.name, selected: spec === shown }, spec.label))), "in-use") : null;
  if (which) {
    which.addEventListener("change", () => show(which.value));
    which.addEventListener("keydown", (event) => event.stopPropagation());
  }
  board.classList.toggle("dw-one", several);
  return [make("div", { class: "dw-dock" }, parts.sentence, parts.trouble, which, board), ...words];
}

function buildStage(frame, page, kept) {
  const stage = stagePart(frame, page, kept);
  const parts = { controls: stage.controls, readouts: {}, stage };
  parts.trouble = make("p", { class: "dw-trouble", role: "alert" });
  parts.status = make("div", { class: "dw-status", role: "status" });
  parts.desk = make("div", { hidden: true });
  const root = pageRoot(frame, page, "dw-on-stage", stage.element, parts.trouble,
    frame.unkept ? make("p", { class: "dw-unkept", role: "alert" }, frame.unkept) : null, parts.status);
  return { root, parts };
}

// On a phone the picture comes first, as soon as it may be seen.
function pictureFirst(frame, page) {
  return frame.narrow && !page.locked;
}

function carePart(frame) {
  return frame.care ? make("span", { class: "dw-care" }, frame.care) : null;
}

// The frame of a page with its title and switches.
function pageRoot(frame, page, kind, ...children) {
  const root = make("article", {
    class: `dw-page ${frame.projector ? "dw-projector" : ""} ${frame.narrow ? "dw-narrow" : ""} ${page.locked ? "dw-locked" : ""} ${kind}`,
    lang: texts.language, "aria-label": say("lesson", { number: frame.number, title: frame.title }),
  },
    make("header", { class: "dw-title" },
      make("span", { class: "dw-number", "aria-hidden": "true" }, String(frame.number)),
      make("h2", { class: "dw-question" }, frame.question, kind || pictureFirst(frame, page) ? null : carePart(frame)),
      !kind && pictureFirst(frame, page) ? null : switchPart(frame, page)), ...children);
  // The reader's own size of type, 16 being usual; a projector has its own.
  if (!frame.projector) root.style.fontSize = `${14 / 16 * frame.type_size}px`;
  return root;
}

function build(frame, page, kept) {
  const controls = {};
  for (const spec of frame.controls) {
    controls[spec.name] = spec.kind === "choice" ? choiceControl(spec, page) : sliderControl(spec, page);
  }
  const parts = { controls, readouts: {} };
  const board = make("div", { class: "dw-board", role: "group", "aria-label": say("controls") },
    ...frame.controls.map((spec) => controls[spec.name].element),
    ...frame.actions.map((each) => button(`action-${each.name}`, each.words,
      () => page.send({ kind: "action", name: each.name }), { class: "dw-button dw-action", disabled: page.locked })));
  const readouts = make("dl", { class: "dw-readouts" }, ...frame.readouts.map((each) => {
    const value = make("dd", { class: "dw-value" });
    const also = make("dd", { class: "dw-also" });
    parts.readouts[each.name] = { value, also };
    return make("div", { class: "dw-readout" }, make("dt", {}, each.words), value, also);
  }));
  parts.sentence = make("p", { class: "dw-sentence" });
  parts.given = make("p", { class: "dw-given" });
  parts.trouble = make("p", { class: "dw-trouble", role: "alert" });
  parts.steps = make("ol", { class: "dw-steps" });
  parts.status = make("div", { class: "dw-status", role: "status" });
  parts.desk = make("div", { class: "dw-desk" });
  const pictures = picturePart(frame, kept);
  parts.work = make("div", { class: "dw-work" }, ...(frame.narrow
    ? [pictures, ...dockPart(frame, page, parts, board), parts.given, readouts]
    : [board, make("div", { class: "dw-view" }, pictures, parts.sentence, parts.trouble, parts.given, readouts)]));
  const later = pictureFirst(frame, page);
  // A class has voted in the beats.
  const above = make("div", { class: "dw-above" }, frame.stage && frame.instructor ? null : predictionPart(frame, page),
    frame.stage ? button("beats", say("to-the-beats"), () => page.send({ kind: "beat", number: 0 })) : null);
  const opened = (key) => page.open.has(key);
  const folds = make("div", { class: "dw-folds" },
    frame.has_arithmetic && !page.locked ? fold("arithmetic", say("arithmetic"), parts.steps, opened("arithmetic"), page.toggled) : null,
    ...frame.folds.map((each) => fold(each.key, each.title,
      make("ul", {}, ...each.items.map((item) => make("li", {}, item))), opened(each.key), page.toggled)));
  const root = pageRoot(frame, page, "", later ? null : above, frame.controls.length || frame.pictures.length ? parts.work : parts.sentence,
    ...(later ? [carePart(frame), switchPart(frame, page), above] : []), parts.desk, folds,
    frame.unkept ? make("p", { class: "dw-unkept", role: "alert" }, frame.unkept) : null,
    frame.questions.length ? questionsPart(frame.questions, frame.still_waits, page) : null, leavingPart(frame, page),
    frame.takeaway ? make("section", { class: "dw-takeaway" }, make("h3", {}, say("takeaway")), make("p", {}, frame.takeaway,
      carePart(frame))) : null,
    listPart(say("cautions"), frame.cautions, "dw-cautions"), parts.status);
  return { root, parts };
}

function addressOf(bytes, type) {
  return URL.createObjectURL(new Blob([bytes], { type }));
}

// Loaded apart from the page: afterwards its address shows at once wherever it is put.
function loaded(address) {
  return new Promise((done) => {
    const image = new Image();
    image.onload = image.onerror = () => done(image);
    image.src = address;
  });
}

// The address before is released: what it showed stays until the new one is there.
function putAddress(image, address) {
  const old = image.src;
  image.src = address;
  if (old) URL.revokeObjectURL(old);
}

// Show what moves, and the ground under it.  A new ground waits until both are loaded, so that no
// curve stands over the axis of another; who comes late is dropped if a newer one already shows.
async function putPicture(picture, bytes, moving) {
  picture.asked += 1;
  const turn = picture.asked;
  if (!picture.next || picture.next.bytes !== bytes) {
    const address = addressOf(bytes, "image/webp");
    picture.next = { bytes, address, loaded: loaded(address) };
  }
  const ground = picture.next;
  const over = addressOf(moving, "image/png");
  if (ground !== picture.under) await Promise.all([ground.loaded, loaded(over)]);
  if (turn < picture.shown) {
    URL.revokeObjectURL(over);
    if (ground !== picture.under) URL.revokeObjectURL(ground.address);
    return;
  }
  picture.shown = turn;
  if (ground !== picture.under) putAddress(picture.ground, ground.address);
  picture.under = ground;
  putAddress(picture.moving, over);
}

function render({ model, el }) {
  Object.assign(texts, model.get("texts"));
  // Each message says which version of the kit has drawn this page.
  const send = (message, buffers) => model.send({ version: VERSION, ...message }, undefined, buffers);
  const kept = Object.assign([], { stage: {} });
  let shown = null;
  let parts = null;
  let rest = null;
  let serial = 0;
  const desk = {
    open: new Set(),
    shut: new Set(),
    act: (key, value, buffers) => send({ kind: "desk", key, value }, buffers),
  };
  const page = {
    locked: false,
    open: new Set(),
    replies: new Map(),
    send,
    moved() {
      const values = {};
      for (const [name, control] of Object.entries(parts.controls)) values[name] = control.value();
      serial = Math.max(serial, model.get("live").seen || 0) + 1;
      model.set("moves", { version: VERSION, serial, system: model.get("frame").system, values });
      model.save_changes();
      return serial;
    },
    toggled(key, open) {
      if (open === page.open.has(key)) return;
      if (open) page.open.add(key);
      else page.open.delete(key);
      send({ kind: "fold", key, open });
    },
  };

  function rebuild() {
    const frame = model.get("frame");
    if (!frame.controls) return;
    const focus = el.contains(document.activeElement) ? document.activeElement.dataset.key : null;
    page.locked = frame.locked;
    const staged = frame.stage && frame.stage.at < frame.stage.count;
    const built = (staged ? buildStage : build)(frame, page, staged ? kept.stage : kept);
    parts = built.parts;
    el.replaceChildren(built.root);
    if (staged) parts.stage.started();
    shown = null;
    putDesk(parts.desk, model.get("desk"), desk);
    update();
    if (focus) {
      const again = el.querySelector(`[data-key="${focus}"]`) || el.querySelector(".dw-range, .dw-select");
      if (again) again.focus({ preventScroll: true });
    }
  }

  function update() {
    const live = model.get("live");
    if (!parts || !live.values) return;
    setText(parts.trouble, live.trouble);
    if (parts.stage) {
      parts.stage.update(live, model.get("stills"));
      tell(live.trouble || (live.stage ? live.stage.status : ""));
      return;
    }
    for (const control of Object.values(parts.controls)) control.update(live);
    const grounds = model.get("grounds");
    live.pictures.forEach((bytes, index) => {
      const picture = kept[index];
      if (!picture) return;
      if (shown !== live.drawn) putPicture(picture, grounds[index], bytes);
      const alt = live.alts[index];
      if (picture.moving.alt !== alt) picture.moving.alt = alt;
    });
    if (live.pictures.length) shown = live.drawn;
    live.readouts.forEach((each) => {
      const place = parts.readouts[each.name];
      if (!place) return;
      setText(place.value, together(each.value));
      setText(place.also, together(each.also));
    });
    setText(parts.sentence, together(live.sentence));
    parts.sentence.className = `dw-sentence${live.state ? ` dw-is-${live.state.replaceAll(" ", "-")}` : ""}`;
    setText(parts.given, together(live.given));
    parts.work.classList.toggle("dw-busy", live.busy);
    if (page.open.has("arithmetic")) parts.steps.replaceChildren(...steps(live.steps));
    tell(live.trouble || (page.locked ? say("covered") : together(live.sentence)));
  }

  // A screen reader hears the sentence once the slider has come to rest, not at every step.
  function tell(sentence) {
    clearTimeout(rest);
    rest = setTimeout(() => parts && setText(parts.status, sentence), 400);
  }

  // An instructor shows the answer by "r" and steps the beats by "n" and "b"; what was not shown is shown before "n"
  // goes on.  Where there is no bet "r" takes hold of the control.
  function revealKey(event) {
    // In a notebook the keys are Lab's wherever the page has not the focus; on a page of its own they work anywhere.
    if (!el.contains(event.target) && (!el.isConnected || el.closest(".jp-Notebook, .jp-WindowedPanel-outer"))) return;
    const typing = event.target.matches("input[type=text], textarea, select");
    const frame = model.get("frame"), key = event.key.toLowerCase();
    if (typing || event.ctrlKey || event.metaKey || !frame.instructor || !"rnb".includes(key)) return;
    const stage = frame.stage;
    const to = stage && { n: Math.min(stage.count, stage.at + 1), b: Math.max(0, stage.at - 1) }[key];
    if (key !== "r" && !stage) return;
    event.preventDefault();
    event.stopPropagation();
    const bets = stage && stage.at < stage.count ? stage.bets : null;
    if (key === "r" && bets && !bets.length) el.querySelector(".dw-card :is(.dw-range, .dw-select)")?.focus();
    else if (key === "r" || (key === "n" && bets && bets.some((bet) => bet.open))) send({ kind: "reveal" });
    else send({ kind: "beat", number: to });
  }

  // What is built anew between the press and the release of a button takes the click with it, as when somebody types
  // in a field and goes straight on to "Save": it waits until the press has ended.
  const PRESSED = "button, a, summary, label, input[type=radio], input[type=checkbox], input[type=range]";
  const waiting = new Set();
  let pressed = false;
  const unpressed = (anew) => () => (pressed ? waiting.add(anew) : anew());
  const press = (event) => { pressed = event.button === 0 && Boolean(event.target.closest(PRESSED)); };
  const release = () => setTimeout(() => { // after the click
    pressed = false;
    const left = [...waiting];
    waiting.clear();
    left.forEach((anew) => anew());
  });
  // Whoever else hears of a release may keep it to himself, so it is heard first; a field that loses the focus is none.
  const RELEASED = [["pointerup", true], ["pointercancel", true], ["blur", false]];

  el.classList.add("dw-root");
  document.addEventListener("keydown", revealKey);
  el.addEventListener("pointerdown", press, true);
  for (const [kind, first] of RELEASED) window.addEventListener(kind, release, first);
  const changeFrame = unpressed(rebuild);
  const changeDesk = unpressed(() => parts && putDesk(parts.desk, model.get("desk"), desk));
  model.on("change:frame", changeFrame);
  model.on("change:live", update);
  model.on("change:desk", changeDesk);
  rebuild();
  send({ kind: "opened" });
  // A phone has pictures of its own: the page says when its place has become as narrow as one, or wide again.
  let narrow = model.get("frame").narrow;
  const sized = new ResizeObserver(() => {
    const now = el.clientWidth < NARROW;
    if (!el.clientWidth || now === narrow) return;
    narrow = now;
    send({ kind: "narrow", value: now });
  });
  sized.observe(el);
  // The index follows what was done in other windows since it was last in view.
  const watch = new IntersectionObserver((found) => found.some((each) => each.isIntersecting) && send({ kind: "seen" }));
  if (model.get("frame").number === 0) watch.observe(el);
  return () => {
    clearTimeout(rest);
    watch.disconnect();
    sized.disconnect();
    document.removeEventListener("keydown", revealKey);
    el.removeEventListener("pointerdown", press, true);
    for (const [kind, first] of RELEASED) window.removeEventListener(kind, release, first);
    model.off("change:frame", changeFrame);
    model.off("change:live", update);
    model.off("change:desk", changeDesk);
    for (const picture of kept) {
      picture.shown = Infinity; // what is still loading releases itself
      for (const image of [picture.ground, picture.moving]) URL.revokeObjectURL(image.src);
    }
  };
}

export default { render };
