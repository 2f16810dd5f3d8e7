/** The page's frame: commands, opening and closing files. */
import type { Locator, Page } from "playwright-core";
import type { Place } from "../../editor-under-test.js";

/** The one line of input at the top that files, commands and line numbers are typed into. */
function quickInput(page: Page): Locator {
  return page.locator(".quick-input-widget input:visible");
}

/** Runs a command by its title in the palette. */
export async function runCommand(page: Page, title: string): Promise<void> {
  await page.keyboard.press("F1");
  await quickInput(page).fill(`>${title}`);
  const row = page.locator(".quick-input-list .monaco-list-row", { hasText: title }).first();
  await row.waitFor();
  await row.click();
}

/** Opens a file of the workspace; files of one name are told apart by their folder. */
export async function openFile(page: Page, path: string): Promise<void> {
  const [folder = "", name = ""] = path.split("/").slice(-2);
  await page.keyboard.press("Control+P");
  await quickInput(page).fill(path);
  const row = page.locator(".quick-input-list .monaco-list-row", { hasText: name }).filter({ hasText: folder });
  await row.first().click();
  await page.locator(".breadcrumbs-control", { hasText: folder }).filter({ hasText: name }).waitFor();
  await page.locator(".editor-instance .view-line").first().waitFor();
}

/** Closes every file; what was typed into one and not saved, by a check that failed half-way, is dropped. */
export async function closeAllEditors(page: Page): Promise<void> {
  await page.keyboard.press("Escape");
  if (await page.locator(".tab.active.dirty").isVisible()) await runCommand(page, "File: Revert File");
  await runCommand(page, "View: Close All Editors");
  await page.locator(".tab").first().waitFor({ state: "detached" });
}

/** Puts the cursor there, in view and with the keyboard's focus. */
export async function goTo(page: Page, { line, column }: Place): Promise<void> {
  const there = cursorStatus(page).filter({ hasText: new RegExp(`^Ln ${line}, Col ${column}$`) });
  // Scrolling again and again would keep the editor from ever drawing its lenses.
  if (await there.isVisible()) return;
  await page.keyboard.press("Control+G");
  await quickInput(page).fill(`:${line}:${column}`);
  await page.keyboard.press("Enter");
  await quickInput(page).waitFor({ state: "hidden" });
  await there.waitFor();
}

function cursorStatus(page: Page): Locator {
  return page.locator('.statusbar-item[id*="editor.selection"]');
}

/** Waits until the cursor has left the line. */
export async function cursorAwayFrom(page: Page, line: number): Promise<Place> {
  const elsewhere = cursorStatus(page).filter({ hasNotText: `Ln ${line}, ` });
  const [, newLine, column] = /Ln (\d+), Col (\d+)/.exec(await elsewhere.innerText()) ?? [];
  return { line: Number(newLine), column: Number(column) };
}

export async function saveFile(page: Page): Promise<void> {
  await page.keyboard.press("Control+S");
  await page.locator(".tab.active.dirty").waitFor({ state: "detached" });
}
