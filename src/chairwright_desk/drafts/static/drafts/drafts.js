"use strict";
// What was typed just before a page is left is kept too, and waited for when the page comes back.
(() => {
  const keeper = (form) => form.querySelector(".keep");
  const addressOf = (form) => keeper(form).getAttribute("hx-post");
  const forget = (form) => sessionStorage.removeItem(addressOf(form));

  // A form stays unkept until the desk has answered to the last thing typed into it.
  // One that is saved is not kept as well, and waits for a draft under way: saving ends the draft.
  const unkept = new Map();
  const sent = new Map();
  const sentAway = new Map();
  const saved = new Set();
  const waiting = new Map();
  let changes = 0;
  document.addEventListener("input", (event) => {
    const form = event.target.form;
    if (!form || !keeper(form)) return;
    unkept.set(form, ++changes);
    saved.delete(form);
  });
  document.addEventListener("submit", (event) => {
    const form = event.target;
    if (form.action.endsWith("/sign-out/")) sessionStorage.clear();
    if (!keeper(form)) return;
    unkept.delete(form);
    forget(form);
    saved.add(form);
    if (keeper(form).matches(".htmx-request")) {
      event.preventDefault();
      waiting.set(form, event.submitter);
    }
  });
  document.addEventListener("htmx:beforeRequest", (event) => {
    if (!event.detail.elt.matches(".keep")) return;
    const form = event.detail.elt.closest("form");
    const change = unkept.get(form);
    if (saved.has(form) || (change && sentAway.get(form) === change)) event.preventDefault();
    else sent.set(event.detail.xhr, change);
  });
  document.addEventListener("htmx:afterRequest", (event) => {
    const {elt, xhr, successful} = event.detail;
    if (!elt.matches(".keep")) return;
    const form = elt.closest("form");
    if (form && successful && sent.get(xhr) === unkept.get(form)) {
      unkept.delete(form);
      forget(form);
    }
    sent.delete(xhr);
    if (form && waiting.has(form)) {
      const submitter = waiting.get(form);
      waiting.delete(form);
      setTimeout(() => form.requestSubmit(submitter));
    }
  });

  // The page goes before the desk answers: a mark, without what was typed, tells what to wait for.
  const keepNow = () => {
    for (const [form, change] of unkept) {
      if (sentAway.get(form) === change) continue; // leaving is told twice
      sentAway.set(form, change);
      const mark = `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 12)}`;
      const typed = [...new FormData(form)].filter(([, value]) => typeof value === "string");
      const body = new URLSearchParams([...typed, ["left_mark", mark]]);
      sessionStorage.setItem(addressOf(form), mark);
      fetch(addressOf(form), {method: "POST", body, keepalive: true}).then((answer) => {
        if (!answer.ok || unkept.get(form) !== change) return;
        unkept.delete(form); // the page stayed, as it does for a file to be saved
        forget(form);
      }, () => {});
    }
  };
  window.addEventListener("beforeunload", keepNow);
  window.addEventListener("pagehide", keepNow);

  // The page is back: it shows the draft that was sent last, waiting for it up to 2.5 s.
  const arrived = async (form, mark) => {
    for (let wait = 50; wait < 1000; wait *= 1.5) {
      try {
        const answer = await fetch(`${addressOf(form)}left/${mark}/`);
        if ((await answer.json()).arrived) return true;
      } catch {
        // no answer, or one that asks to sign in: ask again
      }
      await new Promise((done) => { setTimeout(done, wait); });
    }
    return false;
  };
  const waitFor = async (form) => {
    const mark = sessionStorage.getItem(addressOf(form));
    if (!mark) return;
    forget(form);
    if (keeper(form).dataset.leftMark === mark) return;
    form.inert = true;
    if (await arrived(form, mark)) {
      window.location.reload();
      return;
    }
    form.inert = false;
    document.getElementById("desk-said").textContent =
      "What you typed just before you left this page may not have reached the desk: look it over.";
  };
  for (const each of document.querySelectorAll("form .keep")) waitFor(each.closest("form"));
})();
