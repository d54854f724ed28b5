// The page on the wall keeps itself as the record stands: once a minute, while the connection is there.
"use strict";
setInterval(async () => {
  try { if (!document.hidden && (await fetch("/here", { method: "HEAD", cache: "no-store" })).ok) location.reload(); } catch { /* cut: what stands, stands */ }
}, 60000);
