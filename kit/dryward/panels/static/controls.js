// Sliders, typed numbers and choices.

// Where a value stands along its slider, 0 at the left end to 1 at the right.
function fraction(spec, value) {
  return spec.log
    ? Math.log(value / spec.left) / Math.log(spec.right / spec.left)
    : (value - spec.left) / (spec.right - spec.left);
}

function valueAt(spec, part) {
  const at = Math.min(1, Math.max(0, part));
  return spec.log ? spec.left * (spec.right / spec.left) ** at : spec.left + at * (spec.right - spec.left);
}

// Where a slider stops: at even notches, and where it opened, so that it can be set back; a notch close by gives way.
function stopsOf(spec) {
  const home = fraction(spec, spec.start) * spec.notches;
  const stops = [];
  for (let notch = 0; notch <= spec.notches; notch += 1) {
    const near = notch % spec.notches ? 0.25 : 1e-6;
    if (Math.abs(notch - home) > near) {
      stops.push({ at: notch, value: Number(valueAt(spec, notch / spec.notches).toPrecision(10)) });
    }
  }
  return [...stops, { at: home, value: spec.start }].sort((a, b) => a.at - b.at);
}

// One arrow key moves from one stop to the next, a hand to the nearest.
function notched(spec, value, move) {
  const stops = stopsOf(spec);
  const place = fraction(spec, value) * spec.notches;
  let from;
  if (move > 0) from = stops.findLastIndex((stop) => stop.at <= place + 1e-6);
  else if (move < 0) from = stops.findIndex((stop) => stop.at >= place - 1e-6);
  else from = stops.reduce((best, stop, k) => (Math.abs(stop.at - place) < Math.abs(stops[best].at - place) ? k : best), 0);
  return stops[Math.min(stops.length - 1, Math.max(0, from + move))].value;
}

// As `SliderControl.say` writes it, with the hyphen of the keys: it stands in a field.
function shownNumber(spec, value) {
  if (!spec.log) return typedFigures(value.toFixed(spec.digits).replace(/^-(0(\.0+)?)$/, "$1"));
  return typedFigures(String(Number(value.toPrecision(value < 1 ? 2 : 3))));
}

// As it is read, not as it is typed: a hyphen is no minus to those who listen.
function spokenNumber(spec, value) {
  const number = shownNumber(spec, value);
  return number.startsWith("-") ? say("below-zero", { number: number.slice(1) }) : number;
}

