/** The editor's settings for a run: nothing that greets, asks, updates or covers the text. */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

export const settings = {
  "workbench.startupEditor": "none",
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "workbench.tips.enabled": false,
  "chat.disableAIFeatures": true,
  "explorer.autoReveal": false,
  "editor.minimap.enabled": false,
  "editor.wordWrap": "off",
  "editor.stickyScroll.enabled": false,
  "files.autoSave": "off",
  "telemetry.telemetryLevel": "off",
  "update.mode": "none",
  "extensions.autoUpdate": false,
  "extensions.autoCheckUpdates": false,
  "extensions.ignoreRecommendations": true,
};

/** Where the extension runs: beside the editor's server, on Node; or in the browser, in a worker. */
export type ExtensionHost = "server" | "browser";

const inBrowser = { "remote.extensionKind": { "bellcrank.bellcrank": ["web"] } };

export function writeSettings(userData: string, host: ExtensionHost): void {
  mkdirSync(join(userData, "User"), { recursive: true });
  writeFileSync(
    join(userData, "User", "settings.json"),
    JSON.stringify({ ...settings, ...(host === "browser" ? inBrowser : {}) }, undefined, 2),
  );
}
