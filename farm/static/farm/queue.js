// Entries wait on the telephone until the server has them, each with a key of its own.
// Without script the same forms are sent as they are.
{
  const me = document.querySelector("script[data-worker]");
  const user = me.dataset.user;
  const box = document.getElementById("queue");
  const form = document.getElementById("entry");
  const PATIENCE_MS = 30000;
  // A form older than this was kept, and its day may be over.
  const FRESH_MS = 10 * 60 * 1000;

  // What is kept, in order, and each with whose it is.

  const opened = () => new Promise((done, fail) => {
    const asked = indexedDB.open("entries", 1);
    asked.onupgradeneeded = () => asked.result
      .createObjectStore("entries", { keyPath: "number", autoIncrement: true })
      .createIndex("user", "user");
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => fail(asked.error);
  });

  async function kept(mode, work) {
    const base = await opened();
    try {
      const turn = base.transaction("entries", mode);
      const asked = work(turn.objectStore("entries"));
      await new Promise((done, fail) => {
        turn.oncomplete = done;
        turn.onerror = turn.onabort = () => fail(turn.error);
      });
      return asked.result;
    } finally {
      base.close();
    }
  }

  const mine = () => kept("readonly", (rows) => rows.index("user").getAll(user));
  const keep = (entry) => kept("readwrite", (rows) => rows.put(entry));
  const drop = (number) => kept("readwrite", (rows) => rows.delete(number));

  // What stands on the page.

  const said = document.getElementById("queue-said");
  const say = (text) => { said.textContent = text; };

  async function show() {
    const entries = await mine();
    const list = document.getElementById("queue-list");
    list.replaceChildren(...entries.map(item));
    const waits = entries.some((entry) => entry.state === "waiting");
    document.getElementById("queue-send").hidden = !waits;
    box.hidden = !entries.length && !said.textContent;
  }

  function item(entry) {
    const copy = document.getElementById("queue-item").content.cloneNode(true);
    const part = (name) => copy.querySelector(`[data-part="${name}"]`);
    part("title").textContent = entry.title;
    part("state").textContent = box.dataset[entry.state];
    part("state").classList.toggle("doubt", entry.state === "refused");
    part("errors").append(...entry.errors.map((text) => tag("li", text)));
    for (const [label, text] of entry.shown) {
      part("typed").append(tag("dt", label), tag("dd", text));
    }
    part("mend").href = `${entry.url}#mend=${entry.number}`;
    part("drop").addEventListener("click", async () => {
      if (!window.confirm(box.dataset.giveUpSure)) return;
      await drop(entry.number);
      await show();
    });
    return copy;
  }

  function tag(name, text) {
    const made = document.createElement(name);
    made.textContent = text;
    return made;
  }

  // Sending: in order, one sender at a time, and only for who is signed in.

  async function ask(address, options = {}) {
    const signal = AbortSignal.timeout?.(PATIENCE_MS);
    return fetch(address, { cache: "no-store", redirect: "manual", signal, ...options });
  }

  const send = () => (navigator.locks ? navigator.locks.request("send", sendAll) : sendAll());

  async function sendAll() {
    const waiting = (await mine()).filter((entry) => entry.state === "waiting");
    if (!waiting.length) return show();
    const words = [];
    try {
      const ticket = await (await ask(box.dataset.who)).json();
      if (String(ticket.user ?? "") !== user) return void strangers(ticket.user);
      say(box.dataset.sending);
      for (const entry of waiting) {
        const word = await sendOne(entry, ticket.token);
        if (word === null) return;
        if (word) words.push(word);
      }
      say(words.join("\n"));
    } catch {
      say([...words, box.dataset.saidOffline].join("\n"));
    } finally {
      await show();
      if (words.length) await renew();
    }
  }

  function strangers(other) {
    document.getElementById("queue-sign-in").hidden = other !== null;
    say(other === null ? box.dataset.saidSignIn : box.dataset.saidOther);
  }

  // The words of the server; "" when it refused; null when nothing more can be sent.
  async function sendOne(entry, token) {
    const body = new FormData();
    for (const [name, value] of entry.typed) body.append(name, value);
    body.append("key", entry.key);
    const headers = { Accept: "application/json", "X-CSRFToken": token };
    const answer = await ask(entry.url, { method: "POST", body, headers });
    if (answer.type === "opaqueredirect") {
      strangers(null);
      return null;
    }
    if (answer.ok) {
      const { words } = await answer.json();
      await drop(entry.number);
      return words;
    }
    const why = {
      403: [box.dataset.forbidden],
      404: [box.dataset.gone],
      413: [box.dataset.tooLarge],
      422: answer.status === 422 && (await answer.json()).errors,
    }[answer.status];
    if (!why) {
      say(box.dataset.saidBusy);
      return null;
    }
    await keep({ ...entry, state: "refused", errors: why });
    return "";
  }

  // What was written down a moment ago is to stand among the last entries.
  async function renew() {
    const old = document.getElementById("mine");
    keepPages(true);
    if (!old) return;
    const answer = await ask(location.href);
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const anew = page.getElementById("mine");
    if (anew) old.replaceWith(anew);
  }

  // A form: filled from its address or from an entry that came back, and kept.

  function fill(pairs) {
    for (const [name, value] of pairs) {
      const boxes = [...form.elements].filter((one) => one.name === name);
      for (const one of boxes) {
        if (one.type === "checkbox" || one.type === "radio") one.checked ||= one.value === value;
        else if (one.type !== "file" && one.name !== "key") one.value = value;
      }
      const fold = value && boxes[0]?.closest("details");
      if (fold) fold.open = true;
    }
  }

  const placesOf = () => [...form.querySelectorAll('[name="place"]:checked')];

  function gathered(old) {
    const places = placesOf();
    const numbers = new Set(places.map((one) => one.value));
    const isAsked = (name) => {
      const at = /^(?:at|photo)(\d+)/.exec(name);
      return !/^csrf|^key$/.test(name) && (!at || numbers.has(at[1]));
    };
    const isFull = (value) => !(value instanceof File) || value.size > 0;
    const typed = [...new FormData(form)].filter(([n, v]) => isAsked(n) && isFull(v));
    const names = new Set(typed.map(([name]) => name));
    for (const [name, value] of old?.typed ?? []) {
      if (value instanceof File && isAsked(name) && !names.has(name)) typed.push([name, value]);
    }
    const where = places.map((one) => one.closest("label").textContent.trim().replace(/\s+/g, " "));
    const day = form.querySelector('input[type="date"]')?.value ?? "";
    const title = [form.dataset.act, ...where, day].join(" · ");
    const entry = { user, url: form.action.split(/[?#]/)[0], title, typed, shown: shownOf(typed) };
    entry.key = old?.key ?? uuid();
    if (old) entry.number = old.number;
    return { ...entry, state: "waiting", errors: [] };
  }

  function shownOf(typed) {
    return typed.filter(([name, value]) => name !== "place" && value !== "").map(([name, value]) => {
      const one = form.elements[name];
      const label = one?.labels?.[0]?.textContent.trim() ?? "";
      if (value instanceof File) return [label, value.name];
      const chosen = one instanceof HTMLSelectElement ? one.selectedOptions[0]?.textContent : value;
      return [label, String(chosen).slice(0, 2000)];
    });
  }

  function uuid() {
    if (crypto.randomUUID) return crypto.randomUUID();
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  }

  function complain(errors) {
    const told = document.getElementById("errors");
    told.hidden = !errors.length;
    told.querySelector("ul").replaceChildren(...errors.map((text) => tag("li", text)));
    if (errors.length) told.focus();
  }

  async function mended() {
    const number = Number(/^#mend=(\d+)$/.exec(location.hash)?.[1]);
    const entry = number && (await mine()).find((one) => one.number === number);
    if (!entry) return null;
    placesOf().forEach((one) => { one.checked = false; });
    fill(entry.typed);
    for (const [name, value] of entry.typed) {
      if (!(value instanceof File)) continue;
      form.elements[name]?.after(tag("p", `${box.dataset.keptPicture} ${value.name}`));
    }
    complain(entry.errors);
    return entry;
  }

  // A page kept since yesterday would say yesterday. The server's clock goes before
  // the telephone's; without the server the telephone's own day is the best guess.
  // What is typed stands.
  async function day() {
    const boxes = form.querySelectorAll('input[type="date"]');
    let now = new Date();
    try {
      const answer = await ask(box.dataset.who);
      if (answer.ok) now = new Date(answer.headers.get("Date") ?? now);
      if (answer.ok && now - new Date(form.dataset.at) < FRESH_MS) return;
    } catch { /* No signal. */ }
    const today = new Date(now - now.getTimezoneOffset() * 60000).toISOString().slice(0, 10);
    for (const one of boxes) if (one.value && one.value === one.defaultValue) one.value = today;
  }

  async function watch() {
    let old = null;
    fill(new URLSearchParams(location.search));
    old = await mended();
    if (!old) day();
    const button = form.querySelector(".buttons button");
    form.addEventListener("submit", async (event) => {
      event.preventDefault();
      button.disabled = true;
      const entry = gathered(old);
      try {
        entry.number = await keep(entry);
      } catch {
        // A telephone that keeps nothing: send the page as it is.
        form.submit();
        return;
      }
      await send();
      const now = (await mine()).find((one) => one.number === entry.number);
      if (now?.state === "refused") {
        old = now;
        complain(now.errors);
        button.disabled = false;
        return;
      }
      sessionStorage.setItem("said", said.textContent);
      location.assign(box.dataset.mine);
    });
  }

  // Pages are kept by the worker, for whoever is signed in.

  async function keepPages(anew = false) {
    if (!navigator.serviceWorker || !(user || navigator.serviceWorker.controller)) return;
    await navigator.serviceWorker.register(me.dataset.worker);
    const { active } = await navigator.serviceWorker.ready;
    const told = document.getElementById("keep");
    const named = told?.dataset.keep;
    const pages = named ? [location.pathname, ...named.trim().split(/\s+/)] : [];
    const loaded = performance.getEntriesByType("resource").map((one) => one.name);
    const files = loaded.filter((name) => name.startsWith(`${location.origin}/static/`));
    navigator.serviceWorker.onmessage = () => { told.textContent = told.dataset.kept; };
    active.postMessage({ user, pages, files: [...new Set(files)], anew });
  }

  keepPages().catch(() => {});
  if (box && user) {
    say(sessionStorage.getItem("said") ?? "");
    sessionStorage.removeItem("said");
    if (form) watch();
    show().then(send).catch(() => {});
    window.addEventListener("online", () => send());
    window.addEventListener("pageshow", (event) => event.persisted && location.reload());
    document.querySelector("#queue-send button").addEventListener("click", () => send());
  }
}
