// What stands below the working part: folds, checks, takeaway, cautions.

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

function questionsPart(questions, sheet) {
  const part = make("section", { class: "dw-checks", "aria-label": "Three checks" },
    make("div", { class: "dw-bar" }, make("h3", {}, "Three checks"),
      button("new-questions", "New numbers", () => sheet.send({ kind: "new_questions" }))));
  const row = make("div", { class: "dw-check-row" });
  questions.forEach((question, number) => {
    const marks = {};
    if (question.chosen !== null) {
      marks[question.chosen] = question.right ? "✓ right" : "✗ not this one";
    }
    const card = make("div", { class: "dw-check" },
      choices(`check-${number}`, `${number + 1}. ${question.prompt}`, question.choices, {
        chosen: question.chosen, marks, act: (index) => sheet.send({ kind: "answer", number, choice: index }),
      }),
      make("div", { class: `dw-reply ${question.right ? "dw-right" : ""}`, role: "status" }, question.reply || ""));
    row.append(card);
  });
  part.append(row);
  return part;
}

function listPart(title, items, kind) {
  if (!items.length) return null;
  return make("section", { class: kind }, make("h3", {}, title), make("ul", {}, ...items.map((item) =>
    item.title ? make("li", {}, make("strong", {}, `${item.title}: `), item.text) : make("li", {}, item))));
}
