// The answer and its picture follow the numbers as they are typed. Without this file the form is sent plainly.
"use strict";
(() => {
  const form = document.querySelector("form[data-bench]");
  if (!form) return;
  const answer = document.getElementById("answer");
  const keep = document.querySelector("form[data-keep]");
  const KEPT = `witnessmark-bench ${location.pathname}`;
  const WAIT = 250; // milliseconds after the last stroke
  let clock = 0, asked = 0;

  const values = () => [...new FormData(form)].filter(([, words]) => words.trim());
  const save = () => { try { localStorage.setItem(KEPT, JSON.stringify(values())); } catch { /* no shelf */ } };
  const restore = () => {
    try {
      for (const [name, words] of JSON.parse(localStorage.getItem(KEPT)) || []) {
        if (form.elements[name]) form.elements[name].value = words;
      }
    } catch { /* nothing was kept */ }
  };
  const ask = async () => {
    const mine = ++asked;
    const query = new URLSearchParams(values());
    try {
      const reply = await fetch(`${form.action}?${query}${query.size ? "&" : ""}answer=only`, { credentials: "same-origin" });
      if (!reply.ok || mine !== asked) return;
      const told = await reply.json();
      answer.innerHTML = told.answer;
      for (const field of form.querySelectorAll("input[name]")) {
        const trouble = told.troubles[field.name] || "";
        document.getElementById(`trouble-${field.name}`).innerHTML = trouble;
        field.toggleAttribute("aria-invalid", Boolean(trouble));
        if (trouble) field.setAttribute("aria-invalid", "true");
        keep.elements[field.name].value = field.value;
      }
      keep.hidden = !answer.querySelector(".sentence");
      history.replaceState(null, "", query.size ? `${location.pathname}?${query}` : location.pathname);
    } catch { /* the connection is cut: the form still stands, and can be sent later */ }
  };
  form.addEventListener("input", () => { save(); clearTimeout(clock); clock = setTimeout(ask, WAIT); });
  if (!location.search) { restore(); if (values().length) ask(); } else { save(); }
})();
