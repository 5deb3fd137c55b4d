// What this phone keeps: what was taken along, what is half typed, and what waits to be sent. Every page shows what waits and sends it.
const bar = document.getElementById("pocket");
const HALF_A_MINUTE = 30_000;

let base = null;

export const able = window.isSecureContext && "indexedDB" in window && "serviceWorker" in navigator;

function open() {
  base ??= new Promise((resolve, reject) => {
    const asked = indexedDB.open("freshet", 1);
    asked.onupgradeneeded = () => {
      asked.result.createObjectStore("kept");
      asked.result.createObjectStore("pages");
      asked.result.createObjectStore("typed");
      asked.result.createObjectStore("sent", { keyPath: "key" });
      asked.result.createObjectStore("outbox", { keyPath: "order", autoIncrement: true }).createIndex("key", "key", { unique: true });
    };
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
  });
  return base;
}

export function ask(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

// all or nothing, and on the disk when it answers: a phone may die a moment later
export async function within(stores, work) {
  const going = (await open()).transaction(stores, "readwrite", { durability: "strict" });
  const done = new Promise((resolve, reject) => {
    going.oncomplete = resolve;
    going.onabort = () => reject(going.error);
  });
  let result;
  try {
    result = await work(...stores.map((name) => going.objectStore(name)));
  } catch (failed) {
    going.abort();
    await done.catch(() => {});
    throw failed;
  }
  await done;
  return result;
}

export async function kept(key, store = "kept") {
  return ask((await open()).transaction(store).objectStore(store).get(key));
}

export function keep(key, value, store = "kept") {
  return within([store], (its) => ask(value === undefined ? its.delete(key) : its.put(value, key)));
}

export async function all(store) {
  return ask((await open()).transaction(store).objectStore(store).getAll());
}

// what was taken along goes; what waits to be sent and what is half typed stays its writer's
async function forget() {
  await within(["kept", "pages", "sent"], (its, pages, sent) => Promise.all([ask(its.clear()), ask(pages.clear()), ask(sent.clear())]));
  (await navigator.serviceWorker.getRegistration())?.active?.postMessage("fresh page");
}

async function know() {
  const person = bar.dataset.person ? { id: Number(bar.dataset.person), name: bar.dataset.name } : null;
  const before = await kept("person");
  const signedOut = document.querySelector("[data-signed-out]") !== null;
  if ((before && signedOut) || (before && person && before.id !== person.id)) {
    await forget();
  }
  if (person && before?.id !== person.id) {
    await keep("person", person);
  }
}

export async function mine() {
  const person = await kept("person");
  return (await all("outbox")).filter((entry) => entry.person === person?.id);
}

export function fill(words, values) {
  return words.replace(/\{(\w+)\}/g, (hole, name) => values[name] ?? hole);
}

// a phone's clock may be wrong; the server's was compared with it when the work was taken along
export function serverTime(entry) {
  return new Date(Date.parse(entry.doneAt) + entry.offsetMs).toISOString();
}

let trouble = null;
let going = false;

export async function show() {
  const entries = await mine();
  const waiting = entries.filter((entry) => entry.state === "waiting");
  const back = entries.filter((entry) => entry.state === "refused");
  const open = (await all("sent")).filter((entry) => entry.outcome === "CONFLICT" && !entry.seen);
  const say = (word, words) => {
    const line = bar.querySelector(`[data-say="${word}"]`);
    line.hidden = words === null;
    if (words !== null && line.textContent !== words) {
      line.textContent = words;
    }
  };
  say("waiting", waiting.length ? fill(bar.dataset.waiting, { n: waiting.length }) : null);
  say("trouble", waiting.length && !going && trouble ? bar.dataset[trouble] : null);
  say("back", back.length ? fill(bar.dataset.back, { n: back.length }) : null);
  say("conflicts", open.length ? fill(bar.dataset.conflicts, { n: open.length }) : null);
  bar.querySelector("[data-send]").hidden = !waiting.length;
  bar.querySelector("[data-sign-in]").hidden = !waiting.length || going || trouble !== "signin";
  bar.hidden = !(waiting.length || back.length || open.length);
  window.dispatchEvent(new Event("pocket"));
}

// null when it went on; else the word for what is in the way
async function pass() {
  const person = await kept("person");
  while (true) {
    const entry = (await mine()).find((each) => each.state === "waiting");
    if (!entry) {
      return null;
    }
    // a token of its own for each: the session may have gone meanwhile
    const door = await fetch(bar.dataset.token, { cache: "no-store", headers: { Accept: "application/json" }, signal: AbortSignal.timeout(HALF_A_MINUTE) });
    if (door.status === 401) {
      return "signin";
    }
    if (!door.ok) {
      return "later";
    }
    const key = await door.json();
    if (key.person !== person.id) {
      return "other";
    }
    // from here on it may have arrived though no answer comes back, so it is not changed any more
    await within(["outbox"], (outbox) => ask(outbox.put({ ...entry, tried: true })));
    const answer = await fetch(bar.dataset.deliver, {
      method: "POST",
      headers: { Accept: "application/json", "Content-Type": "application/json", [key.header]: key.token },
      body: JSON.stringify({ ...entry, html: undefined, state: undefined, wrongs: undefined, tried: undefined, sentAt: new Date().toISOString() }),
      signal: AbortSignal.timeout(2 * HALF_A_MINUTE),
    });
    if (answer.status === 401 || answer.status === 403) {
      return "signin";
    }
    if (answer.status >= 500 || answer.status === 429) {
      return "later";
    }
    const said = (answer.headers.get("Content-Type") ?? "").includes("json") ? await answer.json() : { outcome: "REFUSED", wrongs: [] };
    await settle(entry, said);
    await show();
  }
}

function settle(entry, said) {
  return within(["outbox", "sent"], async (outbox, sent) => {
    if (said.outcome === "REFUSED") {
      await ask(outbox.put({ ...entry, tried: false, state: "refused", wrongs: said.wrongs }));
    } else {
      await ask(sent.put({ key: entry.key, person: entry.person, page: entry.page, title: entry.title, doneAt: serverTime(entry), outcome: said.outcome, link: said.link }));
      await ask(outbox.delete(entry.order));
    }
  });
}

async function sendThem() {
  going = true;
  await show();
  try {
    trouble = await pass();
  } catch {
    trouble = "unreachable";
  }
  going = false;
  await show();
  if (trouble === "unreachable" || trouble === "later") {
    setTimeout(send, HALF_A_MINUTE);
  }
}

// one window sends at a time; two would do no harm, as every entry has its key
export async function send() {
  if (able && (await mine()).some((entry) => entry.state === "waiting")) {
    await (navigator.locks ? navigator.locks.request("freshet-send", { ifAvailable: true }, (lock) => lock && sendThem()) : sendThem());
  }
}

async function start() {
  await know();
  const settled = new URLSearchParams(location.search).get("settled");
  if (settled) {
    await within(["sent"], async (sent) => {
      for (const each of await ask(sent.getAll())) {
        if (each.link?.endsWith("/" + settled)) {
          await ask(sent.put({ ...each, seen: true }));
        }
      }
    });
  }
  await show();
  bar.querySelector("[data-send]").addEventListener("click", send);
  window.addEventListener("online", send);
  await send();
}

export const ready = able ? navigator.serviceWorker.register(bar.dataset.worker).catch(() => null) : Promise.resolve(null);
export const known = able ? start() : Promise.resolve();
