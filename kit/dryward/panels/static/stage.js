// The stage: one beat of a lesson.  The scene is lines of SVG, words of the page laid over it, and a
// canvas on which vapor moves; `frame.stage` has the words and bets, `live.stage` what is so now.

const SVG = "http://www.w3.org/2000/svg";

// The place (axes, along, across) in px of a scene's drawing.
function placed(still, [axes, s, d]) {
  const [ox, oy, ax, ay, cx, cy] = still.axes[axes];
  return [ox + s * ax + d * cx, oy + s * ay + d * cy];
}

function set(shape, attributes) {
  for (const [name, value] of Object.entries(attributes)) shape.setAttribute(name, value);
  return shape;
}

const svg = (tag, attributes) => set(document.createElementNS(SVG, tag), attributes);

const pairs = (points) => points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ");

// A drop, or a crystal of frost, at a place; `size` is its radius.
function bead([x, y], size, frost) {
  if (frost) {
    const c = size * 0.87, h = size * 0.5;
    return svg("path", { class: "sc-frost", d: `M${x} ${y - size}v${2 * size}M${x - c} ${y - h}l${2 * c} ${size}M${x - c} ${y + h}l${2 * c} ${-size}` });
  }
  return svg("path", {
    class: "sc-drop",
    d: `M${x} ${y - 1.5 * size}C${x + 0.4 * size} ${y - 0.7 * size} ${x + size} ${y - 0.3 * size} ${x + size} ${y + 0.2 * size}`
      + `A${size} ${size} 0 0 1 ${x - size} ${y + 0.2 * size}C${x - size} ${y - 0.3 * size} ${x - 0.4 * size} ${y - 0.7 * size} ${x} ${y - 1.5 * size}Z`,
  });
}

// Water stands along a face in drops: more of it is more and larger drops.
function beads([[x0, y0], [x1, y1]], amount, frost) {
  const long = Math.hypot(x1 - x0, y1 - y0);
  const size = 4.5 + 7 * Math.min(1, amount);
  const count = Math.max(3, Math.round((long / 46) * (0.45 + 0.55 * Math.min(1, amount))));
  return Array.from({ length: count }, (_, k) => {
    const part = (k + 0.5) / count;
    return bead([x0 + part * (x1 - x0), y0 + part * (y1 - y0)], size * (k % 2 ? 0.82 : 1), frost);
  });
}

function arrowShape([[x0, y0], [x1, y1]], share) {
  const long = Math.hypot(x1 - x0, y1 - y0) || 1;
  const [ux, uy] = [(x1 - x0) / long, (y1 - y0) / long];
  const half = 4 + 13 * Math.min(1, share), head = Math.min(long, 2.1 * half + 8), wing = 1.9 * half;
  const at = (along, aside) => [x0 + along * ux - aside * uy, y0 + along * uy + aside * ux];
  return [at(0, half), at(long - head, half), at(long - head, wing), at(long, 0), at(long - head, -wing), at(long - head, -half), at(0, -half)];
}

// A place in the unit square: those of 0, 1, 2 ... fill it evenly, the same each time (as `scenery.scattered`).
const scattered = (k) => [(0.5 + k * 0.754878) % 1, (0.5 + k * 0.56984) % 1];

// Vapor that stands between two corners: so many dots.
function standing([[x0, y0], [x1, y1]], count) {
  return Array.from({ length: count }, (_, k) => {
    const [s, d] = scattered(k);
    return svg("circle", { class: "sc-vapor", r: 6, cx: x0 + s * (x1 - x0), cy: y0 + d * (y1 - y0) });
  });
}

function drawMark(still, mark) {
  const points = mark.points.map((place) => placed(still, place));
  if (mark.kind === "dots") return standing(points, mark.count);
  if (mark.kind === "ticks") return points.flatMap((from, k) => (k % 2 ? [] : [svg("polyline", { class: "sc-tick", points: pairs([from, points[k + 1]]) })]));
  const look = `sc-mark sc-${mark.look}`;
  if (mark.kind === "line") return [svg("polyline", { class: look, points: pairs(points) })];
  if (mark.kind === "area") return [svg("polygon", { class: `${look} sc-area`, points: pairs(points) })];
  if (mark.kind === "arrow") return [svg("polygon", { class: `${look} sc-arrow`, points: pairs(arrowShape(points, mark.amount)) })];
  return beads(points, mark.amount, mark.kind === "frost");
}

