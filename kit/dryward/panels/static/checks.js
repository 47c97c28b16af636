// The end of a lesson: its checks, then "do you still say so?", then the way on.

// A reply.  A screen reader says what comes into a place that is there already, so a new one is put in
// once its place stands on the screen; one that was there before is not said again.
function replyPlace(page, key, text, kind = "") {
  const place = make("div", { class: `dw-reply ${kind}`, role: "status" });
  const before = page.replies.get(key);
  page.replies.set(key, text);
  if (before === undefined || before === text) place.textContent = text;
  else setTimeout(() => setText(place, text), 0);
  return place;
}

function questionsPart(questions, waits, page) {
  const part = make("section", { class: "dw-checks", "aria-label": say("checks") },
    make("div", { class: "dw-bar" }, make("h3", {}, say("checks")),
      button("new-questions", say("new-numbers"), () => page.send({ kind: "new_questions" }))));
  if (waits) part.append(make("p", { class: "dw-hint" }, say("still-waits")));
  const row = make("div", { class: "dw-check-row" });
  questions.forEach((question, number) => {
    const marks = Object.fromEntries(question.wrong.map((index) => [index, say("not-right")]));
    if (question.found !== null) marks[question.found] = say("right");
    row.append(make("div", { class: "dw-check" },
      choices(`check-${number}`, say("asked", { number: number + 1, question: question.prompt }), question.choices, {
        chosen: question.chosen, marks, act: (index) => page.send({ kind: "answer", number, choice: index }),
      }),
      replyPlace(page, `check-${number}`, question.reply, question.right ? "dw-right" : question.hint ? "dw-pointer" : "")));
  });
  part.append(row);
  return part;
}

// Back to what can be moved, with the keyboard too.
function toThePicture(event) {
  const work = event.target.closest(".dw-page").querySelector(".dw-work");
  if (!work) return;
  work.scrollIntoView({ block: "start" });
  work.querySelector(".dw-range, .dw-select, .dw-button:not([disabled])")?.focus({ preventScroll: true });
}

function beliefPart(belief, page) {
  const answer = (holds) => button(`still-${belief.id}-${holds ? "yes" : "no"}`, say(holds ? "still-yes" : "still-no"),
    () => page.send({ kind: "still", belief: belief.id, holds }), { "aria-pressed": String(belief.still === holds) });
  return make("div", { class: "dw-check", role: "group", "aria-label": belief.claim },
    make("p", { class: "dw-claim" }, make("q", {}, belief.claim)),
    make("div", { class: "dw-answers" }, answer(true), answer(false)),
    replyPlace(page, `still-${belief.id}`, belief.reply, belief.still === false ? "dw-right" : "dw-pointer"),
    belief.still ? button(`still-${belief.id}-back`, say("still-back"), (event) => {
      if (belief.sets) page.send({ kind: "set_out", belief: belief.id });
      toThePicture(event);
    }) : null);
}

// The next lesson of the way that the address names, else of the learner's own.
function wayOn(on) {
  const named = new URLSearchParams(location.search).get("way");
  const next = on.links[named] || on.links[on.chosen];
  return make("p", { class: "dw-on" }, lessonAddress(next) ? lessonLink(next) : say("on-named", { lesson: next.text }));
}

function leavingPart(frame, page) {
  if (!frame.on.links) return null;
  const beliefs = frame.still.length
    ? [make("h3", {}, say("still")), make("p", { class: "dw-hint" }, say("still-hint")),
      make("div", { class: "dw-check-row" }, ...frame.still.map((each) => beliefPart(each, page)))] : [];
  return make("section", { class: "dw-checks dw-leaving", "aria-label": say("on") }, ...beliefs,
    make("h3", {}, say("on")), wayOn(frame.on));
}
