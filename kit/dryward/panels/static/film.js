// A year as a film over the roof (`pictures/film.py` cuts it).  A month goes by as one day and night; the film is
// stopped where the learner taps, and then says in a sentence what is so.  Who asked for less motion steps by month.

const FILM_SECONDS = 20, MONTHS = 12;
const DUSK = [240, 176, 120], CLEAR = [190, 222, 244], GRAY = [212, 219, 224], NIGHT = [27, 38, 70];
const EARTH = [186, 170, 140], GRASS = [150, 184, 114], LEAF = [92, 146, 60], BUD = [158, 196, 96], RUST = [206, 128, 48];

const mixed = (a, b, part) => a.map((each, k) => each + part * (b[k] - each));
const colored = (channels) => `rgb(${channels.map(Math.round).join(",")})`;
const held = (value, low, high) => Math.max(low, Math.min(high, value));
// Between the numbers of a row; before its first and after its last it stands.
function along(row, at) {
  const k = held(Math.floor(at), 0, row.length - 1), next = Math.min(k + 1, row.length - 1);
  return row[k] + held(at - k, 0, 1) * (row[next] - row[k]);
}

// What a film has at a time, in months from its start.
function filmAt(film, time) {
  const month = held(Math.floor(time), 0, MONTHS - 1), part = held(time - month, 0, 1);
  const day = film.months.slice(0, month).reduce((sum, each) => sum + each, 0) + part * film.months[month];
  const step = (rows) => along(rows[month], part * rows[month].length - 0.5);
  const [low, swing] = film.sun[month];
  const before = (month + (part < 0.5 ? 11 : 0)) % MONTHS, share = part < 0.5 ? part + 0.5 : part - 0.5;
  const leaf = (of) => of(film.leaves[before]) + share * (of(film.leaves[(before + 1) % MONTHS]) - of(film.leaves[before]));
  return {
    month, day, hour: 24 * part,
    moisture: along(film.moisture, day - 0.5),
    drops: film.drops.length ? along(film.drops, day - 0.5) : 0,
    outdoors: film.outdoors[month][Math.min(7, Math.floor(part * 8))],
    cloud: step(film.cloud) / 9, inner: step(film.inner), outer: step(film.outer),
    sun: low - swing * Math.cos(2 * Math.PI * part),
    leaves: leaf(Math.abs), turned: leaf((each) => (each < 0 ? 1 : 0)),
    part: Math.min(film.said[month].length - 1, Math.floor(part * film.said[month].length)),
  };
}

// The time of a day of a film.
function timeOf(film, day) {
  let month = 0;
  while (day >= film.months[month]) day -= film.months[month++];
  return month + day / film.months[month];
}

// The sentence of a time, with the numbers that stand in the picture.
function filmSays(film, time) {
  const now = filmAt(film, time);
  const facts = { moisture: film.readings[Math.round(now.moisture)], outdoors: now.outdoors };
  return film.said[now.month][now.part].replace(/\{(\w+)\}/g, (whole, fact) => facts[fact] ?? whole);
}

