/** The Testing view: its rows are read by their labels for screen readers, which tell the state of each test. */
import type { Page } from "playwright-core";
import { runCommand } from "./workbench.js";

const ROWS = ".test-explorer .monaco-list-row";

export async function showTests(page: Page): Promise<void> {
  await runCommand(page, "Testing: Focus on Test Explorer View");
  await page.locator(ROWS).first().waitFor();
}

/** Other checks have left cars of their own in the folder. */
export async function showOnlyTestsOfFile(page: Page): Promise<void> {
  await page.locator(".test-explorer .monaco-editor, .testing-filter-wrapper .monaco-editor").first().click();
  await page.keyboard.press("Control+A");
  await page.keyboard.type("@doc ");
}

export const runTestsOfFile = (page: Page): Promise<void> => runCommand(page, "Test: Run Tests in Current File");

/** Opens every row that is in view and closed. */
export async function openRows(page: Page): Promise<void> {
  const closed = page.locator(`${ROWS}[aria-expanded="false"]`);
  while ((await closed.count()) > 0) {
    await closed.first().click();
    await page.keyboard.press("ArrowRight");
  }
}

export const testLabels = (page: Page): Promise<string[]> =>
  page.locator(ROWS).evaluateAll((rows) => rows.map((row) => row.getAttribute("aria-label") ?? row.textContent ?? ""));
