// A job from the call to the verdict in headless Chromium, on a phone and at the desk: fields save themselves, two tabs
// merge or ask, a reload loses nothing, without a script the same forms work, nothing is asked of anybody else.
// `node flow.mjs URL [SCREENSHOTS]`, URL as printed by the server; the folder needs a job `kittiwake`.
import { chromium } from "playwright-core";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import assert from "node:assert/strict";

const [given, shots] = process.argv.slice(2);
assert.ok(given, "usage: node flow.mjs URL [FOLDER]");
const base = given.replace(/\/$/, "");
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking", "--disable-component-update"],
});
const SIZES = { phone: { width: 390, height: 844 }, desk: { width: 1280, height: 900 } };
const problems = [];

async function context(size, scheme = "light", more = {}) {
  const made = await browser.newContext({ viewport: SIZES[size], colorScheme: scheme, hasTouch: size === "phone", ...more });
  made.on("request", (request) => {
    if (!request.url().startsWith(`${base}/`) && !request.url().startsWith("data:")) problems.push(`asked elsewhere: ${request.url()}`);
  });
  made.on("weberror", (error) => problems.push(String(error.error())));
  return made;
}

async function look(page, what) {
  const found = await page.evaluate(`${axe}; axe.run(document, { runOnly: ["wcag2a","wcag2aa","wcag21a","wcag21aa","wcag22aa"] })`);
  for (const v of found.violations) problems.push(`${what}: ${v.id}: ${v.help}: ${v.nodes.slice(0, 3).map((n) => n.target.join(" ")).join(" | ")}`);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  if (wide > 1) problems.push(`${what}: ${wide} px wider than the screen`);
  if (shots) await page.screenshot({ path: `${shots}/${what.replaceAll(" ", "-")}.png` });
}

const saved = (page) => page.waitForResponse((r) => r.url().endsWith("/set"));
async function type(page, path, value) {
  const field = page.locator(`[id="f-${path.replace(/[._]/g, "-")}"]`);
  const done = saved(page);
  if (await field.evaluate((input) => input.tagName === "SELECT")) await field.selectOption(value);
  else {
    await field.fill(value);
    await field.blur();
  }
  const status = (await done).status();
  await page.waitForFunction(([id, wrong]) => (document.getElementById(id).textContent !== "") === wrong,
    [`f-${path.replace(/[._]/g, "-")}-says`, status === 422]);
  return status;
}

for (const size of Object.keys(SIZES)) {
  const made = await context(size);
  const page = await made.newPage();
  await page.goto(`${base}/`);
  await look(page, `jobs ${size}`);
  await page.click("a[href='/new']");
  await look(page, `new ${size}`);
  await page.fill("#f-title", `Tern ${size}: short of revs`);
  await page.fill("#f-engine-rated-power", "29 hp");
  await page.selectOption("[name='s:engine.rated_power']", "plate");
  await page.fill("#f-engine-rated-speed", "3600 rpm");
  await page.fill("#f-drive-reduction", "2.6");
  await page.fill("#f-propeller-diameter", "17 in");
  await page.fill("#f-propeller-pitch", "fourteen");
  await page.selectOption("#f-boat-kind", "sailing");
  await page.click("form.call > button.save");
  // A wrong answer brings the page again with everything entered.
  assert.equal(await page.inputValue("#f-propeller-pitch"), "fourteen");
  assert.equal(await page.inputValue("#f-engine-rated-power"), "29 hp");
  assert.equal(await page.inputValue("[name='s:engine.rated_power']"), "plate");
  await page.fill("#f-propeller-pitch", "14 in");
  await page.click("form.call > button.save");
  await page.waitForURL(/\/jobs\/tern/);
  // Without length or weight it says what is missing; then it judges.
  await page.waitForFunction(() => /length/i.test(document.querySelector(".right")?.textContent ?? ""));
  assert.equal(await type(page, "boat.length_waterline", "8.4 m"), 200);
  await page.waitForFunction(() => /chances|rpm/.test(document.getElementById("verdict")?.textContent ?? ""), null, { timeout: 60_000 });
  assert.equal(await type(page, "boat.displacement", "heavy"), 422);
  const says = await page.textContent("[id='f-boat-displacement-says']");
  assert.ok(says.length > 10, says);
  await page.reload();
  assert.equal(await page.inputValue("#f-boat-displacement"), "heavy", "what cannot be read stands after a reload");
  assert.equal(await type(page, "boat.displacement", "6.5 t"), 200);
  assert.equal(await page.textContent("[id='f-boat-displacement-says']"), "");
  // The sentence stays in sight while the page is scrolled to its end.
  await page.evaluate(() => scrollTo(0, document.body.scrollHeight / 2));
  await page.waitForTimeout(300);
  const box = await page.locator("#verdict").boundingBox();
  assert.ok(box && box.y >= -box.height && box.y < SIZES[size].height, `${size}: the sentence is out of sight: ${JSON.stringify(box)}`);
  await look(page, `job ${size}`);
  await page.click("button[data-undo]");
  await page.waitForLoadState();
  assert.notEqual(await page.inputValue("#f-boat-displacement"), "6.5 t");
  assert.equal(await type(page, "boat.displacement", "6.5 t"), 200);
  await readings(page, size);
  await drawing(page, size);
  await order(page, size);
  await made.close();
}

