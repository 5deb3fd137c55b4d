// The page without a network: shows what is with this phone, lets it be worked, and writes it into the outbox.
const pocket = await import(document.getElementById("pocket-module").href);
const bag = document.getElementById("bag");
const sheet = document.getElementById("sheet");
const words = bag.dataset;
const asked = new URLSearchParams(location.search);
const lang = document.documentElement.lang;
const SHEETS = [
  [/^\/tasks\/(\d+)$/, "TASK"],
  [/^\/pumps\/(\d+)\/reading$/, "READING"],
  [/^\/pumps\/(\d+)\/flow-test$/, "FLOW_TEST"],
  [/^\/pumps\/(\d+)\/finding$/, "FINDING"],
];

let person;
let bundle;

function make(name, text, attributes = {}) {
  const element = document.createElement(name);
  element.textContent = text;
  Object.entries(attributes).forEach(([key, value]) => element.setAttribute(key, value));
  return element;
}

function say(word, text) {
  const line = bag.querySelector(`[data-say="${word}"]`);
  line.hidden = text === null;
  if (text) {
    line.textContent = text;
  }
}

function to(values) {
  return `${words.page}?${new URLSearchParams(values)}`;
}

function ago(moment) {
  const minutes = Math.round((moment - Date.now()) / 60_000);
  const [n, unit] = minutes > -90 ? [minutes, "minute"] : minutes > -2880 ? [Math.round(minutes / 60), "hour"] : [Math.round(minutes / 1440), "day"];
  return new Intl.RelativeTimeFormat(lang, { numeric: "auto" }).format(n, unit);
}

function moment(at) {
  return new Intl.DateTimeFormat(lang, { dateStyle: "medium", timeStyle: "short" }).format(new Date(at));
}

// ---------- what is here ----------

function row(when, href, text, small) {
  const item = document.createElement("li");
  const link = make("a", "", { href });
  link.append(make("b", when));
  const what = make("span", text, { class: "do" });
  if (small) {
    what.append(make("small", small));
  }
  link.append(what);
  item.append(link);
  return item;
}

function past(when, text, small, href) {
  const item = document.createElement("li");
  const what = document.createElement("div");
  what.append(href ? make("a", text, { href }) : text, make("small", small));
  item.append(make("time", when, {}), what);
  return item;
}

function part(name, rows) {
  const section = bag.querySelector(`[data-part="${name}"]`);
  section.hidden = rows.length === 0;
  section.querySelector("ul")?.replaceChildren(...rows);
}

async function list() {
  const entries = await pocket.mine();
  const sent = (await pocket.all("sent")).filter((each) => each.person === person?.id).sort((a, b) => (a.doneAt < b.doneAt ? 1 : -1));
  part(
    "outbox",
    entries.map((entry) =>
      past(moment(pocket.serverTime(entry)), entry.title, entry.state === "refused" ? words.back : words.waits, entry.tried ? null : to({ entry: entry.key })),
    ),
  );
  part(
    "sent",
    sent.slice(0, 20).map((each) => past(moment(each.doneAt), each.title, each.outcome === "CONFLICT" ? words.settle : words.sent, each.link)),
  );
  if (!bundle) {
    say("empty", "");
    return;
  }
  say("age", pocket.fill(words.age, { when: moment(bundle.now), ago: ago(Date.parse(bundle.now) - bundle.offsetMs) }));
  const size = new Intl.NumberFormat(lang, { maximumFractionDigits: 1 }).format(bundle.bytes / 1_000_000);
  say("holds", pocket.fill(words.holds, { units: bundle.units.length, tasks: bundle.tasks.length, size: `${size} MB` }));
  say("unsafe", (await pocket.kept("safe")) ? null : "");
  const done = new Set([...entries, ...sent].map((each) => each.page).filter(Boolean));
  const typed = new Set(await pocket.within(["typed"], (its) => pocket.ask(its.getAllKeys())));
  const by = (day) => pocket.fill(words.by, { day: new Intl.DateTimeFormat(lang, { day: "numeric", month: "short", timeZone: "UTC" }).format(new Date(day)) });
  part(
    "tasks",
    bundle.tasks
      .filter((task) => !done.has(task.page))
      .map((task) => {
        const more = [task.place, pocket.fill(words.minutes, { n: task.minutes })];
        if (typed.has(`${person.id}|${task.page}`)) {
          more.push(words.begun);
        }
        return row(by(task.dueOn), to({ sheet: task.page }), `${task.tag}, ${task.title}`, more.join(" · "));
      }),
  );
  part("units", bundle.units.map((unit) => row(unit.tag, to({ sheet: unit.pages[0] }), unit.model, unit.place)));
  bag.querySelector('[data-part="find"]').hidden = bundle.units.length === 0;
}

