// Small improvements only: every page works without this file.
const wrongs = document.querySelector(".wrongs");
if (wrongs) {
  wrongs.focus();
}
