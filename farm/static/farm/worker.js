// Keeps one person's pages for where there is no signal; entries are no work of its.

const SHELL = "shell-1";
const PRIVATE = "pages-";
const NO_SIGNAL = new URL("no-signal/", self.registration.scope).href;
const START = new URL("today/", self.registration.scope).href;
const SIGN_OUT = new URL("sign-out/", self.registration.scope).pathname;
const STATIC = new URL("static/", self.registration.scope).pathname;
// Longer than this nobody stands in a field and waits for a page that is kept here.
const PATIENCE_MS = 4000;
const KEPT_FRESH_MS = 10 * 60 * 1000;
const HASHED = /\.[0-9a-f]{12}\.\w+$/;
const KEPT_AT = "/kept-at";

self.addEventListener("install", (event) => {
  self.skipWaiting();
  // Without credentials, so that it names nobody.
  const asked = new Request(NO_SIGNAL, { credentials: "omit" });
  event.waitUntil(caches.open(SHELL).then((cache) => cache.add(asked)));
});

self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("message", (event) => {
  const { source, data } = event;
  event.waitUntil(keep(data).then((all) => all && source?.postMessage("kept"), () => {}));
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (url.origin !== self.location.origin) return;
  if (request.method === "POST" && url.pathname === SIGN_OUT) {
    event.respondWith(signedOut(request));
  } else if (request.method === "GET" && url.pathname.startsWith(STATIC)) {
    event.respondWith(still(event, request));
  } else if (request.method === "GET" && request.mode === "navigate") {
    event.respondWith(page(request, url));
  }
});

async function forget(except = "") {
  const names = await caches.keys();
  const others = names.filter((name) => name.startsWith(PRIVATE) && name !== except);
  await Promise.all(others.map((name) => caches.delete(name)));
}

async function signedOut(request) {
  await forget();
  try {
    return await fetch(request);
  } catch {
    return shown(NO_SIGNAL);
  }
}

async function shown(address, options = {}) {
  return (await caches.match(address, { ignoreVary: true, ...options })) ?? Response.error();
}

async function still(event, request) {
  const kept = await caches.match(request, { ignoreVary: true });
  if (!kept) return fetch(request);
  if (!HASHED.test(new URL(request.url).pathname)) {
    event.waitUntil(renew(request).catch(() => {}));
  }
  return kept;
}

async function renew(request) {
  const answer = await fetch(request, { cache: "no-cache" });
  if (answer.ok) await (await caches.open(SHELL)).put(request.url, answer);
}

// The server first; what is kept when it is silent. A form takes what it is told
// from its address, so one kept copy serves them all.
async function page(request, url) {
  const ignoreSearch = url.pathname.includes("/crew/");
  const kept = await caches.match(request.url, { ignoreVary: true, ignoreSearch });
  try {
    const answer = await (kept ? hurried(fetch(request)) : fetch(request));
    return kept && answer.status >= 502 ? kept : answer;
  } catch {
    return kept ?? shown(NO_SIGNAL);
  }
}

function hurried(answer) {
  return Promise.race([
    answer,
    new Promise((_, fail) => setTimeout(() => fail(new Error("slow")), PATIENCE_MS)),
  ]);
}

// Whoever is signed in now owns what is kept; pages of anybody else go.
async function keep({ user, pages, files, anew }) {
  const mine = user ? PRIVATE + user : "";
  await forget(mine);
  if (!user || !pages.length) return false;
  const shell = await caches.open(SHELL);
  await keepFiles(shell, files);
  const cache = await caches.open(mine);
  const [first, ...others] = pages;
  const fresh = !anew && (await isFresh(cache));
  for (const address of fresh ? [first] : [first, ...others]) {
    const answer = await fetch(address);
    if (!answer.ok || answer.redirected) return false;
    if (address === first) await cache.put(START, answer.clone());
    await cache.put(address, answer);
  }
  if (!fresh) await cache.put(KEPT_AT, new Response(String(Date.now())));
  return true;
}

async function isFresh(cache) {
  const at = await cache.match(KEPT_AT);
  const age = at ? Date.now() - Number(await at.text()) : Infinity;
  return age >= 0 && age < KEPT_FRESH_MS;
}

async function keepFiles(shell, files) {
  const wanted = new Set([...files, NO_SIGNAL]);
  for (const { url } of await shell.keys()) if (!wanted.has(url)) await shell.delete(url);
  for (const file of files) if (!(await shell.match(file))) await shell.add(file);
}