// the tag of a label's code, or as typed, with its check character or without
function unitOf(text) {
  const tag = text.trim().replace(/^https?:\/\/[^?#]*\/t\/([^/?#]+).*$/, "$1").replace(/\s+\S$/, "").toUpperCase();
  return bundle.units.find((unit) => unit.tag.toUpperCase() === tag);
}

function find(text) {
  const unit = unitOf(text);
  if (unit) {
    location.assign(to({ sheet: unit.pages[0] }));
  } else {
    const line = bag.querySelector('[data-say="nothing"]');
    line.textContent = pocket.fill(words.nothing, { tag: text.trim() });
    line.hidden = false;
  }
}

async function scan(video) {
  const eye = new BarcodeDetector({ formats: ["qr_code"] });
  video.srcObject = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" }, audio: false });
  video.hidden = false;
  await video.play();
  const look = async () => {
    const codes = await eye.detect(video).catch(() => []);
    if (codes.length) {
      find(codes[0].rawValue);
    }
    setTimeout(look, codes.length ? 1500 : 120);
  };
  look();
}

function seek() {
  const form = document.getElementById("seek");
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    find(document.getElementById("seek-tag").value);
  });
  const press = form.querySelector('[data-press="scan"]');
  press.hidden = !("BarcodeDetector" in window) || !navigator.mediaDevices?.getUserMedia;
  press.addEventListener("click", () => scan(form.querySelector("video")).catch(() => (press.hidden = true)));
}

// ---------- a choice of this phone ----------

function wants(setting) {
  try {
    return localStorage.getItem(`freshet.saved.${setting}`) === "yes";
  } catch {
    return false;
  }
}

async function feel() {
  if (wants("buzz")) {
    navigator.vibrate?.(120);
  }
  if (wants("beep")) {
    const sound = new AudioContext();
    const tone = sound.createOscillator();
    tone.frequency.value = 660;
    tone.connect(sound.destination);
    tone.start();
    tone.stop(sound.currentTime + 0.15);
    // the next page would cut it off
    await new Promise((then) => setTimeout(then, 200));
  }
}

function settings() {
  for (const setting of bag.querySelectorAll("[data-setting]")) {
    const name = setting.dataset.setting;
    const box = setting.querySelector("input");
    setting.hidden = name === "buzz" && !navigator.vibrate;
    box.checked = wants(name);
    box.addEventListener("change", () => {
      try {
        localStorage.setItem(`freshet.saved.${name}`, box.checked ? "yes" : "no");
      } catch {
        // then it holds for this page only
      }
      feel();
    });
  }
}

// ---------- one sheet ----------

function fields(form) {
  const found = {};
  for (const [name, value] of new FormData(form)) {
    if (typeof value === "string" && name !== "_csrf" && name !== "press") {
      found[name] = value;
    }
  }
  return found;
}

function refill(form, typed) {
  for (const field of form.elements) {
    if (!field.name || field.type === "hidden" || field.type === "submit" || field.type === "file") {
      continue;
    }
    if (field.type === "radio" || field.type === "checkbox") {
      field.checked = typed[field.name] === field.value;
    } else if (field.name in typed) {
      field.value = typed[field.name];
    }
  }
  form.querySelectorAll("details").forEach((each) => {
    each.open ||= [...each.querySelectorAll("input, textarea")].some((field) => field.checked || (/^(text|)$/.test(field.getAttribute("type") ?? "") && field.value));
  });
}

// links lead to what is with this phone; what is not stays as words
function links(held) {
  for (const link of held.querySelectorAll("a[href]")) {
    const href = link.getAttribute("href");
    if (href.startsWith("#")) {
      continue;
    }
    const path = new URL(href, location.origin).pathname;
    const card = /^\/pumps\/(\d+)$/.exec(path);
    const page = card ? `/take-along/units/${card[1]}` : path;
    if (bundle?.units.some((unit) => unit.pages.includes(page)) || bundle?.tasks.some((task) => task.page === page)) {
      link.href = to({ sheet: page });
    } else {
      link.replaceWith(...link.childNodes);
    }
  }
}

function text(found, name) {
  return (found[name] ?? "").trim();
}

