// Small improvements only: every page works without this file.
const wrongs = document.querySelector(".wrongs");
if (wrongs) {
  wrongs.focus();
}
const print = document.querySelector("[data-print]");
if (print) {
  print.hidden = false;
  print.addEventListener("click", () => window.print());
}
