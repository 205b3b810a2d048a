// kill -9 of the server amid 200 saves loses nothing that was acknowledged: `FAIRWAKE=program node crash.mjs`. It runs a server of
// its own on a folder of its own.
import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import assert from "node:assert/strict";

const program = process.env.FAIRWAKE;
assert.ok(program, "FAIRWAKE names the program");
const folder = mkdtempSync(join(tmpdir(), "fairwake-crash-"));
const file = join(folder, "tern.toml");
writeFileSync(file, 'title = "Tern: saves under fire" # a comment that stays\n');

async function start() {
  const child = spawn(program, ["workbench", folder, "--no-browser"], { stdio: ["ignore", "pipe", "ignore"] });
  const address = await new Promise((done, fail) => {
    let text = "";
    child.stdout.on("data", (bytes) => { text += bytes; if (text.includes("\n")) done(text.split("\n")[0].replace(/\/$/, "")); });
    child.on("exit", () => fail(new Error("the server ended")));
    setTimeout(() => fail(new Error("no address within 20 s")), 20_000).unref();
  });
  return { child, address };
}

const KEYS = ["call.complaint", "call.notes", "engine.model", "propeller.stamp"];
const EACH = 50;
const acknowledged = Object.fromEntries(KEYS.map((key) => [key, 0]));
let all = 0;

const first = await start();
const gone = new Promise((done) => first.child.on("exit", done));
async function saves(key) {
  let was = "";
  for (let n = 1; n <= EACH; n += 1) {
    const now = `${key} number ${n}.`;
    const body = new URLSearchParams({ [`w:${key}`]: was, [`v:${key}`]: now });
    const answer = await fetch(`${first.address}/jobs/tern/set`, { method: "POST", body, headers: { accept: "application/json" } }).catch(() => null);
    if (!answer) return;
    assert.equal(answer.status, 200);
    if (!(await answer.json().catch(() => null))) return;
    acknowledged[key] = n;
    was = now;
    all += 1;
    // In the midst of it, with other saves under way.
    if (all === 100) first.child.kill("SIGKILL");
  }
}
await Promise.all(KEYS.map(saves));
await gone;
assert.ok(all >= 100 && all < KEYS.length * EACH, `${all} were acknowledged before the end`);

const second = await start();
try {
  const text = await (await fetch(`${second.address}/jobs/tern/file`)).text();
  assert.equal(text, readFileSync(file, "utf8"));
  assert.match(text, /# a comment that stays/);
  for (const key of KEYS) {
    const found = Number(text.match(new RegExp(`${key.replace(".", "\\.")} number (\\d+)\\.`))?.[1] ?? 0);
    assert.ok(found >= acknowledged[key], `${key}: ${acknowledged[key]} was acknowledged, ${found} stands there`);
    assert.ok(found <= acknowledged[key] + 1, `${key}: ${found} stands there, nobody sent it`);
  }
  const states = readdirSync(join(folder, ".fairwake/history/tern")).filter((name) => name.endsWith(".toml"));
  assert.ok(states.length >= all, `${states.length} states kept of ${all} acknowledged`);
  // And it goes on.
  const body = new URLSearchParams({ "w:boat.beam": "", "v:boat.beam": "3 m" });
  const answer = await fetch(`${second.address}/jobs/tern/set`, { method: "POST", body, headers: { accept: "application/json" } });
  assert.equal(answer.status, 200);
} finally {
  second.child.kill("SIGKILL");
  rmSync(folder, { recursive: true, force: true });
}
console.log(`crash: well; ${all} saves acknowledged before the end, all of them there`);