// What moves in one scene: behind the house sky, sun, clouds, ground and a tree; over it gauge, curve and drops.
function filmScene(back, front) {
  const flows = new Flows();
  flows.seconds = 1.2;
  let film = null, still = null, parts = null, wet = "", spots = [];

  function build() {
    const [wide, high] = still.size;
    const { slope, year } = still.axes;
    const eave = slope[0] - 34, base = year[1] + year[5] - 10, radius = Math.min(44, 0.42 * eave), x = 0.46 * eave;
    const leaves = [[0, -0.35, 0.72], [-0.5, 0.2, 0.62], [0.5, 0.2, 0.62], [0, 0.3, 0.7]].map(([dx, dy, r]) =>
      ({ size: r * radius, shape: svg("circle", { cx: x + dx * radius, cy: base - 2.2 * radius + dy * radius, class: "sc-leaf" }) }));
    const branch = `M${x} ${base}V${base - 2 * radius}M${x} ${base - 1.2 * radius}l${0.6 * radius} ${-0.9 * radius}M${x} ${base - 1.4 * radius}l${-0.55 * radius} ${-0.8 * radius}M${x} ${base - 2 * radius}l${0.25 * radius} ${-0.7 * radius}`;
    const cloud = (left, top, size) => svg("path", {
      class: "sc-cloud", d: `M${left * wide} ${top * high}h${88 * size}a${22 * size} ${22 * size} 0 0 0 ${-6 * size} ${-43 * size}a${32 * size} ${32 * size} 0 0 0 ${-60 * size} ${-3 * size}a${24 * size} ${24 * size} 0 0 0 ${-22 * size} ${46 * size}z`,
    });
    const size = wide / 1000 + 0.1;
    parts = {
      sky: svg("rect", { width: wide, height: high }),
      stars: svg("g", { class: "sc-stars" }),
      moon: svg("path", { class: "sc-moon", d: `M${0.055 * wide} ${0.1 * high}a34 34 0 1 0 26 58a28 28 0 1 1 -26 -58z` }),
      glow: svg("circle", { class: "sc-glow", r: 46 }), sun: svg("circle", { class: "sc-sun", r: 25 }),
      clouds: [cloud(0.3, 0.13, size), cloud(0.04, 0.27, size), cloud(0.6, 0.14, size), cloud(0.17, 0.44, 0.9 * size)],
      earth: svg("path", { d: `M0 ${base - 8}q${eave / 2} ${-16} ${eave + 60} 6V${high}H0z`, class: "sc-earth-line" }),
      trunk: svg("path", { d: branch, class: "sc-trunk" }), leaves,
      level: svg("polygon", { class: "sc-mark sc-area sc-moisture-content" }),
      curve: svg("polyline", { class: "sc-mark sc-moisture-content" }), whole: svg("polyline", { class: "sc-reel-whole" }),
      lines: svg("g", {}), mark: svg("line", { class: "sc-reel" }), here: svg("circle", { class: "sc-reel-here", r: 8 }), drops: svg("g", {}),
    };
    for (let k = 0; k < 26; k += 1) {
      const [s, d] = scattered(k);
      parts.stars.append(svg("circle", { cx: s * wide, cy: 0.5 * d * high, r: 1.4 + (k % 3) * 0.5 }));
    }
    back.replaceChildren(parts.sky, parts.stars, parts.moon, parts.glow, parts.sun, ...parts.clouds, parts.earth, parts.trunk, ...leaves.map((each) => each.shape));
    front.replaceChildren(parts.level, parts.lines, parts.whole, parts.curve, parts.mark, parts.here, parts.drops);
    wet = "";
  }

  function outside(now) {
    const [wide, high] = still.size;
    const light = held((now.sun + 0.14) / 0.3, 0, 1), dusk = Math.exp(-((now.sun / 0.13) ** 2)) * 0.6;
    const dimmed = (color) => colored(mixed(mixed(color, NIGHT, 0.55), color, light));
    set(parts.sky, { fill: colored(mixed(NIGHT, mixed(mixed(CLEAR, GRAY, now.cloud), DUSK, dusk), light)) });
    set(parts.stars, { opacity: ((1 - light) * (1 - 0.7 * now.cloud)).toFixed(2) });
    set(parts.moon, { opacity: ((1 - light) * (1 - 0.5 * now.cloud)).toFixed(2) });
    const cx = (0.18 + ((now.hour - 12) / 6) * 0.2) * wide, cy = (0.57 - 0.48 * now.sun) * high;
    for (const each of [parts.glow, parts.sun]) set(each, { cx: cx.toFixed(1), cy: cy.toFixed(1), opacity: now.sun > -0.2 ? 1 : 0 });
    parts.clouds.forEach((each, k) => set(each, {
      opacity: (held(now.cloud * 5 - k, 0, 1) * (0.35 + 0.65 * light)).toFixed(2), transform: `translate(${(now.hour - 12) * (1.2 + 0.3 * k)} 0)`,
    }));
    const green = mixed(GRASS, mixed(EARTH, RUST, 0.3), now.turned);
    set(parts.earth, { fill: dimmed(mixed(EARTH, green, now.leaves)) });
    const leaf = mixed(mixed(BUD, LEAF, now.leaves), RUST, now.turned);
    parts.leaves.forEach(({ size, shape }) => set(shape, { r: (size * Math.sqrt(now.leaves)).toFixed(1), fill: dimmed(leaf) }));
  }

  function inside(now) {
    const high = held(now.moisture / film.top, 0, 1);
    set(parts.level, { points: pairs([[0, 0], [1, 0], [1, high], [0, high]].map(([s, d]) => placed(still, ["gauge", s, d]))) });
    const total = film.moisture.length, days = Math.max(1, Math.floor(now.day));
    const line = spots.slice(0, days);
    const [x, y] = placed(still, ["year", now.day / total, high]);
    set(parts.curve, { points: pairs([...line, [x, y]]) });
    const [, bottom] = placed(still, ["year", 0, -0.12]), [, top] = placed(still, ["year", 0, 1]);
    set(parts.mark, { x1: x, x2: x, y1: bottom, y2: top });
    set(parts.here, { cx: x, cy: y });
    const share = Math.min(1, now.drops / 300), told = now.drops < 1 ? "" : share.toFixed(1);
    if (told !== wet) {
      wet = told;
      const face = [0.03, 0.97].map((s) => placed(still, ["slope", s, film.wood]));
      parts.drops.replaceChildren(...(told ? beads(face, share, false) : []));
    }
    // Vapor at the faces of the wood: from the room or to it, to the vent air or from it.
    const flow = (rate, from, to) => ({ rate: Math.abs(rate), spread: 0.9, look: "vapor-pressure", points: rate < 0 ? [to, from] : [from, to] });
    flows.set([
      flow(now.inner, ["slope", 0.5, -0.4], ["slope", 0.5, film.wood]),
      flow(now.outer, ["slope", 0.47, film.wood], ["slope", 0.53, film.vent]),
    ]);
  }

  return {
    flows,
    get film() { return film; },
    load(newFilm, newStill) {
      if (newStill !== still || !parts) {
        still = newStill;
        if (still && still.axes.gauge) build();
      }
      film = newFilm || null;
      if (parts && film) spots = film.moisture.map((each, k) => placed(still, ["year", (k + 0.5) / film.moisture.length, held(each / film.top, 0, 1)]));
      // Over what fills the gauge.
      if (parts && film) parts.lines.replaceChildren(...film.lines.map((limit) => svg("polyline", { class: "sc-thin", points: pairs([0, 1].map((s) => placed(still, ["gauge", s, limit / film.top]))) })));
      front.style.display = film ? "" : "none";
      if (parts && !film) outside({ sun: 0.6, cloud: 0.2, hour: 12, leaves: 0, turned: 0 });
    },
    // Once the year was seen its whole curve stays, thin.  Gives whether words got longer or shorter.
    show(time, tags, known = false) {
      if (!film || !parts) return false;
      let longer = false;
      set(parts.whole, { points: known ? pairs(spots) : "" });
      const now = filmAt(film, time);
      outside(now);
      inside(now);
      for (const [name, text] of [["moisture", film.readings[Math.round(now.moisture)]], ["outdoors", now.outdoors]]) {
        const tag = tags.querySelector(`[data-film=${name}]`);
        if (!tag) continue;
        longer ||= tag.textContent.length !== text.length;
        setText(tag, text);
      }
      const peak = tags.querySelector("[data-film=peak]");
      if (peak) peak.style.opacity = known || now.day >= film.peak ? 1 : 0;
      return longer;
    },
  };
}

