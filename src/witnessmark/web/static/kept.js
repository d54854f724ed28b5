// A line typed while the connection is cut stays on this device and is sent once when it is back.
// Every page works without this file.
"use strict";
(() => {
  const shelf = document.getElementById("kept");
  const record = shelf.dataset.record; // what is kept for one vehicle is never sent to another
  const STORE = `witnessmark-kept-${record}`;
  const DRAFT = `witnessmark-draft-${record}`;
  const PATIENCE = 5000; // milliseconds until the connection counts as cut
  const LONG = 60000; // the same where photos go along
  const AGAIN = 15000; // milliseconds between two tries
  let told = [];

  const read = () => { try { return JSON.parse(localStorage.getItem(STORE)) || []; } catch { return []; } };
  const save = (lines) => { try { localStorage.setItem(STORE, JSON.stringify(lines)); return true; } catch { return false; } };
  const newId = () => Array.from(crypto.getRandomValues(new Uint8Array(16)), (b) => b.toString(16).padStart(2, "0")).join("");
  const two = (n) => String(n).padStart(2, "0");
  const dayOf = (d) => `${d.getFullYear()}-${two(d.getMonth() + 1)}-${two(d.getDate())}`;
  const timeOf = (d) => `${two(d.getHours())}:${two(d.getMinutes())}`;

  const ask = async (address, options, patience = PATIENCE) => {
    const stop = new AbortController();
    const clock = setTimeout(() => stop.abort(), patience);
    try { return await fetch(address, { ...options, signal: stop.signal, credentials: "same-origin", cache: "no-store" }); }
    finally { clearTimeout(clock); }
  };
  const reachable = async () => { try { return (await ask("/here", { method: "HEAD" })).ok; } catch { return false; } };

  const paragraph = (words, link) => {
    const p = document.createElement("p");
    p.textContent = words;
    if (link) {
      const a = document.createElement("a");
      a.href = link; a.textContent = "Answer it"; a.className = "small-key";
      p.append(" ", a);
    }
    return p;
  };
  const show = () => {
    const lines = read();
    shelf.replaceChildren(...told.map((words) => paragraph(words)), ...lines.map((line) => line.asks
      ? paragraph(`Kept on this device, waits for your answer: “${line.words}”. ${line.asks}`,
        `/line?${new URLSearchParams([...["words", "id", "day", "at"].map((name) => [name, line[name]]), ...(line.kept || []).map((one) => ["kept", one])])}`)
      : paragraph(`Kept on this device, not written yet: “${line.words}”${line.photos ? ", with its photos" : ""}. It is sent when the connection is back.`)));
    shelf.hidden = !lines.length && !told.length;
  };

  const photos = window.witnessMarkPhotos;
  const keep = async (form) => {
    const sent = Object.fromEntries(new FormData(form));
    const now = new Date();
    const line = { words: sent.words.trim(), id: sent.id || newId(), kind: sent.kind || "", reading: sent.reading || "",
      said: sent.said || "", day: sent.day || dayOf(now), at: sent.at || timeOf(now), kept: new FormData(form).getAll("kept"), photos: photos.chosen(form).length };
    if (!line.words || !record) return false;
    if (line.photos) { try { await photos.keep(line.id, photos.chosen(form)); } catch { return false; } }
    if (!save([...read().filter((one) => one.id !== line.id), line])) return false;
    forgetDraft();
    return true;
  };

  let sending = false;
  const send = async () => {
    if (sending || !read().some((line) => !line.asks)) return;
    sending = true;
    try {
      for (const line of read().filter((one) => !one.asks)) {
        const { asks, kept = [], photos: number = 0, ...fields } = line;
        const body = new FormData();
        body.append("record", record);
        for (const [name, value] of [...Object.entries(fields), ...kept.map((one) => ["kept", one])]) body.append(name, value);
        if (number) for (const file of await photos.kept(line.id)) body.append("photo", file);
        const answer = await ask("/line/send", { method: "POST", headers: { "X-CSRFToken": shelf.dataset.token }, body }, number ? LONG : PATIENCE);
        if (!answer.ok) break;
        const said = await answer.json();
        const others = read().filter((one) => one.id !== line.id);
        if (said.written) { save(others); if (number) await photos.forget(line.id); told.push(`Written as line ${said.written}: ${said.sentence || line.words}`); }
        else save([...others, { ...line, asks: said.asks }]);
      }
    } catch { /* still cut; the lines are still here */ }
    sending = false;
    show();
  };

  const forgetDraft = () => { try { localStorage.removeItem(DRAFT); } catch { /* nothing was kept */ } };
  // A line that was answered on the read-back page, and is written now, need not be sent again.
  const written = document.querySelector("[data-written]");
  if (written) {
    const id = written.dataset.written.split(".")[0];
    if (read().some((one) => one.id === id && one.photos)) photos.forget(id).catch(() => { /* none was kept */ });
    save(read().filter((one) => one.id !== id));
    forgetDraft();
  }

  const box = document.querySelector("form[data-line] textarea[name=words]");
  if (box) {
    try { if (!box.value && localStorage.getItem(DRAFT)) box.value = localStorage.getItem(DRAFT); } catch { /* no shelf */ }
    box.addEventListener("input", () => { try { localStorage.setItem(DRAFT, box.value); } catch { /* no shelf */ } });
    box.addEventListener("keydown", (key) => {
      if (key.key === "Enter" && !key.shiftKey && !key.isComposing) { key.preventDefault(); box.form.requestSubmit(); }
    });
  }

  for (const form of document.querySelectorAll("form[data-line], form[data-write]")) {
    form.addEventListener("submit", async (submit) => {
      submit.preventDefault();
      const writes = form.hasAttribute("data-write");
      if (!writes && !form.elements.words.value.trim()) { form.elements.words.focus(); return; }
      if (await reachable()) {
        if (writes) forgetDraft();
        form.submit();
        return;
      }
      if (!(await keep(form))) { told = ["The connection is cut, and this device cannot keep what you typed: leave this page open."]; show(); return; }
      if (writes) { told = []; } else { form.elements.words.value = ""; form.elements.id.value = newId(); }
      show();
      shelf.scrollIntoView({ block: "nearest" });
    });
  }

  addEventListener("online", send);
  setInterval(send, AGAIN);
  show();
  send();
})();