function sliderControl(spec, page) {
  const id = `dw-${spec.name}-${choices.serial++}`;
  const range = reachable(
    make("input", {
      type: "range", id, min: "0", max: "1", step: "any", role: "slider", class: "dw-range",
      "aria-describedby": `${id}-strip`, disabled: page.locked,
      "aria-valuemin": Math.min(spec.left, spec.right), "aria-valuemax": Math.max(spec.left, spec.right),
    }),
    `slider-${spec.name}`,
  );
  const typed = reachable(
    make("input", {
      type: "text", class: "dw-typed", autocomplete: "off", spellcheck: "false",
      "aria-label": say("typed", { label: spec.label }), "aria-describedby": `${id}-error`, disabled: page.locked,
    }),
    `typed-${spec.name}`,
  );
  const strip = make("div", { class: "dw-strip", "aria-hidden": "true" });
  const stripWords = make("div", { class: "dw-strip-words", id: `${id}-strip` });
  const error = make("div", { class: "dw-error", id: `${id}-error`, role: "alert" });
  let value = spec.value;
  let sentWith = 0;
  let lastStrip = "";

  function show() {
    range.value = fraction(spec, value);
    range.setAttribute("aria-valuenow", Number(value.toPrecision(6)));
    range.setAttribute("aria-valuetext", say("amount", { number: spokenNumber(spec, value), unit: spec.unit }));
    if (document.activeElement !== typed) typed.value = shownNumber(spec, value);
  }
  function move(to) {
    if (to === value) return show();
    value = to;
    show();
    setText(error, "");
    sentWith = page.moved();
  }
  range.addEventListener("input", () => move(notched(spec, valueAt(spec, Number(range.value)), 0)));
  range.addEventListener("keydown", (event) => {
    const step = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[event.key];
    const end = { Home: spec.left, End: spec.right }[event.key];
    if (step === undefined && end === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    move(end === undefined ? notched(spec, value, step) : end);
  });
  const commit = () => {
    if (typed.value.trim() === shownNumber(spec, value)) return;
    page.send({ kind: "typed", name: spec.name, text: typed.value });
  };
  typed.addEventListener("change", commit);  // Enter makes a change too
  typed.addEventListener("keydown", (event) => {
    event.stopPropagation();
    if (event.key !== "Escape") return;
    typed.value = shownNumber(spec, value);
    setText(error, "");
    if (typed.getAttribute("aria-invalid") === "true") page.send({ kind: "typed", name: spec.name, text: null });
  });
  const head = make("div", { class: "dw-control-head" },
    make("label", { for: id, class: "dw-label" }, spec.label),
    make("span", { class: "dw-entry" }, typed, make("span", { class: "dw-unit" }, spec.unit)));
  const track = make("div", { class: "dw-track" }, range, spec.play ? playButton(spec, move, () => value, page) : null);
  const element = make("div", { class: "dw-control" }, head, track, strip, stripWords, error);
  show();
  return {
    element,
    value: () => value,
    update(live) {
      if (live.seen >= sentWith && live.values[spec.name] !== value) {
        value = live.values[spec.name];
        show();
      }
      const wrong = live.errors[spec.name] || "";
      setText(error, wrong);
      typed.setAttribute("aria-invalid", wrong ? "true" : "false");
      if (live.retype === spec.name && !wrong) typed.value = shownNumber(spec, value);
      const band = live.strips[spec.name];
      const key = JSON.stringify(band || null);
      if (key !== lastStrip) {
        lastStrip = key;
        strip.classList.toggle("dw-has-strip", Boolean(band));
        strip.replaceChildren(...(band ? band.spans : []).map(([from, to, state]) =>
          make("span", { class: `dw-span dw-is-${state.replaceAll(" ", "-")}`, style: `left:${from * 100}%;width:${(to - from) * 100}%` })));
        setText(stripWords, band ? band.words : "");
      }
    },
  };
}

// Steps a slider from end to end; nothing moves by itself until it is pressed.
function playButton(spec, move, value, page) {
  let timer = null;
  const stop = () => { clearInterval(timer); timer = null; setText(play, say("play")); play.setAttribute("aria-pressed", "false"); };
  const play = button(`play-${spec.name}`, say("play"), () => {
    if (timer) return stop();
    if (value() === spec.right) move(spec.left);
    const calm = window.matchMedia("(prefers-reduced-motion: reduce)").matches;
    timer = setInterval(() => {
      if (!play.isConnected || value() === spec.right) return stop();
      move(notched(spec, value(), 1));
    }, calm ? 1000 : spec.play);
    setText(play, say("pause"));
    play.setAttribute("aria-pressed", "true");
  }, { class: "dw-button dw-play", "aria-label": say("play-one", { label: spec.label }), "aria-pressed": "false", disabled: page.locked });
  return play;
}

function choiceControl(spec, page) {
  const id = `dw-${spec.name}-${choices.serial++}`;
  const select = reachable(
    make("select", { id, class: "dw-select", disabled: page.locked, "aria-describedby": `${id}-strip` },
      ...spec.options.map((option) => make("option", { value: option.id }, option.words))),
    `choice-${spec.name}`,
  );
  select.value = spec.value;
  const stripWords = make("div", { class: "dw-strip-words", id: `${id}-strip` });
  let sentWith = 0;
  select.addEventListener("change", () => { sentWith = page.moved(); });
  select.addEventListener("keydown", (event) => event.stopPropagation());
  return {
    element: make("div", { class: "dw-control dw-choosing" },
      make("div", { class: "dw-control-head" }, make("label", { for: id, class: "dw-label" }, spec.label)),
      select, stripWords),
    value: () => select.value,
    update(live) {
      if (live.seen >= sentWith && select.value !== live.values[spec.name]) select.value = live.values[spec.name];
      const band = live.strips[spec.name];
      setText(stripWords, band ? band.words : "");
    },
  };
}
