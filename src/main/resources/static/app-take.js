// Takes the chosen places along: first everything comes down, then it is kept at once, in place of what was with this phone before.
const pocket = await import(document.getElementById("pocket-module").href);
const form = document.getElementById("take");
const press = form.querySelector("button");
const AT_ONCE = 6;

function say(word, values) {
  for (const line of form.querySelectorAll("[data-say]")) {
    line.hidden = line.dataset.say !== word;
    if (line.dataset.say === word && line.dataset.words) {
      line.textContent = pocket.fill(line.dataset.words, values);
    }
  }
}

async function page(address) {
  const answer = await fetch(address, { cache: "no-store", headers: { Accept: "text/html" } });
  if (!answer.ok) {
    throw new Error(`${address} answered ${answer.status}`);
  }
  // whoever signed it meanwhile, or our own session went
  if (answer.redirected) {
    return null;
  }
  const main = new DOMParser().parseFromString(await answer.text(), "text/html").querySelector("main");
  main.querySelectorAll("script, input[name='_csrf'], [role='status'].done").forEach((each) => each.remove());
  return main.innerHTML;
}

async function pages(addresses) {
  const found = new Map();
  const left = [...addresses];
  const take = async () => {
    while (left.length) {
      const address = left.shift();
      const html = await page(address);
      if (html !== null) {
        found.set(address, html);
      }
      say("going", { n: found.size, of: addresses.length });
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, take));
  return found;
}

async function take() {
  const chosen = new URLSearchParams(new FormData(form));
  const before = Date.now();
  const answer = await fetch(`${form.dataset.bundle}?${chosen}`, { cache: "no-store", headers: { Accept: "application/json" } });
  if (answer.status === 401) {
    location.reload();
    return;
  }
  const bundle = await answer.json();
  // half the way there and half back
  bundle.offsetMs = Date.parse(bundle.now) - (before + Date.now()) / 2;
  const found = await pages([...bundle.tasks.map((task) => task.page), ...bundle.units.flatMap((unit) => unit.pages)]);
  bundle.tasks = bundle.tasks.filter((task) => found.has(task.page));
  bundle.bytes = [...found.values()].reduce((sum, html) => sum + html.length, 0);
  const safe = (await navigator.storage?.persist?.()) ?? false;
  const typed = await pocket.within(["typed"], (its) => pocket.ask(its.getAllKeys()));
  await pocket.within(["kept", "pages"], async (kept, its) => {
    for (const key of await pocket.ask(its.getAllKeys())) {
      // what is half typed keeps its page
      if (!found.has(key) && !typed.some((each) => each.endsWith(`|${key}`))) {
        await pocket.ask(its.delete(key));
      }
    }
    for (const [address, html] of found) {
      await pocket.ask(its.put(html, address));
    }
    await pocket.ask(kept.put(bundle, "bundle"));
    await pocket.ask(kept.put(safe, "safe"));
  });
  await pocket.ready;
  await navigator.serviceWorker.ready;
  location.assign(form.dataset.then);
}

form.addEventListener("submit", async (event) => {
  event.preventDefault();
  if (!form.querySelector("input:checked")) {
    say("nothing");
    return;
  }
  press.disabled = true;
  try {
    await take();
  } catch {
    say("failed");
    press.disabled = false;
  }
});

if (pocket.able) {
  form.hidden = false;
} else {
  document.getElementById("unable").hidden = false;
}
