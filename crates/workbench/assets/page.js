// Saves each field when it changes, and lets what follows catch up. Without this script the same forms save by their button.
document.documentElement.classList.add("scripted");
const told = document.getElementById("told");
const tell = (text) => { if (told) { told.textContent = text; clearTimeout(tell.timer); tell.timer = setTimeout(() => { told.textContent = ""; }, 4000); } };

for (const form of document.querySelectorAll("form[data-back]")) {
  form.elements.back.value = location.pathname + location.search;
  form.addEventListener("change", () => form.submit());
}

const fold = document.querySelector(".fold");
if (fold) {
  fold.hidden = false;
  fold.addEventListener("click", () => {
    const open = fold.parentElement.classList.toggle("open");
    fold.setAttribute("aria-expanded", String(open));
    fold.textContent = open ? "\u2212" : "+";
  });
}

const right = document.querySelector("[data-follows]");
let asked = 0;
async function follow() {
  if (!right) return;
  const mine = ++asked;
  const busy = setTimeout(() => right.setAttribute("aria-busy", "true"), 400);
  try {
    const answer = await fetch(`${right.dataset.follows}?part=1&width=${Math.round(right.clientWidth)}`);
    const text = await answer.text();
    // Only our own server answers here, and every value in it is escaped there.
    if (mine === asked && answer.ok) right.replaceChildren(document.createRange().createContextualFragment(text));
  } catch { /* The server is gone: what stands there stays. */ } finally {
    clearTimeout(busy);
    if (mine === asked) right.removeAttribute("aria-busy");
  }
}

