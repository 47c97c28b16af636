// Shows a page of the kit by its own script; each message goes to the page's Python, its answer back into the model.
async ({ esm, traits }) => {
  const decode = (part) => {
    if (part && part.base64 !== undefined) {
      const bytes = Uint8Array.from(atob(part.base64), (c) => c.charCodeAt(0));
      return new DataView(bytes.buffer);
    }
    if (Array.isArray(part)) return part.map(decode);
    if (part && typeof part === "object") return Object.fromEntries(Object.entries(part).map(([k, v]) => [k, decode(v)]));
    return part;
  };
  const heard = {};
  const data = decode(traits);
  window.push = (changes) => {
    const found = decode(changes);
    Object.assign(data, found);
    for (const key of Object.keys(found)) for (const act of heard["change:" + key] || []) act();
  };
  const say = async (content) => {
    window.waiting = (window.waiting || 0) + 1;
    window.push(await window.toPage(content));
    window.waiting -= 1;
  };
  const model = {
    get: (key) => data[key],
    set: (key, value) => { data[key] = value; },
    save_changes: () => say({ kind: "moved", ...data.moves }),
    send: (content) => say(content),
    on: (name, act) => { (heard[name] = heard[name] || []).push(act); },
    off: () => {},
  };
  const { default: widget } = await import(URL.createObjectURL(new Blob([esm], { type: "text/javascript" })));
  const el = document.getElementById("el");
  el.replaceChildren();
  widget.render({ model, el });
}
