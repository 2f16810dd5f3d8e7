/** The extension's manifest and the code behind it say the same. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { isDeepStrictEqual } from "node:util";
import { describe, expect, it } from "vitest";
import manifest from "../../package.json" with { type: "json" };
import { readSettings } from "../../server/lsp/settings.js";

const { contributes } = manifest;
const clientSource = ["client", "client/commands", "client/compare", "client/panel"]
  .flatMap((folder) => readdirSync(folder).map((name) => `${folder}/${name}`))
  .filter((path) => path.endsWith(".ts"))
  .map((path) => readFileSync(path, "utf8"))
  .join("\n");

describe("the manifest", () => {
  const language = contributes.languages[0];

  it.each([
    manifest.icon,
    language?.icon.light,
    language?.icon.dark,
    language?.configuration,
    contributes.grammars[0]?.path,
    contributes.snippets[0]?.path,
  ])("names %s, which is there", (path) => {
    expect(path).toBeDefined();
    expect(existsSync(path ?? "")).toBe(true);
  });

  it.each(contributes.commands.map(({ command }) => command))("has the command %s registered", (command) => {
    expect(clientSource).toContain(`"${command}"`);
  });

  it("walks through steps that are there, by commands that are", () => {
    const named = new Set(contributes.commands.map(({ command }) => command));
    const [{ steps } = { steps: [] }] = contributes.walkthroughs;
    expect(steps).toHaveLength(5);
    for (const { description, media, completionEvents } of steps) {
      expect(existsSync(media.markdown)).toBe(true);
      // A drawing of our own, told in words too.
      const [, alternative = "", drawing = ""] =
        /!\[([^\]]+)\]\(([^)]+)\)/.exec(readFileSync(media.markdown, "utf8")) ?? [];
      expect(alternative.length).toBeGreaterThan(20);
      expect(readFileSync(`client/walkthrough/${drawing}`, "utf8")).toContain(`<title>${alternative}</title>`);
      const commands = [...description.matchAll(/\(command:([^)]+)\)/g)].map(([, command]) => command ?? "");
      expect(completionEvents).toEqual(commands.map((command) => `onCommand:${command}`));
      for (const command of commands) expect(named).toContain(command);
    }
  });

  it("offers a start by commands that are, in views that are", () => {
    const { explorer } = contributes.views;
    const views = ["explorer", "testing", ...explorer.map(({ id }) => id)];
    const named = contributes.commands.map(({ command }) => command);
    const [walkthrough] = contributes.walkthroughs;
    const walks = `workbench.action.openWalkthrough?${encodeURIComponent(`"${manifest.publisher}.${manifest.name}#${walkthrough?.id}"`)}`;
    for (const { view, contents, when } of contributes.viewsWelcome) {
      expect(views).toContain(view);
      for (const [, command] of contents.matchAll(/\(command:([^)]+)\)/g))
        expect([...named, walks]).toContain(command ?? "");
      if (when !== undefined) expect(clientSource).toContain(`"${when}"`);
    }
    for (const { icon, when } of explorer) {
      expect(existsSync(icon)).toBe(true);
      expect(clientSource).toContain(`"${/!(\S+)$/.exec(when)?.[1]}"`);
    }
  });

  it("copies all of the example", () => {
    const [, named = ""] = /FILES = \[CAR, ([^\]]*)\]/.exec(clientSource) ?? [];
    const copied = ["quill.crank", ...named.split(", ").map((name) => name.replaceAll('"', ""))];
    expect(copied.sort()).toEqual(readdirSync("samples/quill").sort());
  });

  it("has every registered command", () => {
    const registered = [...clientSource.matchAll(/"(bellcrank\.[a-zA-Z]+)"/g)].map(([, name]) => name ?? "");
    const views = [
      "bellcrank.findings",
      "bellcrank.expectations",
      "bellcrank.sheet",
      "bellcrank.comparison",
      "bellcrank.mechanism",
      // A context key.
      "bellcrank.hasFiles",
      // Only run behind a refactoring, with the place that it names.
      "bellcrank.renameHere",
    ];
    const named = contributes.commands.map(({ command }) => command);
    expect([...new Set(registered)].filter((name) => !views.includes(name) && !name.endsWith(".svg")).sort()).toEqual(
      named.sort(),
    );
  });

  it("has no setting that nothing reads", () => {
    const settings = Object.entries(contributes.configuration.properties);
    // The client library reads this one itself.
    const ours = settings.filter(([name]) => name !== "bellcrank.trace.server");
    expect(ours.length).toBeGreaterThan(0);
    const otherValue = (setting: (typeof ours)[number][1]): unknown =>
      "enum" in setting ? setting.enum.find((value) => value !== setting.default) : !setting.default;
    const isRead = ([name, setting]: (typeof ours)[number]): boolean => {
      const [, group = "", key = ""] = name.split(".");
      return !isDeepStrictEqual(readSettings({ [group]: { [key]: otherValue(setting) } }), readSettings({}));
    };
    expect(ours.filter((setting) => !isRead(setting))).toEqual([]);
  });

  it("trusts no workspace and asks for none on disk", () => {
    expect(manifest.capabilities).toEqual({ untrustedWorkspaces: { supported: true }, virtualWorkspaces: true });
  });

  it("asks for an editor that its client library works in", () => {
    const library = JSON.parse(readFileSync("node_modules/vscode-languageclient/package.json", "utf8")) as {
      engines: { vscode: string };
    };
    expect(minor(manifest.engines.vscode)).toBeGreaterThanOrEqual(minor(library.engines.vscode));
    // And for none newer than the types that it is checked against.
    expect(minor(manifest.engines.vscode)).toBeGreaterThanOrEqual(minor(manifest.devDependencies["@types/vscode"]));
  });
});

/** "^1.99.0" → 99 */
function minor(range: string): number {
  return Number(/\d+\.(\d+)/.exec(range)?.[1]);
}