const work = document.querySelector(".work[data-at]");
if (work) {
  // One save after the other: each is based on the state the one before left.
  let queue = Promise.resolve();
  const save = (field) => {
    const data = new URLSearchParams();
    data.set("base", work.dataset.version);
    for (const input of field.querySelectorAll("[name^='v:'],[name^='w:'],[name^='s:']")) {
      if (input.type === "checkbox" && !input.checked) continue;
      data.append(input.name, input.value);
    }
    return send(field, data);
  };
  const send = async (field, data) => {
    try {
      const answer = await fetch(`${work.dataset.at}/set`, { method: "POST", body: data, headers: { accept: "application/json" } });
      if (answer.status !== 200 && answer.status !== 422) throw new Error(await answer.text());
      const saved = await answer.json();
      work.dataset.version = saved.version;
      for (const base of work.querySelectorAll("input[name=base]")) base.value = saved.version;
      const path = field.dataset.path;
      const left = saved.left.find((one) => one.path === path);
      const fault = field.querySelector(".fault");
      fault.textContent = left ? `■ ${left.says}` : "";
      for (const input of field.querySelectorAll("[name^='v:']:not([type=hidden])")) {
        if (left) input.setAttribute("aria-invalid", "true"); else input.removeAttribute("aria-invalid");
      }
      const was = field.querySelector("[name^='w:']");
      if (left?.theirs != null) was.value = left.theirs;
      if (!left) was.value = now(field);
      const undo = document.querySelector("[data-undo]");
      if (undo) undo.disabled = false;
      delete field.dataset.unsaved;
      if (!left) for (const input of field.querySelectorAll("input[type=text],textarea")) input.defaultValue = input.value;
      if (saved.merged) await renew();
      else if (!left) await next(field);
      if (saved.merged || !left) follow();
    } catch {
      // Not saved, and not lost: it stands in the field, and leaving the page asks first.
      field.dataset.unsaved = "";
      field.querySelector(".fault").textContent = `■ ${work.dataset.gone}`;
    }
  };
  addEventListener("beforeunload", (event) => { if (work.querySelector("[data-unsaved]")) event.preventDefault(); });
  // Somebody else changed the file: fields nobody is at take their new values; what is being typed stays.
  const renew = async () => {
    const answer = await fetch(location.pathname);
    if (!answer.ok) return;
    const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
    for (const field of work.querySelectorAll(".field")) {
      const other = fresh.querySelector(`.field[data-path="${CSS.escape(field.dataset.path)}"]`);
      const typing = [...field.querySelectorAll("input[type=text],textarea")].some((i) => i.value !== i.defaultValue);
      if (other && !typing && !field.contains(document.activeElement) && field.dataset.unsaved === undefined) field.replaceWith(other);
    }
  };
  // The empty block behind the last one was begun: it gets its number, and an empty one comes behind it.
  const next = async (field) => {
    const begun = field.closest("[data-next]");
    if (!begun) return;
    const answer = await fetch(location.pathname);
    if (!answer.ok) return;
    const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
    const find = (path) => fresh.querySelector(`[data-numbered="${CSS.escape(path)}"]`);
    const path = begun.dataset.numbered;
    const same = find(path);
    if (!same || same.dataset.next !== undefined) return;
    delete begun.dataset.next;
    begun.querySelector(":scope > summary").replaceWith(same.querySelector(":scope > summary"));
    const remove = same.querySelector(":scope > button[name=remove]");
    if (remove) begun.append(remove);
    const empty = find(path.replace(/\d+$/, (n) => String(Number(n) + 1)));
    if (empty) begun.after(empty);
  };
  // The propeller is drawn again while its fields are typed in; the last answer counts.
  const drawn = work.querySelector("[data-drawing]");
  if (drawn) {
    const part = drawn.closest("section");
    let timer = 0;
    let mine = 0;
    const draw = async () => {
      const data = new URLSearchParams(new FormData(part.querySelector("form")));
      data.set("width", String(Math.round(drawn.clientWidth)));
      const number = ++mine;
      const answer = await fetch(drawn.dataset.drawing, { method: "POST", body: data }).catch(() => null);
      if (!answer?.ok || number !== mine) return;
      drawn.replaceChildren(document.createRange().createContextualFragment(await answer.text()));
    };
    for (const kind of ["input", "click"]) {
      part.addEventListener(kind, (event) => {
        if (kind === "click" && !event.target.closest("button")) return;
        clearTimeout(timer);
        timer = setTimeout(draw, 150);
      });
    }
  }
  // What the field holds, as the server will show it.
  const now = (field) => {
    const parts = [...field.querySelectorAll("[name^='v:']")].filter((i) => i.type !== "checkbox" || i.checked).map((i) => i.value.trim()).filter(Boolean);
    const source = field.querySelector("[name^='s:']")?.value ?? "";
    const value = parts.flatMap((p) => p.split(",").map((q) => q.trim()).filter(Boolean));
    const text = field.dataset.list === undefined && parts.length < 2 ? parts.join("") : value.join(", ");
    return source && text && !/\([a-z]+\)$/.test(text) ? `${text} (${source})` : text;
  };
  work.addEventListener("change", (event) => {
    const field = event.target.closest(".field");
    if (field) queue = queue.then(() => save(field)).then(again);
  });
  // What could not be sent goes with the next save, or when the network is back.
  const again = async () => {
    for (const field of work.querySelectorAll("[data-unsaved]")) {
      await save(field);
      if (field.dataset.unsaved !== undefined) return;
    }
  };
  addEventListener("online", () => { queue = queue.then(again); });
  work.addEventListener("click", (event) => {
    const button = event.target.closest("button[name=unknown]");
    if (!button) return;
    event.preventDefault();
    const field = button.closest(".field");
    for (const input of field.querySelectorAll("[name^='v:']")) { if (input.type === "checkbox") input.checked = false; else input.value = ""; }
    for (const input of field.querySelectorAll("[name^='s:']")) input.value = "";
    queue = queue.then(() => save(field));
  });
  follow();
}

// Verdicts of the list are worked out one after the other, and only for rows in sight.
const rows = document.querySelectorAll("[data-verdict]");
if (rows.length) {
  let chain = Promise.resolve();
  const seen = new IntersectionObserver((entries) => {
    for (const { isIntersecting, target } of entries) {
      if (!isIntersecting) continue;
      seen.unobserve(target);
      chain = chain.then(async () => {
        const answer = await fetch(target.dataset.verdict).catch(() => null);
        if (answer?.ok) { target.textContent = await answer.text(); target.classList.remove("quiet"); }
      });
    }
  });
  for (const row of rows) seen.observe(row);
}
export { tell };