// A reading written by hand gets an empty block behind it; a log is looked at, and what is ticked is taken.
async function readings(page, size) {
  const blocks = () => page.locator("[data-numbered^='reading.']").count();
  const before = await blocks();
  await page.locator("[data-numbered='reading.0'] > summary").click();
  assert.equal(await type(page, "reading.0.engine_speed", "2900 rpm"), 200);
  await page.waitForFunction((n) => document.querySelectorAll("[data-numbered^='reading.']").length === n, before + 1);
  assert.equal(await page.locator("[data-numbered='reading.0'] > button[name=remove]").count(), 1);
  const rows = ["time (s),rpm,speed (kn),course (deg)"];
  for (let t = 0; t < 400; t += 1) {
    const [back, turn] = [t >= 210, t >= 190 && t < 210];
    rows.push(`${t},${turn ? 1200 : 2600},${(back ? 5.8 : 6.4) + 0.02 * Math.sin(t)},${back ? 225 : 45}`);
  }
  await page.setInputFiles("#bring-log", { name: "run.csv", mimeType: "text/csv", buffer: Buffer.from(rows.join("\n")) });
  await page.click("form.bring button");
  await page.waitForURL(/\/log\?log=/);
  await look(page, `log ${size}`);
  assert.ok(await page.locator(".picture svg path.w").count() >= 4, "shaded stretches");
  await page.check("input[name=take][value='1']");
  await page.click("form.offers button");
  await page.waitForURL(/#readings$/);
  assert.match(await page.inputValue("#f-reading-1-label"), /^run\.csv/);
}

// The propeller is drawn again while its fields are typed in, before anything is saved; the sliders draw it too.
async function drawing(page, size) {
  const drawn = (words) => page.waitForFunction((words) => document.querySelector("[data-drawing]").textContent.includes(words), words);
  await drawn("17 × 14 in");
  await page.locator("#f-propeller-pitch").pressSequentially("", { delay: 5 });
  await page.locator("#f-propeller-pitch").fill("12 in");
  await drawn("17 × 12 in");
  await page.locator("#f-propeller-pitch").fill("14 in");
  await drawn("17 × 14 in");
  if (size === "phone") {
    // The foot holds the sentence; all of it comes up by its button.
    const height = () => page.evaluate(() => document.querySelector(".right").getBoundingClientRect().height / innerHeight);
    assert.ok((await height()) <= 0.26, `the foot covers ${await height()} of the page`);
    await page.click(".fold");
    assert.ok((await height()) > 0.6, "it comes up");
  }
  await page.waitForSelector("#try-blades", { timeout: 60_000 });
  await page.evaluate(() => {
    const slider = document.getElementById("try-blades");
    slider.value = "4";
    slider.dispatchEvent(new Event("input", { bubbles: true }));
  });
  await page.waitForFunction(() => document.getElementById("tried-drawing").textContent.includes("4 blades"));
  if (size === "phone") await page.click(".fold");
}

// What is ordered stands on its sheet.
async function order(page, size) {
  assert.equal(await type(page, "propeller.hand", "right"), 200);
  const missing = async () => (await page.context().request.get(`${page.url().split("#")[0]}/papers/order-sheet`)).text();
  await page.locator("#order details").evaluateAll((all) => all.forEach((d) => { d.open = true; }));
  assert.equal(await type(page, "order.pitch", "12 in"), 200);
  assert.equal(await type(page, "order.diameter", "17 in"), 200);
  const sheet = await missing();
  assert.match(sheet, /304\.8/, `the 12 in ordered stand on the sheet in mm, ${size}`);
  await page.click("a[href$='/papers']");
  await look(page, `papers ${size}`);
  await page.click("a[href$='/papers/order-sheet']");
  await page.waitForLoadState();
  assert.match(await page.textContent("body"), /304\.8/);
  const answer = await page.goBack();
  assert.ok(!answer || answer.ok());
}

// Two tabs.
{
  const made = await context("desk");
  const [one, two] = [await made.newPage(), await made.newPage()];
  for (const page of [one, two]) await page.goto(`${base}/jobs/kittiwake`, { waitUntil: "networkidle" });
  const [pitch, blades] = [await one.inputValue("#f-propeller-pitch"), await one.inputValue("#f-propeller-blades")];
  assert.equal(await type(one, "propeller.pitch", "13 in"), 200);
  assert.equal(await type(two, "propeller.blades", blades === "3" ? "4" : "3"), 200);
  await two.waitForFunction(() => document.querySelector("#f-propeller-pitch")?.value === "13 in");
  assert.equal(await type(one, "propeller.blades", "5"), 422, "the other tab had changed it");
  assert.match(await one.textContent("[id='f-propeller-blades-says']"), /Somebody else wrote/);
  assert.equal(await one.inputValue("#f-propeller-blades"), "5");
  assert.equal(await type(one, "propeller.blades", blades), 200, "asked once, then taken");
  assert.equal(await type(one, "propeller.pitch", pitch), 200);
  await made.close();
}

// The server does not answer for a while: nothing typed is lost, and the page says so.
{
  const made = await context("phone");
  const page = await made.newPage();
  await page.goto(`${base}/jobs/kittiwake`, { waitUntil: "networkidle" });
  const was = await page.inputValue("#f-boat-beam");
  await made.setOffline(true);
  await page.fill("#f-boat-beam", "3.2 m");
  await page.locator("#f-boat-beam").blur();
  await page.waitForFunction(() => document.querySelector("[id='f-boat-beam-says']").textContent.includes("does not answer"));
  assert.equal(await page.inputValue("#f-boat-beam"), "3.2 m");
  const again = saved(page);
  await made.setOffline(false);
  assert.equal((await again).status(), 200, "saved as soon as there is an answer again");
  await page.waitForFunction(() => document.querySelector("[id='f-boat-beam-says']").textContent === "");
  assert.equal(await type(page, "boat.beam", was), 200);
  await made.close();
}

// Without a script; dark; Spanish.
{
  const made = await context("phone", "dark", { javaScriptEnabled: false });
  const page = await made.newPage();
  await page.goto(`${base}/jobs/kittiwake`);
  const was = await page.inputValue("#f-boat-beam");
  await page.fill("#f-boat-beam", "3.1 m");
  await page.click("#boat button.save");
  assert.equal(await page.inputValue("#f-boat-beam"), "3.1 m");
  await page.fill("#f-boat-beam", was);
  await page.click("#boat button.save");
  assert.equal(await page.inputValue("#f-boat-beam"), was);
  await page.selectOption("select[name=language]", "es");
  await page.click(".settings button");
  assert.equal(await page.getAttribute("html", "lang"), "es");
  if (shots) await page.screenshot({ path: `${shots}/spanish-dark.png` });
  await made.close();
  for (const size of Object.keys(SIZES)) {
    const dark = await context(size, "dark");
    const job = await dark.newPage();
    await job.goto(`${base}/jobs/kittiwake`, { waitUntil: "networkidle" });
    await look(job, `job dark ${size}`);
    await dark.close();
  }
}

await browser.close();
for (const problem of new Set(problems)) console.error(problem);
assert.equal(problems.length, 0, `${problems.length} problems`);
console.log("flow: well");
