// Renews the board without moving the page.
setInterval(async () => {
  try {
    const answer = await fetch("board", { cache: "no-store" });
    if (!answer.ok) return;
    const fresh = new DOMParser().parseFromString(await answer.text(), "text/html").getElementById("board");
    const here = document.getElementById("board");
    if (fresh && fresh.innerHTML !== here.innerHTML) here.replaceChildren(...fresh.childNodes);
  } catch {
    // Out of reach: the next time.
  }
}, 10000);
