/**
 * The panel's page by itself in a browser, with an editor that is played: for the bench and for looking at it.
 *
 * What the page is sent is the server's own answer for a sample. The page is the shipped one (`dist/panel.js`, `dist/panel.css`).
 */
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { createWorkspace } from "../../server/snapshot/create.js";
import type { FileView } from "../../server/snapshot/workspace.js";
import type { MechanismAnswer } from "../../server/lsp/protocol-panel.js";
import { mechanismOfFile } from "../../server/views/mechanism/of-file.js";

export interface Theme {
  /** The class that the editor puts on the page's body. */
  readonly kind: "vscode-light" | "vscode-dark" | "vscode-high-contrast" | "vscode-high-contrast-light";
  readonly colours: Readonly<Record<string, string>>;
}

export const themes = {
  light: {
    kind: "vscode-light",
    colours: { "editor-background": "#ffffff", "editor-foreground": "#3b3b3b", focusBorder: "#005fb8" },
  },
  dark: {
    kind: "vscode-dark",
    colours: { "editor-background": "#1f1f1f", "editor-foreground": "#cccccc", focusBorder: "#0078d4" },
  },
  contrast: {
    kind: "vscode-high-contrast",
    colours: {
      "editor-background": "#000000",
      "editor-foreground": "#ffffff",
      focusBorder: "#f38518",
      contrastBorder: "#6fc3df",
    },
  },
} as const satisfies Readonly<Record<string, Theme>>;

/** A file of the samples as the workspace sees it, by its path there, with some of its text changed. */
export function sampleFile(path: string, change: (text: string) => string = (text) => text): FileView {
  const read = (uri: string): string =>
    readFileSync(new URL(`../../samples/${uri.replace("sample:///", "")}`, import.meta.url), "utf8");
  const workspace = createWorkspace({
    read(uri) {
      try {
        return { text: read(uri) };
      } catch {
        return { missing: "missing" };
      }
    },
  });
  const uri = `sample:///${path}`;
  workspace.set(uri, change(read(uri)));
  return workspace.file(uri);
}

export function answerFor(file: FileView, name?: string): MechanismAnswer {
  return { uri: file.uri, ...mechanismOfFile(file, name) };
}

/** What the page has and this program does not. */
interface InPage {
  sent: unknown[];
  acquireVsCodeApi: () => unknown;
  dispatchEvent(event: unknown): boolean;
  MessageEvent: new (type: string, init: { data: unknown }) => unknown;
}

export async function openPanelPage(page: Page, theme: Theme): Promise<void> {
  const shipped = (name: string): string => readFileSync(`dist/${name}`, "utf8");
  const variables = Object.entries(theme.colours).map(([name, value]) => `--vscode-${name}: ${value};`);
  await page.setContent(
    `<!DOCTYPE html><html lang="en" style="${variables.join("")} --vscode-font-family: 'Liberation Sans', sans-serif"><head>` +
      `<style>${shipped("panel.css")}</style></head><body class="${theme.kind}"><div id="root"></div></body></html>`,
  );
  await page.evaluate(() => {
    const inPage = globalThis as unknown as InPage;
    inPage.sent = [];
    inPage.acquireVsCodeApi = () => ({
      postMessage: (message: unknown) => inPage.sent.push(message),
      getState: () => undefined,
      setState: () => undefined,
    });
  });
  await page.addScriptTag({ content: shipped("panel.js") });
}

export async function tellPage(page: Page, message: unknown): Promise<void> {
  await page.evaluate((data) => {
    const inPage = globalThis as unknown as InPage;
    inPage.dispatchEvent(new inPage.MessageEvent("message", { data }));
  }, message);
}