function lineWrongs(line, form, found) {
  const name = (part) => `${line.field}.${part}`;
  const answer = text(found, name("answer")) || text(found, name("none"));
  if (line.locked) {
    return [];
  }
  if (line.safety && !answer) {
    return [[name("answer"), words.safety]];
  }
  if (line.required && !answer) {
    return [[name("answer"), words.missing]];
  }
  if (line.asksInstrument && text(found, name("answer")) && !text(found, name("instrument")) && !text(found, "instrument")) {
    return [[name("instrument"), words.instrument]];
  }
  const given = text(found, name("asLeft")) || answer;
  const press = [...form.querySelectorAll(`[name="${CSS.escape(name("answer"))}"][data-fails]`)].find((each) => each.value === given);
  return press && line.failSeverity !== null && !line.safety && !text(found, name("finding")) ? [[name("finding"), words.finding]] : [];
}

// what the server would send back at once; all else it says when it arrives
function wrongs(kind, target, form, found) {
  const needed = (...names) => (names.some((name) => text(found, name)) ? [] : [[names[0], words.value]]);
  if (kind === "TASK") {
    const task = bundle?.tasks.find((each) => each.id === target);
    return (task?.lines ?? []).flatMap((line) => lineWrongs(line, form, found));
  }
  if (kind === "READING") {
    return needed("value");
  }
  if (kind === "FINDING") {
    return [...needed("what"), ...(found.severity ? [] : [["severity", words.severity]])];
  }
  const caught = (found["by.method"] ?? "TIMED_CONTAINER") === "TIMED_CONTAINER";
  return [...(caught ? [...needed("container"), ...needed("lap1", "lap2", "lap3", "lap4", "lap5")] : []), ...needed("lift", "gauge")];
}

function mark(form, list) {
  form.querySelectorAll(".wrongs, .wrong").forEach((each) => each.remove());
  form.querySelectorAll("[aria-invalid]").forEach((each) => {
    each.removeAttribute("aria-invalid");
    each.setAttribute("aria-describedby", (each.getAttribute("aria-describedby") ?? "").replace(/\S+-wrong\b/, "").trim());
  });
  if (!list.length) {
    return;
  }
  const lines = document.createElement("ol");
  for (const [name, message] of list) {
    const field = name ? document.getElementById(name) ?? form.querySelector(`[name="${CSS.escape(name)}"]`) : null;
    const item = document.createElement("li");
    item.append(make("a", message, { href: `#${field?.id || "sheet"}` }));
    lines.append(item);
    if (field) {
      for (let around = field.closest("details"); around; around = around.parentElement.closest("details")) {
        around.open = true;
      }
      const line = make("p", message, { class: "wrong", id: `${name}-wrong` });
      if (field.matches("fieldset, [role=group], .check")) {
        (field.querySelector(":scope > legend") ?? field.firstElementChild).after(line);
      } else {
        field.setAttribute("aria-invalid", "true");
        field.setAttribute("aria-describedby", `${field.getAttribute("aria-describedby") ?? ""} ${line.id}`.trim());
        (field.closest(".pick") ?? field.closest(".with-unit, .answer") ?? field).before(line);
      }
    }
  }
  const head = make("h2", pocket.fill(words.fix, { n: list.length }));
  const summary = make("div", "", { class: "wrongs", role: "alert", tabindex: "-1" });
  summary.append(head, lines);
  form.prepend(summary);
  summary.focus();
  summary.scrollIntoView();
}

// the presses of the page that need the server are not here
function fit(form, kind) {
  const shots = sheet.querySelectorAll("[data-sheet] :is(.shots, .choose, .strip, img)");
  if (shots.length) {
    form.prepend(make("p", words.photo, { class: "hint" }));
    shots.forEach((each) => each.remove());
  }
  if (kind === "FLOW_TEST") {
    form.querySelectorAll('button[value^="add-"], button[value^="out-"]').forEach((each) => each.remove());
    const press = form.querySelector('button.press[value="work"]');
    press.textContent = words.work;
    sheet.querySelector(".result")?.remove();
  }
  if (kind === "TASK") {
    form.querySelectorAll('button[value="save"]').forEach((each) => (each.textContent = words.keep));
    // what the page counted when it was taken along
    form.querySelectorAll(".sign p").forEach((each) => each.remove());
  }
  const at = form.querySelector('input[name="at"]');
  if (at) {
    // the page was made when it was taken along
    at.value = "";
    const hint = document.getElementById("at-hint");
    if (hint) {
      hint.textContent = `${words.at} ${hint.textContent}`;
    }
  }
}

function known(kind, target, unit) {
  if (kind === "TASK") {
    return { checklistVersion: bundle.tasks.find((task) => task.id === target)?.checklistVersion, stand: unit?.stand };
  }
  return { stand: unit?.stand, meters: unit?.meters };
}

