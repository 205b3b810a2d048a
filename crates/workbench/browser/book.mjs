// The guide's screenshots: `node book.mjs URL ../../../docs/book/src/pictures`, URL as printed by the server of the demo jobs.
import { chromium } from "playwright-core";
import assert from "node:assert/strict";

const [base, folder] = process.argv.slice(2);
assert.ok(base && folder, "usage: node book.mjs URL FOLDER");
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu", "--disable-quic"],
});

async function open(path, size, phone = false) {
  const agent = phone ? { isMobile: true, hasTouch: true, userAgent: "Mozilla/5.0 (Linux; Android 15) Chrome/142.0 Mobile Safari/537.36" } : {};
  const context = await browser.newContext({ viewport: size, colorScheme: "light", reducedMotion: "reduce", locale: "en-GB", ...agent });
  const page = await context.newPage();
  await page.goto(`${base}/jobs/${path}`, { waitUntil: "networkidle" });
  return page;
}

const desk = { width: 1280, height: 900 };
{
  const page = await open("kittiwake", desk);
  await page.waitForSelector("#try");
  await page.screenshot({ path: `${folder}/job.png` });
  await page.locator("#follows figure.picture").first().screenshot({ path: `${folder}/follows.png` });
}
{
  const page = await open("kittiwake", { width: 390, height: 844 }, true);
  await page.waitForSelector("#try", { state: "attached" });
  await page.screenshot({ path: `${folder}/job-phone.png` });
}
{
  const page = await open("kittiwake/follows", desk);
  await page.evaluate(() => {
    const slider = document.getElementById("try-pitch");
    slider.value = "0.28";
    slider.dispatchEvent(new Event("input", { bubbles: true }));
  });
  await page.waitForSelector("#tried svg");
  await page.locator("#try").evaluate((form) => form.scrollIntoView());
  await page.locator("#tried").screenshot({ path: `${folder}/try.png` });
}
{
  const page = await open("cormorant/blade", { width: 900, height: 900 });
  await page.waitForSelector("#blade[data-drawn]");
  await page.locator("#blade").screenshot({ path: `${folder}/round.png` });
}
{
  const page = await open("kittiwake/explain/slip", { width: 900, height: 900 });
  await page.screenshot({ path: `${folder}/explain.png` });
}
await browser.close();
