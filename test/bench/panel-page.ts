/**
 * The mechanism panel: what the server needs for it after a keystroke, frames of its page while a slider moves over a car of two axles
 * (in Chromium without a window or a graphics card), how long the extension takes to start, and the size of what is installed.
 */
import { existsSync, readFileSync, statSync } from "node:fs";
import { createRequire } from "node:module";
import { resolve } from "node:path";
import { compileFunction } from "node:vm";
import type { Page } from "playwright-core";
import manifest from "../../package.json" with { type: "json" };
import { moveEye } from "../../server/snapshot/move-eye.js";
import { chromiumPath, startChromium } from "../editor/served/chromium.js";
import { answerFor, openPanelPage, sampleFile, tellPage, themes } from "../support/panel-page.js";
import { row, spread } from "./statistics.js";

const SAMPLE = "quill/quill.crank";
const SECONDS = 3;

export async function benchPanel(): Promise<void> {
  console.log("\nmechanism panel");
  benchAnswer();
  benchDrag();
  benchExtension();
  if (chromiumPath() === undefined) {
    console.log("  frames of the page: not measured, there is no Chromium here (BELLCRANK_CHROMIUM names one)");
    return;
  }
  const browser = await startChromium();
  try {
    await benchFrames(await browser.newPage({ viewport: { width: 760, height: 1000 } }));
  } finally {
    await browser.close();
  }
}

/** A new rate each time, so that nothing of the axle is known from before; findings are worked out anyway and not counted. */
function benchAnswer(): void {
  const times: number[] = [];
  let size = 0;
  for (let rate = 40; rate < 80; rate++) {
    const file = sampleFile(SAMPLE, (text) => text.replace("rate 55 N/mm", `rate ${rate} N/mm`));
    file.findings();
    const start = performance.now();
    const answer = answerFor(file);
    times.push(performance.now() - start);
    size = JSON.stringify(answer).length;
  }
  const { p50, p95 } = spread(times.slice(10));
  console.log(row("panel data after a keystroke, median", p50, "ms"));
  console.log(row("panel data after a keystroke, 95th percentile", p95, "ms", { atMost: 50 }));
  console.log(row("panel data, both axles", size / 1024, "KiB"));
}

/** An eye on its way: another place each time. A page asks as the pointer moves, at most thirty times a second. */
function benchDrag(): void {
  const file = sampleFile(SAMPLE);
  const times: number[] = [];
  for (let i = 0; i < 60; i++) {
    const asked = { name: "quill", axle: "front", side: "left", point: "rocker.roll-low" } as const;
    const start = performance.now();
    moveEye(file, { ...asked, to: [0.045, 0.175, 0.34 + 2e-4 * i] });
    times.push(performance.now() - start);
  }
  const { p50, p95 } = spread(times.slice(20));
  console.log(row("dragged eye, leaks and rates with it, median", p50, "ms"));
  console.log(row("dragged eye, 95th percentile", p95, "ms", { atMost: 33 }));
}

/** What the page has and this program does not. */
interface InPage {
  requestAnimationFrame(then: (now: number) => void): number;
  performance: { now(): number };
  document: {
    querySelector(
      selector: string,
    ): { value: string; min: string; max: string; dispatchEvent(event: unknown): boolean } | null;
  };
  Event: new (type: string, init: { bubbles: boolean }) => unknown;
}

async function benchFrames(page: Page): Promise<void> {
  await openPanelPage(page, themes.light);
  await tellPage(page, { kind: "mechanism", answer: answerFor(sampleFile(SAMPLE)) });
  await page.locator('button:text-is("Both")').click();
  await page.locator('button:text-is("Free")').click();
  await page.waitForTimeout(500);
  const frames = await page.evaluate(slidFrames, SECONDS * 1000);
  const told = await page.evaluate(toldFrames, answerFor(sampleFile(SAMPLE)));
  const between = spread(frames);
  console.log(row("frames a second while a slider moves, both axles", 1000 / between.p50, "frames/s", { atLeast: 59 }));
  console.log(row("slowest twentieth of these frames", between.p95, "ms", { atMost: 17.5 }));
  console.log(row("from the server's answer to the drawing", told, "ms"));
}

/** Times between frames, ms, while the roll slider swings through its range as fast as a hand does. */
async function slidFrames(length: number): Promise<number[]> {
  const inPage = globalThis as unknown as InPage;
  const slider = inPage.document.querySelector("#motion-roll");
  if (slider === null) throw new Error("The page has no slider.");
  const reach = Number(slider.max);
  const times: number[] = [];
  const start = inPage.performance.now();
  let last = start;
  await new Promise<void>((done) => {
    const frame = (now: number): void => {
      if (now > start) times.push(now - last);
      last = now;
      slider.value = String(0.9 * reach * Math.sin((now - start) / 250));
      slider.dispatchEvent(new inPage.Event("input", { bubbles: true }));
      if (now - start < length) inPage.requestAnimationFrame(frame);
      else done();
    };
    inPage.requestAnimationFrame(frame);
  });
  return times.slice(5);
}

/** Until the frame behind the one that draws it. */
async function toldFrames(answer: unknown): Promise<number> {
  const inPage = globalThis as unknown as InPage & {
    dispatchEvent(event: unknown): boolean;
    MessageEvent: new (type: string, init: { data: unknown }) => unknown;
  };
  const start = inPage.performance.now();
  inPage.dispatchEvent(new inPage.MessageEvent("message", { data: { kind: "mechanism", answer } }));
  await new Promise<void>((done) => {
    inPage.requestAnimationFrame(() => inPage.requestAnimationFrame(() => done()));
  });
  return inPage.performance.now() - start;
}

/** Loading the bundle and building its client, without the editor's own share and the server's start in a process of its own. */
function benchExtension(): void {
  const bundle = resolve("dist/extension.cjs");
  const start = performance.now();
  const { parts } = loadWithoutEditor(bundle);
  console.log(row("loading the extension, without the editor", performance.now() - start, "ms", { atMost: 150 }));
  if (parts === 0) throw new Error("The extension has no ends.");
  const vsix = resolve(`dist/${manifest.name}-${manifest.version}.vsix`);
  if (existsSync(vsix))
    console.log(row("what is installed (VSIX)", statSync(vsix).size / 2 ** 20, "MiB", { atMost: 3 }));
  else console.log("  size of the VSIX: not measured, none was made (npm run package)");
}

/** `vscode` is the editor's: here it is anything that can be asked for, extended and called. */
function loadWithoutEditor(bundle: string): { readonly parts: number } {
  const require = createRequire(bundle);
  const anything: unknown = new Proxy(function anyPart() {}, {
    get: (target, key) => (key === "prototype" ? target.prototype : typeof key === "symbol" ? undefined : anything),
    apply: () => anything,
    construct: () => ({}),
    // What is imported whole is a copy with this behind it.
    getPrototypeOf: () => anything as object,
  });
  const module = { exports: {} };
  const names = ["require", "module", "exports"];
  const load = compileFunction(readFileSync(bundle, "utf8"), names, { filename: bundle });
  load((name: string): unknown => (name === "vscode" ? anything : require(name)), module, module.exports);
  return { parts: Object.keys(module.exports).length };
}
