// Answers when no network does: with the one page that works without, and what it is made of. It keeps nothing that is anybody's.
const { version, files, page } = self.FRESHET;
const NAME = `freshet-${version}`;

async function fetchPage() {
  const answer = await fetch(page, { cache: "no-store" });
  if (!answer.ok || answer.redirected) {
    throw new Error(`${page} answered ${answer.status}`);
  }
  await (await caches.open(NAME)).put(page, answer);
}

async function fetchAll() {
  await (await caches.open(NAME)).addAll(files);
  await fetchPage();
}

async function dropOlder() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith("freshet-") && name !== NAME).map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function kept(address) {
  return (await caches.open(NAME)).match(address, { ignoreVary: true });
}

async function open(request) {
  try {
    return await fetch(request);
  } catch (unreachable) {
    // the code of a label leads to its unit all the same
    const label = /\/t\/([^/]+)$/.exec(new URL(request.url).pathname);
    return (await kept(page)) ? Response.redirect(label ? `${page}?tag=${label[1]}` : page) : Promise.reject(unreachable);
  }
}

self.addEventListener("install", (install) => {
  self.skipWaiting();
  install.waitUntil(fetchAll());
});

self.addEventListener("activate", (activate) => activate.waitUntil(dropOlder()));

// another person reads in another language
self.addEventListener("message", (message) => message.waitUntil(fetchPage().catch(() => {})));

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin) {
    return;
  }
  if (request.mode === "navigate") {
    event.respondWith(url.pathname === page ? kept(page).then((found) => found ?? fetch(request)) : open(request));
  } else if (files.includes(url.pathname)) {
    event.respondWith(kept(url.pathname).then((found) => found ?? fetch(request)));
  }
});
