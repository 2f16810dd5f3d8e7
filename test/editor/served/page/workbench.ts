/** The page's frame: commands, opening and closing files. */
import type { Locator, Page } from "playwright-core";
import type { Place } from "../../editor-under-test.js";

const KEY_TRIES = 5;
const KEY_WAIT_MS = 3_000;

/** The one line of input at the top that files, commands and line numbers are typed into. */
function quickInput(page: Page): Locator {
  return page.locator(".quick-input-widget input:visible");
}

/** Opens that line by its key and fills it; a key that comes while the last line is still going away is lost. */
async function fillQuickInput(page: Page, key: string, text: string): Promise<void> {
  await quickInput(page).waitFor({ state: "hidden" });
  for (let tried = 1; ; tried++) {
    await page.keyboard.press(key);
    try {
      await quickInput(page).fill(text, { timeout: KEY_WAIT_MS });
      return;
    } catch (error) {
      if (tried === KEY_TRIES) throw error;
    }
  }
}

/** Runs a command by its title in the palette; where something else took the focus, the palette goes away and is asked anew. */
export async function runCommand(page: Page, title: string): Promise<void> {
  const row = page.locator(".quick-input-list .monaco-list-row", { hasText: title }).first();
  for (let tried = 1; ; tried++) {
    await fillQuickInput(page, "F1", `>${title}`);
    try {
      await row.click({ timeout: KEY_WAIT_MS });
      break;
    } catch (error) {
      if (tried === KEY_TRIES) throw error;
      await page.keyboard.press("Escape");
    }
  }
  await quickInput(page).waitFor({ state: "hidden" });
}

/** Runs a command that goes on to ask in the same line of input. */
export async function commandThatAsks(page: Page, title: string): Promise<void> {
  await fillQuickInput(page, "F1", `>${title}`);
  await page.locator(".quick-input-list .monaco-list-row", { hasText: title }).first().click();
}

/** A command that asks something first: the row of its list is then chosen. */
export async function commandWithChoice(page: Page, title: string, choice: string): Promise<void> {
  const row = (text: string): Locator => page.locator(".quick-input-list .monaco-list-row", { hasText: text }).first();
  await commandThatAsks(page, title);
  await page.locator(".quick-input-list .monaco-list-row", { hasNotText: title }).first().waitFor();
  await quickInput(page).fill(choice);
  await row(choice).click();
}

/** Opens a file of the workspace; files of one name are told apart by their folder. */
export async function openFile(page: Page, path: string): Promise<void> {
  const [folder = "", name = ""] = path.split("/").slice(-2);
  await fillQuickInput(page, "Control+P", path);
  const row = page.locator(".quick-input-list .monaco-list-row", { hasText: name }).filter({ hasText: folder });
  await row.first().click();
  await page.locator(".breadcrumbs-control", { hasText: folder }).filter({ hasText: name }).waitFor();
  await page.locator(".editor-instance .view-line").first().waitFor();
}

/** Closes every file and page; what was typed and not saved, by a check that failed half-way, is dropped. */
export async function closeAllEditors(page: Page): Promise<void> {
  await page.keyboard.press("Escape");
  const tabs = page.locator(".tab");
  for (let open = await tabs.count(); open > 0; open--) {
    await runCommand(page, "View: Revert and Close Editor");
    await tabs.nth(open - 1).waitFor({ state: "detached" });
  }
}

/** Puts the cursor there, in view and with the keyboard's focus. */
export async function goTo(page: Page, { line, column }: Place): Promise<void> {
  const there = cursorStatus(page).filter({ hasText: new RegExp(`^Ln ${line}, Col ${column}$`) });
  // Scrolling again and again would keep the editor from ever drawing its lenses.
  if (await there.isVisible()) return;
  await fillQuickInput(page, "Control+G", `:${line}:${column}`);
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
