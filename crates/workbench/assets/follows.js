// Sliders ask for their picture on every move; what takes longer is fetched into the page.
const form = document.getElementById("try");
const tried = document.getElementById("tried");

const comma = form?.dataset.decimal?.includes(",") ?? false;
const decimal = (text) => (comma ? text.replace(".", ",") : text);
const grouped = (whole) => (whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, " ") : whole);

// A slider's value as the server writes it.
function spoken(input) {
  const value = Number(input.value);
  const imperial = form.dataset.units === "imperial";
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
    default:
      return decimal(value.toFixed(2));
  }
}

// Only what was moved is a change: a slider at its fitted value asks for nothing.
function asked() {
  const pairs = new URLSearchParams();
  for (const control of form.elements) {
    if (!control.name || control.value === "") continue;
    if (control.type === "range" && control.value === control.dataset.at) continue;
    pairs.set(control.name, control.value);
  }
  return pairs;
}

let flying = null;
let waiting = false;

// One question at a time; of those asked meanwhile only the last is worth an answer.
async function ask() {
  if (flying) {
    waiting = true;
    return;
  }
  flying = asked();
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

if (form && tried) {
  for (const input of form.querySelectorAll("input[type=range]")) {
    // The browser holds a value to the slider's steps: what it makes of the fitted one is the fitted one.
    const value = input.value;
    input.value = input.dataset.fitted;
    input.dataset.at = input.value;
    input.value = value;
  }
  form.addEventListener("input", (event) => {
    say(event.target);
    ask();
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    ask();
  });
  form.addEventListener("reset", (event) => {
    event.preventDefault();
    for (const control of form.elements) {
      if (control.type === "range") control.value = control.dataset.at;
      else if (control.tagName === "SELECT") control.value = "";
      if (control.name) say(control);
    }
    ask();
  });
}

// Causes and the shortlist take seconds: they say so, and leave the page to be used meanwhile.
document.addEventListener("click", async (event) => {
  const link = event.target.closest?.("a[data-part], a[data-try]");
  if (!link) return;
  if (link.dataset.try !== undefined) {
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