// --- vapor that moves: so many dots a minute along a path, by a clock of its own --------

// Dots are sent out evenly; each crosses the end of its path once.  `crossed` counts them.
class Flows {
  constructor() {
    this.flows = [];
    this.dots = [];
    this.crossed = [];
    this.seconds = 4.5; // from one end of a path to the other
  }
  set(flows) {
    if (JSON.stringify(flows) === JSON.stringify(this.flows)) return;
    // A path that goes on with another rate goes on with its lanes; what is new begins.
    const before = (list, start) => flows.map((flow, k) => (list && k in list ? list[k] : start(flow)));
    this.flows = flows;
    this.crossed = before(this.crossed, () => 0);
    this.due = before(this.due, (flow) => (flow.rate > 0 ? 0.5 : 0));
    this.sent = before(this.sent, () => 0);
    this.dots = this.dots.filter((dot) => dot.flow < flows.length);
  }
  step(seconds) {
    this.flows.forEach((flow, index) => {
      this.due[index] += (seconds * flow.rate) / 60;
      while (this.due[index] >= 1) {
        this.due[index] -= 1;
        // The golden section scatters them evenly over the spread, the same each time.
        const lane = ((this.sent[index] * 0.618034 + 0.31) % 1) - 0.5;
        this.sent[index] += 1;
        this.dots.push({ flow: index, part: 0, lane });
      }
    });
    for (const dot of this.dots) dot.part += seconds / this.seconds;
    this.dots = this.dots.filter((dot) => {
      if (dot.part < 1) return true;
      this.crossed[dot.flow] += 1;
      return false;
    });
  }
  // Where each dot is, which way it goes, and in what look.
  places(still) {
    return this.dots.map((dot) => {
      const { points, spread, look } = this.flows[dot.flow];
      const at = dot.part * (points.length - 1);
      const k = Math.min(points.length - 2, Math.floor(at)), rest = at - k;
      const [axes, s0, d0] = points[k], [, s1, d1] = points[k + 1];
      const [from, to] = [placed(still, points[k]), placed(still, points[k + 1])];
      const spot = placed(still, [axes, s0 + rest * (s1 - s0) + dot.lane * spread, d0 + rest * (d1 - d0)]);
      return [...spot, Math.atan2(to[1] - from[1], to[0] - from[0]), look];
    });
  }
}

// Vapor is a dot; moving air is a dart, which points the way it goes.
function dot(pen, [x, y], size) {
  pen.moveTo(x + size, y);
  pen.arc(x, y, size, 0, 6.2832);
}

function dart(pen, [x, y], size, angle) {
  const [c, s] = [Math.cos(angle) * size * 1.25, Math.sin(angle) * size * 1.25];
  for (const [k, [along, aside]] of [[1.9, 0], [-1.2, 1.05], [-0.6, 0], [-1.2, -1.05]].entries()) {
    pen[k ? "lineTo" : "moveTo"](x + along * c - aside * s, y + along * s + aside * c);
  }
  pen.closePath();
}

// The place nearest to one that is wanted where a box of a size fits into a room and covers nothing that is taken.
function free(taken, [wide, high], [x, y], [w, h]) {
  const inside = (left, top) => [Math.max(3, Math.min(wide - w - 3, left)), Math.max(3, Math.min(high - h - 3, top))];
  const covers = ([left, top]) => taken.some(([a, b, c, d]) => left < c && left + w > a && top < d && top + h > b);
  for (let off = 0; off < Math.max(wide, high); off += 5) {
    // Up and down before sideways: words stay at the height of what they name.
    for (const turn of off ? [1, -1, 0.75, -0.75, 0.5, -0.5, 0.25, -0.25, 0, 2] : [0]) {
      for (const side of off && Math.abs(turn) < 1 ? [1, -1] : [1]) {
        const angle = (turn * Math.PI) / 2;
        const found = inside(x + side * off * Math.cos(angle), y + off * Math.sin(angle));
        if (!covers(found)) return found;
      }
    }
  }
  return null;
}

