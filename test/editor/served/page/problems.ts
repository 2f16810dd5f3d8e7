/** The panel that lists every finding. Its rows are read by their labels for screen readers. */
import type { Page } from "playwright-core";
import type { ShownFinding } from "../../editor-under-test.js";

const ROW = /^(Error|Warning|Info|Hint): ([\s\S]*) at line (\d+) and character \d+\./;

export async function showProblems(page: Page): Promise<void> {
  if (!(await page.locator(".markers-panel").isVisible())) await page.keyboard.press("Control+Shift+M");
  await page.locator(".markers-panel").waitFor();
}

export async function listedFindings(page: Page): Promise<ShownFinding[]> {
  await showProblems(page);
  const rows = page.locator('.markers-panel [role="treeitem"][aria-level="2"]');
  const read = await rows.evaluateAll((found) =>
    found.map((row) => ({
      label: row.getAttribute("aria-label") ?? "",
      source: row.querySelector(".marker-source")?.textContent ?? "",
      rule: row.querySelector(".marker-code")?.textContent ?? "",
    })),
  );
  return read.filter(({ source }) => source === "bellcrank").map(({ label, rule }) => finding(label, rule));
}

function finding(label: string, rule: string): ShownFinding {
  const [, severity, message, line] = ROW.exec(label) ?? [];
  if (severity === undefined || message === undefined)
    throw new Error(`A problem that is labelled otherwise: ${label}`);
  return { severity: severity.toLowerCase() as ShownFinding["severity"], message, rule, line: Number(line) };
}
