// Watches over the page: says in plain words when the class computer is out of reach or the
// lesson has stopped, and waits for it.  Loaded before everything else.
(() => {
  const RETRY = 3000;
  let asking = null;
  let leaving = false;

  // What Voila's own template would define.
  window.themeLoaded = true;
  window.voila_finish = () => {};
  window.voila_process = () => {};
  window.voila_heartbeat = () => {};

  // Which of its texts the page shows: "stopped", "outOfReach", or none.
  function say(which, again) {
    const place = document.getElementById("lost");
    if (!place) return;
    place.hidden = !which;
    if (!which) return place.replaceChildren();
    place.replaceChildren(place.dataset[which]);
    if (again) {
      const link = document.createElement("a");
      link.href = "";
      link.textContent = place.dataset.again;
      link.addEventListener("click", (event) => { event.preventDefault(); location.reload(); });
      place.append(link);
    }
  }

  async function ask(address) {
    clearTimeout(asking);
    if (leaving) return;
    let answer = null;
    try {
      answer = await fetch(address, { redirect: "manual", cache: "no-store" });
    } catch {
      // Out of reach.
    }
    if (leaving) return;
    if (answer && (answer.status === 404 || answer.status === 403 || answer.type === "opaqueredirect")) {
      say("stopped", true);
      return;
    }
    say("outOfReach");
    asking = setTimeout(() => ask(address), RETRY);
  }

  const Plain = window.WebSocket;
  window.WebSocket = class extends Plain {
    constructor(url, protocols) {
      super(url, protocols);
      const found = /^ws(s?:.*\/api\/kernels\/[^/]+)\/channels/.exec(String(url));
      if (!found) return;
      const state = `http${found[1]}`;
      this.addEventListener("open", () => { clearTimeout(asking); say(""); });
      this.addEventListener("close", () => { clearTimeout(asking); asking = setTimeout(() => ask(state), 400); });
    }
  };

  addEventListener("pagehide", () => { leaving = true; });
  addEventListener("beforeunload", () => { leaving = true; });
  // Brought back from the browser's memory, its kernel is gone.
  addEventListener("pageshow", (event) => { if (event.persisted) location.reload(); });

  // The waiting words go once the lesson stands there.
  new MutationObserver((_, watch) => {
    if (!document.querySelector(".dw-page, [data-broken]")) return;
    document.getElementById("wait").hidden = true;
    watch.disconnect();
  }).observe(document, { childList: true, subtree: true });
})();