// --- one scene ---------------------------------------------------------------------------

function sceneView(title, index, page) {
  const drawn = svg("svg", { class: "dw-drawn", "aria-hidden": "true" });
  const ghost = svg("g", { class: "dw-ghost" }), marks = svg("g", {}), ground = svg("g", {});
  const back = svg("g", {}), front = svg("g", {});
  drawn.append(back, ground, ghost, marks, front);
  const film = filmScene(back, front);
  const canvas = make("canvas", { class: "dw-vapor", "aria-hidden": "true" });
  const tags = make("div", { class: "dw-tags" });
  const spots = make("div", { class: "dw-spots" });
  const box = make("div", { class: "dw-box" }, drawn, canvas, tags, spots);
  const element = make("figure", { class: "dw-scene", "data-scene": index }, title ? make("figcaption", {}, title) : null, box);
  const flows = new Flows();
  Object.assign(canvas, { flows, film });
  let stills = null, still = null, now = null, markText = "", tagText = "", moved = 0;

  function shape() {
    const found = page.shape();
    if (!stills || still === stills[found]) return false;
    still = stills[found];
    const [wide, high] = still.size;
    drawn.setAttribute("viewBox", `0 0 ${wide} ${high}`);
    box.style.setProperty("--ratio", wide / high);
    const mark = `sc${choices.serial++}`;
    // The drawing is the kit's own and has no words in it.
    ground.innerHTML = still.svg.replaceAll("@", mark);
    ghost.replaceChildren();
    return true;
  }

  function put() {
    if (!still || !now) return;
    const text = JSON.stringify([now.marks, still.size]);
    if (text !== markText) {
      // What was drawn before the last move stays as thin lines until the next one; vapor that is gone leaves none.
      const clock = performance.now();
      if (markText && clock - moved > 700) ghost.replaceChildren(...[...marks.children].filter((each) => !each.matches(".sc-vapor")).map((each) => each.cloneNode(true)));
      moved = clock;
      // Water that is seen for the first time gathers; a move only changes how much there is.
      marks.classList.toggle("dw-fresh", markText === "");
      markText = text;
      marks.replaceChildren(...now.marks.flatMap((mark) => drawMark(still, mark)));
    }
    flows.set(now.flows);
    const words = JSON.stringify(now.tags);
    if (words !== tagText) {
      tagText = words;
      tags.replaceChildren(...now.tags.map((each) => make("span", { class: `dw-tag dw-tag-${each.look || "plain"} ${each.minor ? "dw-minor" : ""}`, "data-film": each.film }, each.text)));
    }
    arrange();
  }

  // Words stand at their places, pushed apart and into the picture where they would not fit.
  function arrange() {
    if (!still) return;
    const [wide, high] = still.size;
    const room = [box.clientWidth, box.clientHeight];
    const taken = [];
    [...spots.children].forEach((spot) => {
      const [x, y] = placed(still, spot.at);
      spot.style.left = `${(100 * x) / wide}%`;
      spot.style.top = `${(100 * y) / high}%`;
      const half = spot.offsetWidth / 2, up = spot.offsetHeight / 2;
      const px = (x / wide) * room[0], py = (y / high) * room[1];
      taken.push([px - half, py - up, px + half, py + up]);
    });
    const order = [...tags.children].map((tag, k) => [tag, k]).sort(([, a], [, b]) => Boolean(now.tags[a]?.minor) - Boolean(now.tags[b]?.minor));
    order.forEach(([tag, k]) => {
      const each = now.tags[k];
      if (!each) return;
      const [x, y] = placed(still, each.at);
      const w = tag.offsetWidth, h = tag.offsetHeight, gap = 7;
      const shift = { left: [-w - gap, -h / 2], right: [gap, -h / 2], over: [-w / 2, -h - gap], under: [-w / 2, gap], middle: [-w / 2, -h / 2] }[each.side];
      const found = free(taken, room, [(x / wide) * room[0] + shift[0], (y / high) * room[1] + shift[1]], [w, h]);
      // What only names a line makes way where there is no room for it.
      tag.style.visibility = found ? "visible" : "hidden";
      if (!found) return;
      const [left, top] = found;
      tag.style.left = `${left}px`;
      tag.style.top = `${top}px`;
      taken.push([left - 2, top - 2, left + w + 2, top + h + 2]);
    });
  }

  function paint() {
    if (!still) return;
    const ratio = window.devicePixelRatio || 1;
    const wide = Math.round(box.clientWidth * ratio), high = Math.round(box.clientHeight * ratio);
    if (canvas.width !== wide || canvas.height !== high) Object.assign(canvas, { width: wide, height: high });
    const pen = canvas.getContext("2d");
    pen.clearRect(0, 0, wide, high);
    const scale = wide / still.size[0];
    const size = Math.max(3.2 * ratio, 5.5 * scale);
    pen.strokeStyle = "#ffffff";
    pen.lineWidth = ratio;
    const all = (film.film ? film.flows : flows).places(still);
    for (const kind of new Set(all.map((each) => each[3]))) {
      pen.fillStyle = page.color(kind);
      pen.beginPath();
      for (const [x, y, angle, look] of all) if (look === kind) (look === "air-flow" ? dart : dot)(pen, [x * scale, y * scale], size, angle);
      pen.fill();
      pen.stroke();
    }
  }

  return {
    element, spots, flows, film, box, arrange, paint,
    showFilm(time, known) {
      if (film.show(time, tags, known)) arrange();
      paint();
    },
    // How far along the year of a film a pointer is; null beside it.
    yearAt(event) {
      if (!still.axes.year) return null;
      const at = box.getBoundingClientRect(), [wide, high] = still.size, [x0, y0, far, , , up] = still.axes.year;
      const x = ((event.clientX - at.left) / at.width) * wide, y = ((event.clientY - at.top) / at.height) * high;
      return y > y0 + up ? held((x - x0) / far, 0, 1) : null;
    },
    nearest(event) {
      // The spot that is nearest to a pointer.
      const at = box.getBoundingClientRect();
      let best = null, least = Infinity;
      [...spots.children].forEach((spot) => {
        const far = Math.hypot(parseFloat(spot.style.left) / 100 * at.width - (event.clientX - at.left), parseFloat(spot.style.top) / 100 * at.height - (event.clientY - at.top));
        if (far < least) [best, least] = [spot, far];
      });
      return best;
    },
    update(newStills, newNow) {
      if (newStills) stills = newStills;
      if (newNow) now = newNow;
      shape();
      film.load(now && now.film, still);
      put();
      paint();
    },
    reshape() {
      if (shape()) markText = "";
      if (now) film.load(now.film, still);
      put();
      arrange();
      paint();
    },
  };
}

