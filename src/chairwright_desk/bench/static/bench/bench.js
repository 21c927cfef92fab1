"use strict";
// The bench works without this: it says which control moved, names the slider's place, and keeps
// open what the reader has opened.

document.addEventListener("htmx:configRequest", (event) => {
  const { elt, parameters, triggeringEvent } = event.detail;
  const button = triggeringEvent && triggeringEvent.submitter;
  if (button && button.name && !parameters[button.name]) parameters[button.name] = button.value;
  const moved = triggeringEvent && triggeringEvent.type === "input" && triggeringEvent.target;
  if (elt.id === "bench-form" && moved && moved.name) parameters.by = moved.name;
});

document.addEventListener("input", (event) => {
  const slider = event.target;
  if (!(slider instanceof HTMLInputElement) || !slider.dataset.words) return;
  slider.setAttribute("aria-valuetext", slider.dataset.words.split("|")[Number(slider.value)]);
});

// An answer holds the parts of the page that changed, each in a template that says where it goes.
// They are put in place here, in one go: what is opened stays open, and the focus stays.
const open = new Set();
document.addEventListener("toggle", (event) => {
  const part = event.target;
  if (!part.id || !part.closest(".follows")) return;
  if (part.open) open.add(part.id);
  else if (part.isConnected) open.delete(part.id);
}, true);
document.addEventListener("htmx:afterSwap", (event) => {
  const parts = event.detail.target.querySelectorAll("template[data-into]");
  if (!parts.length) return;
  const focused = document.activeElement && document.activeElement.id;
  for (const part of parts) {
    document.querySelector(part.dataset.into).replaceChildren(part.content);
    part.remove();
  }
  for (const id of open) {
    const part = document.getElementById(id);
    if (part) part.open = true;
  }
  const again = focused && document.getElementById(focused);
  if (again && again !== document.activeElement) again.focus({ preventScroll: true });
});

// After a step the ledger stands with the spreads of the set-up before; when the hand rests, those
// of its own are asked for. A step that comes meanwhile goes first.
let rest = 0;
document.addEventListener("bench-sketch", () => {
  clearTimeout(rest);
  rest = setTimeout(() => htmx.trigger("#bench-wait", "bench-sure"), 350);
});
document.addEventListener("htmx:beforeRequest", (event) => {
  if (event.detail.elt.id === "bench-wait") return;
  clearTimeout(rest);
  htmx.trigger("#bench-wait", "htmx:abort");
});
