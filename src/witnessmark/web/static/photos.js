// Photos are sent ahead as soon as they are chosen, one by one, saying how far it is; the form then goes at once.
// Without this file a form sends its photos itself. What cannot be sent stays with its line on this device.
"use strict";
(() => {
  const inputs = (form) => [...form.elements].filter((one) => one.type === "file");
  const chosen = (form) => inputs(form).flatMap((input) => [...input.files]);
  const token = () => document.getElementById("kept").dataset.token;

  // ---- the shelf of this device: photos under the id of the line they go with
  const shelf = (way, act) => new Promise((good, bad) => {
    const asked = indexedDB.open("witnessmark", 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore("photos", { autoIncrement: true }).createIndex("line", "line");
    asked.onerror = () => bad(asked.error);
    asked.onsuccess = () => {
      const going = asked.result.transaction("photos", way);
      const result = act(going.objectStore("photos"));
      going.oncomplete = () => { asked.result.close(); good(result && result.result); };
      going.onabort = going.onerror = () => { asked.result.close(); bad(going.error); };
    };
  });
  const keep = async (line, files) => {
    const kept = await Promise.all(files.map(async (file) => ({ line, name: file.name, bytes: await file.arrayBuffer() })));
    await shelf("readwrite", (photos) => { kept.forEach((one) => photos.add(one)); });
  };
  const kept = async (line) => (await shelf("readonly", (photos) => photos.index("line").getAll(line)))
    .map((one) => new File([one.bytes], one.name, { type: "image/jpeg" }));
  const forget = (line) => shelf("readwrite", (photos) => {
    const asked = photos.index("line").openCursor(IDBKeyRange.only(line));
    asked.onsuccess = () => { if (asked.result) { asked.result.delete(); asked.result.continue(); } };
  });
  window.witnessMarkPhotos = { chosen, keep, kept, forget };

  // ---- sending ahead
  const counted = (number) => (number === 1 ? "1 photo" : `${number} photos`);
  const going = new Map(); // form -> the key it was sent with meanwhile, or null

  const told = (form) => {
    const near = inputs(form)[0].closest("fieldset");
    let place = near.querySelector(".sending");
    if (!place) {
      place = document.createElement("div");
      place.className = "sending";
      place.setAttribute("role", "status");
      near.append(place);
    }
    return place;
  };
  const say = (form, words, stop) => {
    const line = document.createElement("p");
    line.textContent = words;
    told(form).replaceChildren(line);
    if (!stop) return;
    const key = document.createElement("button");
    key.type = "button"; key.className = "small-key"; key.textContent = "Stop sending";
    key.addEventListener("click", stop);
    told(form).append(key);
  };
  const leave = (input, files) => {
    const rest = new DataTransfer();
    files.forEach((file) => rest.items.add(file));
    input.files = rest.files;
  };
  const one = async (file, stopper) => {
    const body = new FormData();
    body.append("photo", file);
    const answer = await fetch("/photos/keep", { method: "POST", headers: { "X-CSRFToken": token() }, body, signal: stopper.signal, credentials: "same-origin" });
    const said = await answer.json();
    if (!answer.ok) return said.refused;
    return said.kept;
  };
  const send = async (form, input) => {
    const files = [...input.files];
    if (!files.length || going.has(form)) return;
    going.set(form, null);
    const stopper = new AbortController();
    const refused = [];
    let at = 0;
    let why = "";
    try {
      for (; at < files.length; at += 1) {
        say(form, `Photo ${at + 1} of ${files.length} is being sent.`, () => stopper.abort());
        const said = await one(files[at], stopper);
        if (typeof said === "string") { refused.push(said); continue; }
        for (const name of said) {
          const field = document.createElement("input");
          field.type = "hidden"; field.name = "kept"; field.value = name;
          form.append(field);
        }
      }
    } catch {
      why = stopper.signal.aborted ? "Stopped; the rest was left out." : `The connection is cut: ${counted(files.length - at)} not sent yet.`;
    }
    leave(input, stopper.signal.aborted ? [] : files.slice(at));
    const there = form.querySelectorAll("input[name=kept]").length;
    say(form, [there ? `${counted(there)} kept, to go with it.` : "", why, ...refused].filter(Boolean).join(" "));
    const meanwhile = going.get(form);
    going.delete(form);
    const more = inputs(form).find((other) => other !== input && other.files.length);
    if (more && !why) await send(form, more);
    else if (meanwhile && !refused.length) form.requestSubmit(meanwhile.form === form ? meanwhile : undefined);
  };

  for (const form of document.querySelectorAll("form[data-photos]")) {
    for (const input of inputs(form)) input.addEventListener("change", () => send(form, input));
  }
  // A line that waited for an answer finds the photos it was typed with.
  const writing = document.querySelector("form[data-write][data-photos]");
  if (writing) {
    kept(writing.elements.id.value).then((files) => {
      if (!files.length || going.has(writing)) return;
      leave(inputs(writing)[0], files);
      send(writing, inputs(writing)[0]);
    }).catch(() => { /* this device keeps no photos */ });
  }
  // A key pressed while a photo is on its way counts once the photo is there.
  document.addEventListener("submit", (submit) => {
    if (!going.has(submit.target)) return;
    submit.preventDefault();
    submit.stopImmediatePropagation();
    going.set(submit.target, submit.submitter || submit.target);
  }, true);
})();