// --- the bet: spots in the picture and a list of choices are one control -------------------

const GLYPHS = { in: "↓", out: "↑", none: "=" };

// An instructor counts the hands of a class, and sees them again beside what is so.
function handsOf(bet, marks, page) {
  return make("div", { class: "dw-hands" }, make("span", { class: "dw-ask" }, bet.prompt), ...bet.choices.map((choice, k) => {
    const words = `${marks[k]}  ${choice.text}`;
    const count = (by, sign, name) => button(`${name}-${k}`, sign, () => page.send({ kind: "hands", choice: k, by }),
      { "aria-label": say(`hand-${name === "less" ? "fewer" : "more"}`, { choice: choice.text }) });
    return make("span", { class: `dw-hand ${bet.right === k ? "dw-right" : ""}` },
      bet.open ? count(-1, "−", "less") : null, make("output", {}, String(bet.hands[k])), bet.open ? count(1, "+", "more") : null,
      make("span", {}, bet.right === k ? say("marked-right", { choice: words }) : words,
        bet.replies[k] ? make("span", { class: "dw-hand-reply" }, bet.replies[k]) : null));
  }));
}

function betPart(bet, number, frame, scenes, page, restore, last) {
  const card = make("div", { class: `dw-bet ${bet.open ? "dw-open" : ""} ${bet.said ? "dw-said-above" : ""}` });
  const marks = bet.choices.map((choice, k) => GLYPHS[choice.glyph] || String.fromCharCode(65 + k));
  const shownSpots = bet.open || bet.chosen !== null || bet.right !== null;
  // What is picked and not laid yet stays when the page is built anew: of this bet alone.
  let picked = bet.chosen ?? (bet.open && restore.picked?.bet === bet.name ? restore.picked.choice : null);
  const lay = bet.open ? button("lay", say("lay-bet"), () => {
    restore.picked = null;
    page.send({ kind: "bet", choice: picked });
  }, { class: "dw-button dw-main", disabled: picked === null }) : null;
  const inPicture = [];
  function pick(k, focus) {
    picked = k;
    restore.picked = { bet: bet.name, choice: k };
    inPicture.forEach((spot, each) => spot.classList.toggle("dw-picked", each === k));
    const radios = card.querySelectorAll("input");
    radios[k].checked = true;
    if (focus) radios[k].focus({ preventScroll: true });
    lay.disabled = false;
  }
  if (shownSpots) {
    bet.choices.forEach((choice, k) => {
      if (!bet.open && k !== bet.chosen && k !== bet.right) return;
      const spot = make("div", {
        class: `dw-spot ${k === picked ? "dw-picked" : ""} ${!bet.open && k === bet.chosen ? "dw-was-bet" : ""} ${bet.right === k ? "dw-is-so" : ""}`,
        "aria-hidden": "true", "data-choice": k,
      }, marks[k]);
      spot.at = choice.at;
      inPicture[k] = spot;
      scenes[choice.scene].spots.append(spot);
      if (bet.open && !frame.instructor) spot.addEventListener("click", () => pick(k, true));
    });
  }
  if (bet.open) {
    const group = choices(`bet-${number}`, bet.prompt, bet.choices.map((choice, k) => `${marks[k]}  ${choice.text}`),
      { chosen: picked, act: (k) => pick(k, false) });
    // Enter lays the bet that is picked.
    group.addEventListener("keydown", (event) => event.key === "Enter" && picked !== null && lay.click());
    if (frame.instructor) card.append(handsOf(bet, marks, page));
    else card.append(group, lay);
    // What is taken hold of in the picture goes to the nearest spot.
    for (const scene of frame.instructor ? [] : scenes) {
      let held = false;
      scene.spots.addEventListener("pointerdown", (event) => { held = true; const near = scene.nearest(event); if (near) pick(Number(near.dataset.choice), false); });
      scene.spots.addEventListener("pointermove", (event) => { const near = held && scene.nearest(event); if (near) pick(Number(near.dataset.choice), false); });
      for (const end of ["pointerup", "pointerleave", "pointercancel"]) scene.spots.addEventListener(end, () => { held = false; });
      scene.spots.classList.add("dw-grab");
    }
  } else if (bet.chosen !== null || bet.right !== null) {
    const said = bet.chosen !== null ? say("your-bet", { choice: bet.choices[bet.chosen].text }) : bet.prompt;
    if (!bet.counted) card.append(make("p", { class: "dw-laid" }, said));
    if (bet.right !== null && !bet.counted) {
      const good = bet.chosen === bet.right;
      card.append(make("p", { class: `dw-reply ${good ? "dw-right" : ""}` }, make("strong", {}, say(good ? "right" : "not-right")), " ", bet.reply));
    }
  }
  if (frame.instructor && bet.open) {
    card.append(button("reveal", say(last ? "show-it" : "next-bet"), () => page.send({ kind: "reveal" }), { class: "dw-button dw-main" }));
  } else if (frame.instructor && bet.counted) card.prepend(handsOf(bet, marks, page));
  return card;
}

