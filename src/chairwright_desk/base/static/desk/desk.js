"use strict";
// Small helps; every page works without them.

// Drafts are kept at every change: the button for it is for pages without script.
document.documentElement.classList.add("script");

// What the server refused still says why: its page is shown in place.
document.addEventListener("htmx:beforeSwap", (event) => {
  if ([409, 413, 422].includes(event.detail.xhr.status)) {
    event.detail.shouldSwap = true;
    event.detail.isError = false;
  }
});

// A change that could not be sent is said, not passed over.
const say = (text) => {
  document.getElementById("desk-said").textContent = text;
};
document.addEventListener("htmx:sendError", () => {
  say("The desk does not answer. What you typed is still in the page; keep it open.");
});
document.addEventListener("htmx:responseError", (event) => {
  const signIn = event.detail.xhr.getResponseHeader("X-Sign-In-At");
  if (!signIn) {
    say("The desk could not take this just now. What you typed is still in the page.");
    return;
  }
  // Signed out: the form is sent once to the sign-in page, which holds it and brings it back.
  const form = event.detail.elt.closest("form");
  const keep = (form || document).querySelector(".keep .by-hand");
  if (keep) keep.form.requestSubmit(keep);
  else window.location.assign(signIn);
});
document.addEventListener("htmx:afterRequest", (event) => {
  if (event.detail.successful) say("");
});

// A file above the limit is told before it is sent.
document.addEventListener("change", (event) => {
  const input = event.target;
  if (!(input instanceof HTMLInputElement) || input.type !== "file") return;
  const large = [...input.files].some((file) => file.size > 50_000_000);
  input.setCustomValidity(large ? "The desk takes files of up to 50 MB." : "");
  if (large) input.reportValidity();
});
