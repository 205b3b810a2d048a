// Sliders ask for their picture on every move; what takes longer is fetched into the page.
// The page's right side is fetched anew after every edit: its parts are looked up when they are needed.
const theForm = () => document.getElementById("try");
const theTried = () => document.getElementById("tried");

const decimal = (text) => (theForm().dataset.decimal.includes(",") ? text.replace(".", ",") : text);
const grouped = (whole) => (whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, " ") : whole);

// A slider's value as the server writes it.
function spoken(input) {
  const value = Number(input.value);
  const imperial = theForm().dataset.units === "imperial";
  switch (input.dataset.spoken) {
    case "length":
      return imperial
        ? `${decimal(String(Math.round(value / 0.00635) / 4))} in`
        : `${grouped(String(Math.round(value * 1000)))} mm`;
    case "mass":
      return imperial
        ? `${grouped(String(Math.round(value / 4.5359237) * 10))} lb`
        : `${grouped(String(Math.round(value / 10) * 10))} kg`;
    case "whole":
      return value.toFixed(0);
    case "degrees":
      return `${value.toFixed(0)}\u00b0`;
    default:
      return decimal(value.toFixed(2));
  }
}

const isFitted = (range) => Math.abs(range.value - range.dataset.fitted) < 0.5 * range.step;

// Only what was moved is a change: a slider at its fitted value asks for nothing.
function asked() {
  const pairs = new URLSearchParams();
  for (const control of theForm().elements) {
    if (!control.name || control.value === "") continue;
    if (control.type === "range" && isFitted(control)) continue;
    pairs.set(control.name, control.value);
  }
  return pairs;
}

let flying = null;
let waiting = false;

// What the propeller's drawing hangs on, and what it was last drawn by.
const BLADE = ["pitch", "diameter", "blades", "area", "cup", "rake", "skew"];
let shown = "";
async function redraw(form) {
  const drawing = document.getElementById("tried-drawing");
  if (!drawing || !form) return;
  const pairs = new URLSearchParams();
  for (const [key, value] of asked()) if (BLADE.includes(key)) pairs.set(key, value);
  const wanted = String(pairs);
  if (wanted === shown && drawing.dataset.by === wanted) return;
  pairs.set("part", "drawing");
  pairs.set("width", String(Math.round(drawing.clientWidth)));
  const answer = await fetch(`${form.dataset.drawing}?${pairs}`).catch(() => null);
  if (!answer?.ok) return;
  drawing.innerHTML = await answer.text();
  drawing.dataset.by = wanted;
  shown = wanted;
}

// One question at a time; of those asked meanwhile only the last is worth an answer.
async function ask() {
  if (flying) {
    waiting = true;
    return;
  }
  flying = asked();
  const [form, tried] = [theForm(), theTried()];
  try {
    const pairs = new URLSearchParams(flying);
    for (const [key, value] of new URLSearchParams(location.search)) {
      if (key === "language" || key === "units") pairs.set(key, value);
    }
    pairs.set("part", "tried");
    pairs.set("width", String(Math.round(tried.clientWidth)));
    const answer = await fetch(`${form.dataset.fetch}?${pairs}`, { headers: { Accept: "text/html" } });
    if (answer.ok) tried.innerHTML = await answer.text();
    tried.classList.toggle("stale", !answer.ok);
  } catch {
    tried.classList.add("stale");
  } finally {
    if (!waiting) await redraw(form);
    flying = null;
    if (waiting) {
      waiting = false;
      ask();
    }
  }
}

function say(input) {
  if (input.type !== "range") return;
  const text = spoken(input);
  input.setAttribute("aria-valuetext", text);
  input.parentElement.querySelector("output").textContent = text;
}

const ours = (event) => event.target.closest?.("#try") !== null && theTried() !== null;

document.addEventListener("input", (event) => {
  if (!ours(event)) return;
  say(event.target);
  ask();
});
document.addEventListener("submit", (event) => {
  if (!ours(event)) return;
  event.preventDefault();
  ask();
});
document.addEventListener("reset", (event) => {
  if (!ours(event)) return;
  event.preventDefault();
  for (const control of theForm().elements) {
    if (control.type === "range") control.value = control.dataset.fitted;
    else if (control.tagName === "SELECT") control.value = "";
    if (control.name) say(control);
  }
  ask();
});

// Causes and the shortlist take seconds: they say so, and leave the page to be used meanwhile.
document.addEventListener("click", async (event) => {
  const link = event.target.closest?.("a[data-part], a[data-try]");
  if (!link) return;
  if (link.dataset.try !== undefined) {
    const form = theForm();
    if (!form) return;
    event.preventDefault();
    for (const [key, value] of new URLSearchParams(link.dataset.try)) {
      const control = form.elements[key];
      if (control) {
        control.value = value;
        say(control);
      }
    }
    form.scrollIntoView({ block: "nearest" });
    ask();
    return;
  }
  const part = document.getElementById("part");
  if (!part) return;
  event.preventDefault();
  part.replaceChildren(Object.assign(document.createElement("progress"), { ariaLabel: link.textContent }));
  try {
    const join = link.search ? "&" : "?";
    const answer = await fetch(`${link.href}${join}part=1&width=${Math.round(part.clientWidth)}`);
    if (!answer.ok) throw new Error(String(answer.status));
    part.innerHTML = await answer.text();
  } catch {
    location.href = link.href;
  }
});
