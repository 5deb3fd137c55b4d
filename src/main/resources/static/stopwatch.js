// A stopwatch over the time fields of a flow test. The fields can be typed into as well; without script they are all there is.
const watch = document.getElementById("stopwatch");
const fields = [...document.querySelectorAll("input[id^='lap']")];
const time = watch.querySelector("[data-time]");
const [start, lap, stop] = ["start", "lap", "stop"].map((press) => watch.querySelector(`[data-press="${press}"]`));

// a Stop so soon after a Lap ends the watch; no container fills that fast
const AFTERTHOUGHT_MS = 1000;

let since = null;
let lapped = false;
let awake = null;
let sound = null;

function nextEmpty() {
  return fields.find((field) => field.value.trim() === "");
}

function seconds(ms) {
  return (ms / 1000).toFixed(1);
}

function say(word, what) {
  for (const line of watch.querySelectorAll("[data-say]")) {
    line.hidden = line.dataset.say !== word;
  }
  watch.querySelector("[data-wrote]").textContent = what ?? "";
}

function show() {
  if (since !== null) {
    time.textContent = seconds(performance.now() - since);
    requestAnimationFrame(show);
  }
}

function ready() {
  start.disabled = since !== null;
  lap.disabled = stop.disabled = since === null;
}

function end() {
  since = null;
  awake?.release().catch(() => {});
  awake = null;
  ready();
}

// writes the time since the last press into the next empty field; false when none is left
function write(now) {
  const field = nextEmpty();
  if (!field) {
    say("full");
    return false;
  }
  const text = seconds(now - since);
  field.value = text;
  time.textContent = text;
  field.dispatchEvent(new Event("input", { bubbles: true }));
  field.dispatchEvent(new Event("change", { bubbles: true }));
  say("wrote", `${document.querySelector(`label[for="${field.id}"]`).textContent} ${text} s`);
  return nextEmpty() !== undefined;
}

function wants(setting) {
  return watch.querySelector(`[data-setting="${setting}"] input`).checked;
}

function feel() {
  if (wants("buzz")) {
    navigator.vibrate?.(80);
  }
  if (wants("beep")) {
    sound ??= new AudioContext();
    const tone = sound.createOscillator();
    tone.frequency.value = 880;
    tone.connect(sound.destination);
    tone.start();
    tone.stop(sound.currentTime + 0.12);
  }
}

start.addEventListener("click", (press) => {
  feel();
  if (!nextEmpty()) {
    say("full");
    return;
  }
  since = press.timeStamp;
  lapped = false;
  ready();
  say(null);
  lap.focus();
  show();
  // a dark screen would stop some clocks
  navigator.wakeLock?.request("screen").then((lock) => (since === null ? lock.release() : (awake = lock)), () => {});
});

lap.addEventListener("click", (press) => {
  feel();
  if (write(press.timeStamp)) {
    since = press.timeStamp;
    lapped = true;
  } else {
    end();
    start.focus();
  }
});

stop.addEventListener("click", (press) => {
  feel();
  if (!lapped || press.timeStamp - since >= AFTERTHOUGHT_MS) {
    write(press.timeStamp);
  }
  end();
  start.focus();
});

for (const setting of watch.querySelectorAll("[data-setting]")) {
  const box = setting.querySelector("input");
  const key = `freshet.stopwatch.${setting.dataset.setting}`;
  setting.hidden = setting.dataset.setting === "buzz" && !navigator.vibrate;
  // a browser may keep nothing for a page, in private windows for one
  try {
    box.checked = localStorage.getItem(key) === "yes";
  } catch {
    box.checked = false;
  }
  box.addEventListener("change", () => {
    try {
      localStorage.setItem(key, box.checked ? "yes" : "no");
    } catch {
      // then it holds for this page only
    }
    feel();
  });
}

watch.hidden = false;