// --- read aloud, by the browser's own voice -------------------------------------------------

function speaker(words) {
  const voice = window.speechSynthesis;
  if (!voice || !window.SpeechSynthesisUtterance) return null;
  const listen = button("listen", say("read-aloud"), () => {
    if (listen.getAttribute("aria-pressed") === "true") return hush();
    voice.cancel();
    const speech = new SpeechSynthesisUtterance(words());
    speech.lang = texts.language;
    speech.onend = hush;
    listen.setAttribute("aria-pressed", "true");
    voice.speak(speech);
  }, { "aria-pressed": "false" });
  function hush() {
    voice.cancel();
    listen.setAttribute("aria-pressed", "false");
  }
  // It stops when anything is touched.
  const touched = (event) => {
    if (!listen.isConnected) {
      hush();
      for (const kind of ["pointerdown", "keydown"]) document.removeEventListener(kind, touched, true);
    } else if (!listen.contains(event.target)) hush();
  };
  for (const kind of ["pointerdown", "keydown"]) document.addEventListener(kind, touched, true);
  const seen = () => { listen.hidden = voice.getVoices().length === 0; };
  voice.addEventListener?.("voiceschanged", seen);
  seen();
  return listen;
}

// --- the beat ---------------------------------------------------------------------------------

function stagePart(frame, page, kept) {
  const stage = allTogether(frame.stage);
  const fresh = kept.beat !== stage.id;
  if (fresh) Object.assign(kept, { beat: stage.id, picked: null, year: "", film: { at: null, runs: false, seen: false } });
  const own = {
    shape: () => {
      const alone = stage.titles.length < 2;
      return element.clientWidth < 640 ? (alone ? "tall" : "strip") : alone ? "wide" : "post";
    },
    color: (look) => getComputedStyle(element).getPropertyValue(`--q-${look}`) || "#0072b2",
  };
  const scenes = (stage.titles.length > 1 ? stage.titles : [""]).map((title, k) => sceneView(title, k, own));
  const bets = stage.bets.map((bet, k) => betPart(bet, k, frame, scenes, page, kept, k === stage.bets.length - 1));
  const standing = frame.controls.find((each) => each.name === stage.control);
  const spec = standing && stage.control_words ? { ...standing, label: stage.control_words } : standing;
  const control = spec ? (spec.kind === "choice" ? choiceControl(spec, page) : sliderControl(spec, page)) : null;
  const reduced = window.matchMedia("(prefers-reduced-motion: reduce)");
  const film = filmPart(scenes, stage.titles, kept, reduced, (runs) => element.classList.toggle("dw-rolling", runs));
  const answer = make("p", { class: "dw-answer" }), also = make("p", { class: "dw-also" });
  // A class sees the answer first: under all its replies it would be out of sight on a projector.
  const outcome = make("div", { class: "dw-outcome" }, answer, also);
  const open = stage.bets.some((bet) => bet.open);
  const step = (number) => () => page.send({ kind: "beat", number });
  const last = stage.at + 1 === stage.count;
  const next = button("next", say(last ? "to-the-bench" : "next-beat"), step(stage.at + 1), { class: "dw-button dw-main dw-next", disabled: open });
  const pause = button("pause", say("hold-vapor"), () => { kept.held = !kept.held; showPause(); },
    { "aria-pressed": "false" });
  function showPause() {
    pause.setAttribute("aria-pressed", String(Boolean(kept.held)));
  }
  showPause();
  const task = make("p", { class: "dw-task" }, frame.instructor && open ? say("hands-up") : stage.ask);
  const sayLine = make("p", { class: "dw-say" }, stage.say);
  const place = make("p", { class: "dw-beat" }, say("beat-of", { at: stage.at + 1, count: stage.count + 1 }));
  const words = () => [stage.say, stage.ask, ...bets.map((each) => each.textContent), answer.textContent].filter(Boolean).join(" ");
  const scale = make("p", { class: "dw-scale" });
  const keys = frame.instructor ? make("p", { class: "dw-keys" }, say(stage.bets.length ? "keys-bet" : "keys-move")) : null;
  const given = make("p", { class: "dw-given-line" });
  // What is proposed in the first beat, or in this one, has its care beside it.
  const mind = stage.care || (stage.at === 0 ? frame.care : "");
  const care = mind ? make("p", { class: "dw-care" }, mind) : null;
  const card = make("div", { class: "dw-card" }, make("div", { class: "dw-lead" }, place, sayLine, care),
    ...(stage.ask ? [task] : []), control ? make("div", { class: "dw-board", role: "group", "aria-label": say("controls") }, control.element) : null,
    film.element, ...(frame.instructor && !open ? [outcome, ...bets] : [...bets, outcome]),
    make("div", { class: "dw-walk" },
      stage.at > 0 ? button("back", say("beat-before"), step(stage.at - 1)) : null,
      stage.bets.length && !open ? button("again", say("again"), () => page.send({ kind: "predict", choice: null })) : null,
      speaker(words), pause,
      stage.may_leave && !last ? button("leave", say("to-the-bench"), step(stage.count)) : null, next), keys, given, scale);
  // As high as what is left of the window, or of the notebook's own part of it.
  function fit() {
    const lab = element.closest(".jp-WindowedPanel-outer, .jp-Notebook");
    const above = element.getBoundingClientRect().top - (lab ? element.closest(".dw-page").getBoundingClientRect().top : -window.scrollY);
    element.style.setProperty("--room-high", `${Math.round((lab ? lab.clientHeight - 26 : window.innerHeight - 14) - above)}px`);
  }
  const element = make("section", { class: `dw-stage ${scenes.length > 1 ? "dw-twin" : ""}`, "data-beat": stage.id, "aria-label": say("beat-of", { at: stage.at + 1, count: stage.count + 1 }) },
    make("div", { class: "dw-scenes" }, ...scenes.map((each) => each.element)), card);
  let before = null, watching = null;
  function draw(now) {
    if (!element.isConnected) return;
    const seconds = before === null ? 0 : Math.min(0.1, (now - before) / 1000);
    before = now;
    const moves = !kept.held && !reduced.matches && !document.hidden;
    if (!document.hidden) film.step(seconds);
    for (const scene of scenes) {
      if (!moves || !(scene.flows.flows.length || scene.flows.dots.length)) continue; // nothing moves
      scene.flows.step(seconds);
      scene.paint();
    }
    requestAnimationFrame(draw);
  }
  return {
    element,
    controls: control ? { [spec.name]: control } : {},
    started() {
      fit();
      watching = new ResizeObserver(() => fit() || scenes.forEach((scene) => scene.reshape()));
      watching.observe(element);
      for (const scene of scenes) scene.box.addEventListener("click", (event) => open || film.tapped(scene.yearAt(event)));
      // The space bar stops the film wherever the focus is, but for a notebook, whose keys are its own.
      const key = (event) => {
        if (!element.isConnected) document.removeEventListener("keydown", key);
        else if (element.contains(event.target) || event.target === document.body) film.key(event);
      };
      document.addEventListener("keydown", key);
      requestAnimationFrame(draw);
    },
    update(live, stills) {
      if (control) control.update(live);
      const now = allTogether(live.stage);
      setText(given, together(live.given));
      if (!now || now.id !== stage.id) return; // of another beat, whose words come next
      scenes.forEach((scene, k) => scene.update(stills[k], now.scenes[k]));
      const year = JSON.stringify(now.scenes.map((each) => each.film && each.film.moisture));
      kept.film.changed = kept.year !== "" && kept.year !== year && now.scenes[0].film;
      kept.year = now.scenes[0].film ? year : "";
      film.update();
      const moves = now.scenes.some((each) => each.flows.length);
      pause.hidden = !moves;
      // What is counted or measured in the picture has its scale printed.
      const measured = now.scenes.some((each) => each.film || each.marks.some((mark) => mark.kind === "dots" || mark.kind === "ticks"));
      setText(scale, moves || measured ? stage.scale : "");
      setText(answer, now.told);
      setText(also, now.also);
      element.classList.toggle("dw-done", now.done);
      // With motion turned off the dots stand where they would be after a while.
      if (reduced.matches && moves) for (const scene of scenes) if (!scene.flows.dots.length) for (let k = 0; k < 60; k += 1) scene.flows.step(0.1);
    },
  };
}