async function work(path, entry) {
  const html = entry?.html ?? (await pocket.kept(path, "pages"));
  const [pattern, kind] = SHEETS.find(([each]) => each.test(path)) ?? [];
  if (!html) {
    document.getElementById("gone").hidden = false;
    return;
  }
  const held = sheet.querySelector("[data-sheet]");
  held.innerHTML = html;
  sheet.hidden = false;
  links(held);
  document.title = `${held.querySelector("h1").textContent} · Freshet`;
  const form = held.querySelector('form[method="post"]');
  if (!kind || !form) {
    return;
  }
  const target = Number(pattern.exec(path)[1]);
  const draft = `${person.id}|${path}`;
  let typed = entry ? { fields: entry.fields, begunAt: entry.begunAt } : await pocket.kept(draft, "typed");
  fit(form, kind);
  if (typed) {
    refill(form, typed.fields);
  }
  if (entry?.state === "refused") {
    const said = entry.wrongs.length ? entry.wrongs : [{ field: "", message: words.odd }];
    mark(form, said.map((each) => [each.field, each.message]));
  }
  if (document.getElementById("stopwatch")) {
    await import(document.querySelector("[data-stopwatch]").dataset.stopwatch);
  }

  // kept as it is typed: a phone may go dark at any moment
  let soon = null;
  const save = () => {
    clearTimeout(soon);
    typed = { fields: fields(form), begunAt: typed?.begunAt ?? new Date().toISOString() };
    return entry ? Promise.resolve() : pocket.keep(draft, typed, "typed");
  };
  form.addEventListener("input", () => {
    clearTimeout(soon);
    soon = setTimeout(save, 300);
  });
  form.addEventListener("change", save);
  window.addEventListener("pagehide", () => soon && save());

  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const press = event.submitter;
    await save();
    if (press?.value === "save" || press?.classList.contains("hide")) {
      location.assign(words.page);
      return;
    }
    const found = fields(form);
    const missing = wrongs(kind, target, form, found);
    mark(form, missing);
    if (missing.length) {
      return;
    }
    if (!(await write(entry ?? (await blank(kind, target, path, held)), { fields: found, begunAt: typed.begunAt }, draft))) {
      mark(form, [["", words.went]]);
      return;
    }
    await feel();
    location.replace(to({ written: "yes" }));
  });
}

async function blank(kind, target, path, held) {
  const task = kind === "TASK" ? bundle.tasks.find((each) => each.id === target) : null;
  const unit = bundle?.units.find((each) => each.id === (task ? task.unitId : target));
  return {
    key: crypto.randomUUID(),
    person: person.id,
    kind,
    target,
    page: path,
    title: task ? `${task.title}, ${task.tag}` : held.querySelector("h1").textContent,
    html: await pocket.kept(path, "pages"),
    known: known(kind, target, unit),
    offsetMs: bundle.offsetMs,
    doneAt: new Date().toISOString(),
  };
}

// false when it went out while it was being changed
function write(entry, typed, draft) {
  return pocket.within(["outbox", "typed"], async (outbox, its) => {
    if (entry.order !== undefined) {
      const now = await pocket.ask(outbox.get(entry.order));
      if (!now || now.tried) {
        return false;
      }
    }
    await Promise.all([pocket.ask(outbox.put({ ...entry, ...typed, state: "waiting", wrongs: [] })), pocket.ask(its.delete(draft))]);
    return true;
  });
}

async function mend(key) {
  const entry = (await pocket.mine()).find((each) => each.key === key);
  if (!entry || entry.tried) {
    document.getElementById("gone").hidden = false;
    return;
  }
  await work(entry.page, entry);
  const drop = sheet.querySelector('[data-part="drop"]');
  drop.hidden = false;
  drop.querySelector("button").addEventListener("click", async () => {
    await pocket.within(["outbox"], (outbox) => pocket.ask(outbox.delete(entry.order)));
    location.replace(words.page);
  });
}

async function start() {
  if (!pocket.able) {
    document.getElementById("unable").hidden = false;
    return;
  }
  await pocket.known;
  [person, bundle] = [await pocket.kept("person"), await pocket.kept("bundle")];
  if (asked.has("entry")) {
    await mend(asked.get("entry"));
  } else if (asked.has("sheet")) {
    await work(asked.get("sheet"));
  } else {
    bag.hidden = false;
    say("written", asked.has("written") ? "" : null);
    settings();
    seek();
    await list();
    window.addEventListener("pocket", list);
    if (asked.get("tag") && bundle) {
      find(asked.get("tag"));
    }
  }
}

await start();
document.documentElement.dataset.ready = "yes";
