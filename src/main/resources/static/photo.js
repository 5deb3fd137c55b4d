// Makes a photo smaller before it is sent, and sends it at once where its form says to where. Every form works without this file.
const LONG_EDGE = 1600;
const QUALITY = 0.8;
const words = document.getElementById("photo-words").dataset;

function say(input, text, wrong = false) {
  const line = input.closest("[data-choose]").querySelector("[data-said]");
  line.textContent = text;
  line.classList.toggle("wrong", wrong);
}

// The file itself where the browser cannot read it: the server says which kinds it takes.
async function smaller(file) {
  const picture = await createImageBitmap(file).catch(() => null);
  const scale = picture ? LONG_EDGE / Math.max(picture.width, picture.height) : 1;
  if (scale >= 1) {
    return file;
  }
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const small = await new Promise((made) => canvas.toBlob(made, "image/jpeg", QUALITY));
  return small ? new File([small], "photo.jpg", { type: "image/jpeg" }) : file;
}

function send(input, file) {
  const form = input.form;
  const body = new FormData();
  body.append("_csrf", form.elements.namedItem("_csrf").value);
  body.append(input.name, file);
  const request = new XMLHttpRequest();
  request.open("POST", form.dataset.upload);
  request.responseType = "document";
  request.upload.addEventListener("progress", (sent) => {
    say(input, words.sending.replace("{0}", Math.round((100 * sent.loaded) / sent.total)));
  });
  request.addEventListener("load", () => answered(input, request));
  // the file stays chosen, and goes with the form
  request.addEventListener("error", () => say(input, words.failed, true));
  request.send(body);
}

// The answer is the whole page: the small pictures of this place are taken from it, or what it says is wrong.
function answered(input, request) {
  const strip = input.closest(".shots").querySelector("[id^=strip-]");
  const now = request.response?.getElementById(strip.id);
  const wrong = request.response?.getElementById(`${input.id}-wrong`);
  if (wrong) {
    input.value = "";
    say(input, wrong.textContent.trim(), true);
  } else if (now && request.status < 400) {
    strip.replaceWith(document.adoptNode(now));
    input.value = "";
    say(input, words.kept);
  } else {
    say(input, words.failed, true);
  }
}

async function chosen(input) {
  if (!input.files.length) {
    return;
  }
  say(input, words.smaller);
  const file = await smaller(input.files[0]);
  const small = new DataTransfer();
  small.items.add(file);
  input.files = small.files;
  if (input.form.dataset.upload) {
    send(input, file);
  } else {
    say(input, words.ready);
  }
}

document.addEventListener("change", (event) => {
  if (event.target.matches("input[data-photo]")) {
    chosen(event.target);
  }
});
