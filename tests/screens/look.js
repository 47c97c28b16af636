// What is wrong with what the window shows: words cut off, too small or over each other, what is out of sight, and
// numbers that a line's end may part from their unit.
({ least, inSight }) => {
  const wrong = [], wide = innerWidth, high = innerHeight;
  const box = (e) => e.getBoundingClientRect();
  const seen = (e) => { const r = box(e); return r.width > 1 && r.height > 1 && getComputedStyle(e).visibility !== "hidden"; };
  const name = (e) => `${e.className || e.tagName} "${(e.textContent || "").trim().slice(0, 40)}"`;
  const root = document.querySelector(".dw-page");
  for (const one of inSight) for (const e of root.querySelectorAll(one)) {
    if (!seen(e)) continue;
    const r = box(e);
    if (r.left < -1 || r.top < -1 || r.right > wide + 1 || r.bottom > high + 1) {
      wrong.push(`out of sight: ${name(e)} ${[r.left, r.top, r.right, r.bottom].map(Math.round)}`);
    }
  }
  const way = root.querySelector(".dw-walk"), told = root.querySelector(".dw-answer:not(:empty)");
  if (way && told && seen(told) && box(told).bottom > box(way).top + 1) wrong.push(`out of sight under the way on by ${Math.round(box(told).bottom - box(way).top)} px: ${name(told)}`);
  const walk = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const e = walk.currentNode.parentElement;
    if (!walk.currentNode.textContent.trim() || !seen(e) || getComputedStyle(e).clipPath !== "none" || e.closest(".dw-status")) continue;
    if (parseFloat(getComputedStyle(e).fontSize) < least - 0.01) wrong.push(`small: ${getComputedStyle(e).fontSize} ${name(e)}`);
    if (e.closest(".dw-scenes, .dw-say, .dw-task, .dw-bet, .dw-outcome, .dw-scale") && /\d [^\s\d]/.test(walk.currentNode.textContent)) wrong.push(`parted from its unit: ${name(e)}`);
    const area = document.createRange();
    area.selectNodeContents(walk.currentNode);
    const r = area.getBoundingClientRect();
    for (let up = e; up && up !== root; up = up.parentElement) {
      const o = getComputedStyle(up).overflow;
      if (o === "visible" || getComputedStyle(up).clipPath !== "none") continue;
      const b = box(up);
      if (r.left < b.left - 1 || r.right > b.right + 1 || r.top < b.top - 2 || r.bottom > b.bottom + 2) wrong.push(`cut off: ${name(e)}`);
    }
    if (r.right > wide + 1) wrong.push(`beyond the edge: ${name(e)}`);
  }
  const tags = [...root.querySelectorAll(".dw-tag, .dw-spot")].filter(seen);
  for (const tag of root.querySelectorAll(".dw-tag:not(.dw-minor)")) if (!seen(tag)) wrong.push(`no room for: ${name(tag)}`);
  tags.forEach((one, k) => tags.slice(k + 1).forEach((other) => {
    if (one.closest(".dw-scene") !== other.closest(".dw-scene")) return;
    const a = box(one), b = box(other);
    if (a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1) wrong.push(`over each other: ${name(one)}, ${name(other)}`);
  }));
  if (document.documentElement.scrollWidth > wide) wrong.push(`scrolls sideways: ${document.documentElement.scrollWidth}`);
  return wrong;
}
