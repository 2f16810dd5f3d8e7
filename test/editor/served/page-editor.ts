/** The editor under test, driven through its page as a person would drive it. */
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import type { EditorUnderTest, Place, ShownFinding } from "../editor-under-test.js";
import { hoverText } from "./page/hover.js";
import { listedFindings } from "./page/problems.js";
import { chooseFix, fixTitles } from "./page/quick-fix.js";
import { suggestions } from "./page/suggestions.js";
import { inlayTexts, lensTexts } from "./page/text.js";
import { closeAllEditors, cursorAwayFrom, goTo, openFile, runCommand, saveFile } from "./page/workbench.js";

/** Build output, looked at by people. */
const PICTURES = "dist/screenshots";

export class PageEditor implements EditorUnderTest {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  async open(path: string): Promise<void> {
    await this.close();
    await openFile(this.page, path);
  }

  async close(): Promise<void> {
    await closeAllEditors(this.page);
  }

  async save(): Promise<void> {
    await saveFile(this.page);
  }

  async type(from: Place, length: number, text: string): Promise<void> {
    await goTo(this.page, from);
    for (let typed = 0; typed < length; typed++) await this.page.keyboard.press("Shift+ArrowRight");
    // One key after another, as a person would: the server sees every state in between.
    await this.page.keyboard.type(text, { delay: 30 });
    // What is offered meanwhile must not swallow the next key.
    await this.page.keyboard.press("Escape");
  }

  async findings(): Promise<readonly ShownFinding[]> {
    return listedFindings(this.page);
  }

  async hover(at: Place): Promise<string> {
    await goTo(this.page, at);
    return hoverText(this.page, () => this.picture("hover"));
  }

  async inlays(at: Place): Promise<readonly string[]> {
    await goTo(this.page, at);
    return inlayTexts(this.page);
  }

  async lenses(at: Place): Promise<readonly string[]> {
    await goTo(this.page, at);
    return lensTexts(this.page);
  }

  async fixes(at: Place): Promise<readonly string[]> {
    await goTo(this.page, at);
    return fixTitles(this.page);
  }

  async applyFix(at: Place, title: string): Promise<void> {
    await goTo(this.page, at);
    await chooseFix(this.page, title);
  }

  async completions(at: Place): Promise<readonly string[]> {
    await goTo(this.page, at);
    return suggestions(this.page);
  }

  async definition(at: Place): Promise<Place> {
    await goTo(this.page, at);
    await this.page.keyboard.press("F12");
    return cursorAwayFrom(this.page, at.line);
  }

  async format(): Promise<void> {
    await runCommand(this.page, "Format Document");
  }

  async picture(name: string): Promise<void> {
    mkdirSync(PICTURES, { recursive: true });
    await this.page.screenshot({ path: join(PICTURES, `${name}.png`) });
  }
}
