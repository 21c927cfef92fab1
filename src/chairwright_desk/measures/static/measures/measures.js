"use strict";
// The tape of the field in hand stands out on the figure, and its words stand above it.
(() => {
  const figure = document.getElementById("tape-figure");
  const words = document.getElementById("tape-words");
  if (!figure || !words) return;
  const rest = words.textContent;
  let held = "";

  const show = () => {
    for (const each of figure.querySelectorAll(".told")) each.classList.remove("told");
    const tape = held && figure.querySelector(`#tape-dimension-${held}`);
    if (tape) {
      tape.classList.add("told");
      tape.parentNode.append(tape); // above the others, which would strike its number
    }
    figure.classList.toggle("held", Boolean(tape));
  };

  document.addEventListener("focusin", (event) => {
    const name = event.target.dataset ? event.target.dataset.tape || "" : "";
    held = name;
    const row = event.target.closest("[data-how]");
    words.textContent = name && row ? row.dataset.how : rest;
    words.classList.toggle("on", Boolean(name));
    show();
  });
  document.addEventListener("htmx:afterSwap", show);
  document.addEventListener("htmx:afterSettle", show); // settling puts the classes of the answer back
})();
