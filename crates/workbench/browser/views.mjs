// What follows, explained terms and the propeller in the round, in headless Chromium: latency of the sliders, nothing from
// elsewhere, axe-core, pictures not blank. `node views.mjs URL [SCREENSHOTS] [MOVES]`, URL as printed by the server; to measure
// the sliders: a release build, 200 moves, an empty folder name for no screenshots.
import { chromium } from "playwright-core";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import assert from "node:assert/strict";

const [base, shots, count] = process.argv.slice(2);
const MOVES = Number(count ?? 40);
assert.ok(base, "usage: node views.mjs URL [FOLDER]");
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking", "--disable-component-update"],
});

const SIZES = { phone: { width: 390, height: 844 }, desk: { width: 1280, height: 900 } };
const PHONE = "Mozilla/5.0 (Linux; Android 15) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/142.0 Mobile Safari/537.36";
const PAGES = ["", "new", ...["", "/follows", "/follows?pitch=0.28&skew=30", "/causes", "/shortlist", "/fits", "/log", "/history", "/papers", "/blade",
  "/explain", "/explain/pitch", "/explain/paddlewheel", "/explain/skew"].map((tail) => `jobs/kittiwake${tail}`),
"jobs/dunlin", "jobs/gannet/explain/curves"];
const problems = [];

async function open(size, scheme, path, language = "en") {
  const context = await browser.newContext({ viewport: SIZES[size], colorScheme: scheme,
    ...(size === "phone" ? { isMobile: true, hasTouch: true, userAgent: PHONE } : {}) });
  const page = await context.newPage();
  page.on("request", (request) => {
    const url = request.url();
    if (!url.startsWith(base) && !url.startsWith("data:")) problems.push(`${path} asked elsewhere: ${url}`);
  });
  page.on("pageerror", (error) => problems.push(`${path}: ${error}`));
  page.on("console", (message) => message.type() === "error" && problems.push(`${path}: ${message.text()}`));
  const answer = await page.goto(`${base}/${path}${path.includes("?") ? "&" : "?"}language=${language}`, { waitUntil: "load" });
  assert.equal(answer.status(), 200, path);
  // The right side of a job is fetched by its script.
  if (await page.locator("[data-follows]").count()) await page.waitForSelector("#try, #follows ul", { state: "attached", timeout: 60_000 });
  return page;
}

async function accessible(page, what, rules) {
  // The page's policy forbids scripts from elsewhere; the test's own comes in by the debugger.
  const wanted = JSON.stringify(rules ?? ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]);
  const found = await page.evaluate(`${axe}; axe.run(document, { runOnly: ${wanted} })`);
  for (const v of found.violations) {
    problems.push(`${what}: ${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map((n) => n.target.join(" ")).join(" | ")}`);
  }
}

// ONLY=sliders leaves the pages out: for measuring.
for (const size of Object.keys(SIZES)) {
  for (const path of process.env.ONLY === "sliders" ? [] : PAGES) {
    const page = await open(size, "light", path);
    for (const scheme of ["light", "dark"]) {
      await page.emulateMedia({ colorScheme: scheme });
      // What the dark side changes is colour.
      await accessible(page, `/${path} ${size} ${scheme}`, scheme === "dark" ? ["color-contrast"] : undefined);
      if (shots) await page.screenshot({ path: `${shots}/${path.replaceAll(/[/?&=]/g, "-")}-${size}-${scheme}.png`, fullPage: true });
    }
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    if (wide > 1) problems.push(`/${path} ${size}: ${wide} px wider than the screen`);
    await page.context().close();
  }
}

