/** The settings that the server reads from the client (`bellcrank.*`); anything malformed falls back to the default. */
export interface Settings {
  readonly inlayHints: boolean;
  readonly codeLens: boolean;
  /** Whose findings are given: `allFiles` adds those that nobody has open, to clients that pull. */
  readonly findingsScope: FindingsScope;
}

type FindingsScope = "openFiles" | "allFiles";

export const defaultSettings: Settings = { inlayHints: true, codeLens: true, findingsScope: "openFiles" };

export function readSettings(given: unknown): Settings {
  return {
    inlayHints: flag(given, "inlayHints", defaultSettings.inlayHints),
    codeLens: flag(given, "codeLens", defaultSettings.codeLens),
    findingsScope: property(property(given, "findings"), "scope") === "allFiles" ? "allFiles" : "openFiles",
  };
}

/** `{ inlayHints: { enabled: false } }`, as the settings page of an editor nests it. */
function flag(given: unknown, group: string, fallback: boolean): boolean {
  const section = property(given, group);
  const enabled = property(section, "enabled");
  return typeof enabled === "boolean" ? enabled : fallback;
}

function property(of: unknown, key: string): unknown {
  return typeof of === "object" && of !== null ? (of as Record<string, unknown>)[key] : undefined;
}
