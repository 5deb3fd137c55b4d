// Looks for the code of a label through the camera and opens its pump. Where the browser cannot, it says so; the form below works anyway.
const TAG = /^[A-Za-z0-9][A-Za-z0-9-]{0,15}$/;
const camera = document.getElementById("camera");
const picture = camera.querySelector("video");

function say(word) {
  for (const line of camera.querySelectorAll("[data-say]")) {
    line.hidden = line.dataset.say !== word;
  }
}

// What a code says: the tag, and whether its address is this install's; null when it is no label.
function read(code) {
  const found = /^(https?:\/\/[^?#]*)\/t\/([^/?#]+)(?:\?do=read)?$/.exec(code.trim());
  const tag = found ? found[2] : code.trim();
  if (!TAG.test(tag)) {
    return null;
  }
  const ours = [camera.dataset.base, location.origin + camera.dataset.open.replace(/\/t\/$/, "")];
  return { tag, ours: !found || ours.includes(found[1]) };
}

async function reader() {
  if (!("BarcodeDetector" in window)) {
    return null;
  }
  const formats = await BarcodeDetector.getSupportedFormats();
  return formats.includes("qr_code") ? new BarcodeDetector({ formats: ["qr_code"] }) : null;
}

async function look(eye) {
  const codes = await eye.detect(picture).catch(() => []);
  const labels = codes.map((code) => read(code.rawValue));
  const label = labels.find((each) => each) ?? null;
  if (label?.ours) {
    navigator.vibrate?.(60);
    location.assign(camera.dataset.open + label.tag);
    return;
  }
  if (label) {
    // another yard may have a pump of the same tag, so a person decides
    document.getElementById("tag").value = label.tag;
    say("elsewhere");
  } else if (codes.length > 0) {
    say("foreign");
  }
  setTimeout(() => look(eye), 120);
}

async function start() {
  if (!window.isSecureContext || !navigator.mediaDevices?.getUserMedia) {
    say(window.isSecureContext ? "unable" : "insecure");
    return;
  }
  const eye = await reader();
  if (!eye) {
    say("unable");
    return;
  }
  try {
    picture.srcObject = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" }, audio: false });
    picture.hidden = false;
    await picture.play();
  } catch (refused) {
    picture.hidden = true;
    say(refused.name === "NotAllowedError" ? "denied" : "missing");
    return;
  }
  say("looking");
  look(eye);
}

start();