// The propeller in the round: drawn, both sides seen, turned by keys and by hand, nearer by the wheel.
{
  const page = await open("desk", "light", "jobs/kittiwake/blade");
  await page.waitForSelector("#blade[data-drawn]");
  const inked = () => page.evaluate(() => {
    const canvas = document.getElementById("blade");
    const data = canvas.getContext("2d").getImageData(0, 0, canvas.width, canvas.height).data;
    let count = 0;
    let sum = 0;
    for (let i = 3; i < data.length; i += 4) if (data[i] > 0) { count += 1; sum = (sum + (i * 31 + data[i - 1] * 7 + data[i - 3])) % 1e9; }
    return { share: count / (data.length / 4), sum };
  });
  const first = await inked();
  assert.ok(first.share > 0.08 && first.share < 0.9, `blank canvas: ${JSON.stringify(first)}`);
  await page.focus("#blade");
  await page.keyboard.press("ArrowRight");
  await page.waitForTimeout(150);
  const turned = await inked();
  assert.notEqual(turned.sum, first.sum, "arrow keys do not turn it");
  await page.keyboard.press("+");
  await page.waitForTimeout(150);
  assert.ok((await inked()).share > turned.share, "plus does not come nearer");
  const box = await page.locator("#blade").boundingBox();
  await page.mouse.move(box.x + 200, box.y + 200);
  await page.mouse.down();
  await page.mouse.move(box.x + 320, box.y + 230, { steps: 4 });
  await page.mouse.up();
  await page.waitForTimeout(150);
  assert.notEqual((await inked()).sum, turned.sum, "dragging does not turn it");
  for (const from of ["astern", "ahead"]) {
    await page.click(`button[data-from=${from}]`);
    await page.waitForTimeout(150);
    if (shots) await page.locator("#blade").screenshot({ path: `${shots}/blade-${from}.png` });
  }
  await page.context().close();
}

// Spanish, imperial units, a change from the address without script.
{
  const page = await open("phone", "light", "jobs/kittiwake/follows", "es");
  assert.equal(await page.getAttribute("html", "lang"), "es");
  assert.match(await page.textContent("#try-title"), /Probar/);
  await page.context().close();
  const context = await browser.newContext({ javaScriptEnabled: false });
  const bare = await context.newPage();
  await bare.goto(`${base}/jobs/kittiwake/follows?pitch=0.2286&units=imperial`);
  assert.match(await bare.textContent("#tried"), /With .* 9 in/);
  assert.ok(await bare.locator("#tried svg").count());
  await context.close();
}

// From slider move to new picture: the event to the frame after the page has changed.
async function latency(job, key) {
  const page = await open("desk", "light", `jobs/${job}`);
  await page.waitForSelector("#try");
  const times = await page.evaluate(async ([key, moves]) => {
    const slider = document.getElementById(`try-${key}`);
    const tried = document.getElementById("tried");
    const [low, high, step] = [slider.min, slider.max, slider.step].map(Number);
    const places = Math.floor((high - low) / step);
    const painted = () => new Promise((done) => requestAnimationFrame(() => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => done();
      channel.port2.postMessage(0);
    }));
    const list = [];
    for (let i = 0; i < 3 * moves && list.length < moves + 5; i += 1) {
      const before = slider.value;
      slider.value = String(low + step * ((i * 7) % places));
      if (slider.value === before || Math.abs(slider.value - slider.dataset.fitted) < step / 2) continue;
      const changed = new Promise((done) => {
        const watch = new MutationObserver(() => { watch.disconnect(); done(); });
        watch.observe(tried, { childList: true });
      });
      const start = performance.now();
      slider.dispatchEvent(new Event("input", { bubbles: true }));
      await changed;
      await painted();
      list.push(performance.now() - start);
      if (!tried.querySelector("svg")) throw new Error("no picture");
    }
    return list.slice(-moves);
  }, [key, MOVES]);
  await page.context().close();
  times.sort((a, b) => a - b);
  const at = (share) => times[Math.min(times.length - 1, Math.ceil(share * times.length) - 1)].toFixed(1);
  if (times.length < MOVES) problems.push(`${job} ${key}: only ${times.length} moves`);
  console.log(`${job} ${key}: ${times.length} moves, median ${at(0.5)} ms, 99 % ${at(0.99)} ms, most ${at(1)} ms`);
  return Number(at(0.5));
}

const medians = [];
for (const [job, key] of [["kittiwake", "pitch"], ["kittiwake", "weight"], ["turnstone", "diameter"], ["turnstone", "weight"]]) {
  medians.push(await latency(job, key));
}
// A machine that tests run on beside others is slow at times: the median must hold everywhere, the rest is printed.
if (Math.max(...medians) > 200) problems.push(`slow: ${medians}`);

await browser.close();
for (const problem of new Set(problems)) console.error(problem);
assert.equal(problems.length, 0, `${problems.length} problems`);
console.log("views: well");