// The clock of a beat's films and its control: play and stop, a slider of the year, and the sentence of where it stands.
function filmPart(scenes, titles, kept, reduced, rolled) {
  const state = kept.film;
  const play = button("film", "", () => run(!state.runs), { class: "dw-button dw-main" });
  const reel = reachable(make("input", { type: "range", class: "dw-reel", min: 0, max: MONTHS, step: 0.01, "aria-label": say("film-at") }), "film-at");
  const said = make("p", { class: "dw-film-said", "aria-live": "polite" });
  const element = make("div", { class: "dw-film", role: "group", "aria-label": say("film"), hidden: true }, make("div", { class: "dw-film-row" }, play, reel), said);
  const films = () => scenes.map((scene) => scene.film.film).filter(Boolean);
  // With less motion it stands in the afternoon of a month and goes from month to month.
  const afternoon = (month) => held(month, 0, MONTHS - 1) + 0.55;

  function show() {
    if (!films().length) return;
    scenes.forEach((scene) => scene.showFilm(state.at, state.known));
    reel.value = state.at;
    const [first] = films();
    reel.setAttribute("aria-valuetext", first.names[filmAt(first, state.at).month]);
    const label = say(state.runs ? "film-stop" : "film-play");
    setText(play, label);
    play.hidden = reduced.matches;
    // Running, it says how it is stopped; each sentence is heard once it stands.
    const reading = (film) => film.readings[Math.round(filmAt(film, state.at).moisture)];
    const told = films().length === 1 ? filmSays(first, state.at) : say("film-two", {
      month: first.names[filmAt(first, state.at).month], first: titles[0], one: reading(films()[0]), second: titles[1], two: reading(films()[1]),
    });
    setText(said, state.runs ? say("film-hint") : told);
    rolled(state.runs && !state.seen);
  }
  function run(on) {
    if (on && state.at >= MONTHS) state.at = 0;
    Object.assign(state, { runs: on && !reduced.matches, seen: state.seen || !on });
    show();
  }
  function go(time) {
    Object.assign(state, { at: held(time, 0, MONTHS), runs: false, seen: true });
    show();
  }
  reel.addEventListener("input", () => go(Number(reel.value)));
  reel.addEventListener("keydown", (event) => {
    const month = Math.min(MONTHS - 1, Math.floor(state.at));
    const to = { ArrowRight: month + 1, ArrowUp: month + 1, ArrowLeft: month - 1, ArrowDown: month - 1, Home: 0, End: MONTHS - 1 }[event.key];
    if (event.key === " ") run(!state.runs);
    else if (to !== undefined) go(afternoon(to));
    else return;
    event.preventDefault();
  });
  return {
    element,
    update() {
      const some = films().length > 0;
      element.hidden = !some;
      if (!some) return;
      if (state.at === null) {
        state.at = 0;
        if (reduced.matches) Object.assign(state, { at: afternoon(0), seen: true });
        else run(true);
      } else if (state.changed) Object.assign(state, { at: timeOf(films()[0], films()[0].peak - 0.5), runs: false, seen: true, known: true });
      state.changed = false;
      show();
    },
    // A tap in the picture: on the year it goes there, elsewhere it stops or goes on.
    tapped(place) {
      if (!films().length) return;
      if (place === null) run(!state.runs);
      else go(place * MONTHS);
    },
    key(event) {
      if (event.key !== " " || !films().length || event.target.matches("button, input, select, textarea, summary, a")) return;
      event.preventDefault();
      run(!state.runs);
    },
    step(seconds) {
      if (!state.runs || !films().length) return false;
      state.at += (seconds / FILM_SECONDS) * MONTHS;
      if (state.at >= MONTHS) Object.assign(state, { at: MONTHS, runs: false, seen: true, known: true });
      for (const scene of scenes) scene.film.flows.step(seconds);
      show();
      return true;
    },
  };
}
