"use strict";
// The bench works without this: it says which control moved, names the slider's place, and keeps
// open what the reader has opened.

document.addEventListener("htmx:configRequest", (event) => {
  const moved = event.detail.triggeringEvent && event.detail.triggeringEvent.target;
  if (event.detail.elt.id === "bench-form" && moved && moved.name && !event.detail.parameters.pick) {
    event.detail.parameters.by = moved.name;
  }
});

document.addEventListener("input", (event) => {
  const slider = event.target;
  if (!(slider instanceof HTMLInputElement) || !slider.dataset.words) return;
  slider.setAttribute("aria-valuetext", slider.dataset.words.split("|")[Number(slider.value)]);
});

const open = new Set();
document.addEventListener("toggle", (event) => {
  const part = event.target;
  if (!part.id || !part.closest(".follows")) return;
  if (part.open) open.add(part.id);
  else if (part.isConnected) open.delete(part.id);
}, true);
document.addEventListener("htmx:oobAfterSwap", () => {
  for (const id of open) {
    const part = document.getElementById(id);
    if (part) part.open = true;
  }
});
