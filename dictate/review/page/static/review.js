// Keys, clips, checking while typing, copying. Every answer is a plain form and works without this file.
"use strict";

const said = document.getElementById("said");
const single = document.getElementById("single");
const ENDED = "The program behind this page has ended: start it again; all that was answered is kept.";
let sound = null;

function tell(text, kind) {
  said.className = kind;
  said.replaceChildren(Object.assign(document.createElement("p"), { textContent: text }));
}

// --- behind an answer comes a new page: its title says the question, and here a screen reader says what came of the
// answer; the Tab key goes on from there, not from the top

const elsewhere = document.activeElement !== document.body;  // somebody was quicker than this script
if (said.textContent.trim() && !elsewhere) said.focus({ preventScroll: true });

// --- keys: one key, one answer; off on request, and never while something is typed

single.checked = sessionStorage.getItem("single") !== "off";
document.body.classList.toggle("nokeys", !single.checked);
single.addEventListener("change", () => {
  sessionStorage.setItem("single", single.checked ? "on" : "off");
  document.body.classList.toggle("nokeys", !single.checked);
});

let sent = false;
document.addEventListener("submit", (event) => {
  if (sent) event.preventDefault();
  sent = true;
});
window.addEventListener("pageshow", () => { sent = false; });

document.addEventListener("keydown", (event) => {
  if (event.key === "Escape" && event.target.matches("input, select, textarea")) {
    event.target.blur();
    return;
  }
  const typing = event.target.matches("input:not([type=checkbox]), select, textarea");
  if (typing || !single.checked || event.ctrlKey || event.altKey || event.metaKey || event.repeat) return;
  const target = [...document.querySelectorAll("[data-key]")].find((one) => one.dataset.key === event.key && !one.disabled);
  if (!target) return;
  event.preventDefault();
  if (target.matches("input")) target.focus();
  else target.click();
});

// --- clips

document.querySelectorAll("[data-play]").forEach((button) => {
  button.addEventListener("click", () => {
    if (sound) sound.pause();
    sound = new Audio(button.dataset.play);
    sound.play().catch(() => tell("The clip cannot be played here.", "refusal"));
  });
});

// --- checking while typing: the answer is tried, never sent

document.querySelectorAll("form[data-check]").forEach((form) => {
  const shown = form.querySelector(".typing");
  let waiting = 0;
  let asked = 0;
  const line = (kind, text) => {
    shown.append(Object.assign(document.createElement("p"), { className: kind, textContent: text }));
  };
  form.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(async () => {
      const mine = ++asked;
      const answer = new FormData(form);
      if (!String(answer.get("answer")).trim()) {
        shown.replaceChildren();
        return;
      }
      let found;
      try {
        const reply = await fetch(form.dataset.check, { method: "POST", body: new URLSearchParams(answer) });
        found = reply.ok ? await reply.json() : { refused: await reply.text() };
      } catch {
        found = { refused: ENDED };
      }
      if (mine !== asked) return;
      shown.replaceChildren();
      if (found.refused) {
        line("refusal", found.refused);
        return;
      }
      found.before.forEach((text) => line("goes", `was: ${text}`));
      found.after.forEach((text) => line("comes", `reads: ${text}`));
      found.raises.forEach((text) => line("raises", `then asks: ${text}`));
      if (!found.before.length && !found.after.length) line("same", "The note reads as before.");
    }, 150);
  });
});

// --- copying the note as plain text

document.querySelectorAll("[data-copy]").forEach((button) => {
  button.addEventListener("click", async () => {
    try {
      const reply = await fetch(button.dataset.copy);
      if (!reply.ok) throw new Error(reply.status);
      const note = await reply.text();
      await navigator.clipboard.writeText(note);
      tell("The note is copied as plain text.", "done");
    } catch (fault) {
      const other = "The note could not be copied: load this page again; the plain text stands at the end of the whole note.";
      tell(fault instanceof TypeError ? ENDED : other, "refusal");  // fetch throws it where nobody answers
    }
  });
});
