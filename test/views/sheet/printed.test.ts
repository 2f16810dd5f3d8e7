/** The sheet in a real browser, as the printer gets it: pages, nothing cut, readable without colour. Skipped where none is. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { chromiumPath, startChromium } from "../../editor/served/chromium.js";

const there = chromiumPath() !== undefined;
if (!there) console.log("Printed sheets are not looked at: no Chromium here (BELLCRANK_CHROMIUM names one).");

const cli = resolve("dist/cli.js");
const SAMPLES = ["quill/wet", "quill/dry", "tern/primrose", "tern/scales", "dunlin/dunlin", "dunlin/november"];

/** A4 with the margins of the sheet, in pixels of CSS. */
const PRINTED_WIDTH = ((210 - 24) / 25.4) * 96;

/** WCAG 2.1, 1.4.6: of small text, enhanced. */
const CONTRAST = 7;

interface Looked {
  readonly wide: readonly string[];
  readonly faint: readonly string[];
  readonly boxes: number;
}

const pagesIn = (pdf: Buffer): number => (pdf.toString("latin1").match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length;

describe.skipIf(!there)("a printed setup sheet", () => {
  let browser: Browser;
  let page: Page;
  const folder = mkdtempSync(join(tmpdir(), "sheets "));

  beforeAll(async () => {
    browser = await startChromium();
    // The sheet lets no script in; the one that looks at it comes from outside.
    page = await browser.newPage({ viewport: { width: Math.round(PRINTED_WIDTH), height: 1000 }, bypassCSP: true });
    await page.emulateMedia({ media: "print" });
  });
  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  });

  async function printed(path: string, ...args: string[]): Promise<Looked & { readonly pages: number }> {
    const html = join(folder, "sheet.html");
    const { stderr } = spawnSync(process.execPath, [cli, "sheet", path, ...args, "--output", html], {
      encoding: "utf8",
    });
    expect(stderr).toBe("");
    await page.goto(`file://${html}`);
    await page.addScriptTag({ path: "test/views/sheet/look-at-page.js" });
    const looked = await page.evaluate<Looked>(`lookAtPage(${PRINTED_WIDTH}, ${CONTRAST})`);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    return { ...looked, pages: pagesIn(pdf) };
  }

  it.each(SAMPLES)("of %s fits on two pages of A4, with nothing cut and nothing faint", async (name) => {
    const { wide, faint, boxes, pages } = await printed(`samples/${name}.crank`);
    expect(wide).toEqual([]);
    expect(faint).toEqual([]);
    expect(boxes).toBeGreaterThanOrEqual(12);
    expect(pages).toBeGreaterThanOrEqual(1);
    expect(pages).toBeLessThanOrEqual(2);
  });

  it("cuts nothing of long names and long notes either", async () => {
    const long = "an-element-that-somebody-has-given-a-name-far-too-long-to-be-read-aloud-in-the-paddock";
    const car = readFileSync("samples/quill/quill.crank", "utf8")
      .replaceAll("roll-damper", long)
      .replace("car quill", `## ${"Never lift. ".repeat(60)}\ncar quill`);
    writeFileSync(join(folder, "parts.crank"), readFileSync("samples/quill/parts.crank"));
    writeFileSync(join(folder, "long.crank"), car);
    const { wide, pages } = await printed(join(folder, "long.crank"));
    expect(wide).toEqual([]);
    expect(pages).toBeLessThanOrEqual(3);
  });

  it("comes as a PDF of the same pages from the command itself", () => {
    const target = join(folder, "wet.pdf");
    const { status, stderr } = spawnSync(process.execPath, [cli, "sheet", "samples/quill/wet.crank", "--pdf", target], {
      encoding: "utf8",
    });
    expect(stderr).toBe("");
    expect(status).toBe(0);
    expect(readFileSync(target).subarray(0, 5).toString()).toBe("%PDF-");
    expect(pagesIn(readFileSync(target))).toBeLessThanOrEqual(2);
  });
});
