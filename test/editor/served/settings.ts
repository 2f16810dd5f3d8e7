/** The editor's settings for a run: nothing that greets, asks, updates or covers the text. */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const settings = {
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

export function writeSettings(userData: string): void {
  mkdirSync(join(userData, "User"), { recursive: true });
  writeFileSync(join(userData, "User", "settings.json"), JSON.stringify(settings, undefined, 2));
}
