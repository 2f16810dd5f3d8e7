/**
 * The list of findings that are known and bear with: `check --baseline FILE` fails only on what is not on it.
 *
 * Paths in it are relative to its own folder, so that it says the same wherever the command is called. Findings that
 * share a fingerprint are counted. The form is described by `schema/check-baseline.json` of the package.
 *
 * Invariant: findings of files that were not checked stay on the list.
 */
import { existsSync, readFileSync, realpathSync, writeFileSync } from "node:fs";
import { dirname, relative, resolve } from "node:path";
import { URI } from "vscode-uri";
import { json, schemaVersion } from "../output/json.js";
import { UsageError } from "../usage-error.js";
import { shown } from "../workspace.js";
import type { CheckedFile, CheckedFinding } from "./checked-file.js";
import type { Against, GoneFinding } from "./report.js";

interface KnownFinding {
  readonly file: string;
  readonly rule: string;
  readonly severity: CheckedFinding["severity"];
  readonly place: string;
  readonly fingerprint: string;
  readonly count: number;
}

/** @throws UsageError where the list is not there or is no such list */
export function readKnown(path: string): readonly KnownFinding[] {
  if (!existsSync(path))
    throw new UsageError(`--baseline ${path}: there is no such file; --write-baseline makes it from what is found now`);
  let content: unknown;
  try {
    content = JSON.parse(readFileSync(path, "utf8"));
  } catch {
    throw new UsageError(`--baseline ${path}: is not JSON`);
  }
  const { schema, findings } = (content ?? {}) as { schema?: unknown; findings?: unknown };
  if (!Array.isArray(findings)) throw new UsageError(`--baseline ${path}: is no list of findings`);
  if (schema !== schemaVersion)
    throw new UsageError(`--baseline ${path}: is of another form (schema ${String(schema)}); make it anew`);
  const bad = findings.findIndex((finding) => !isKnownFinding(finding));
  if (bad >= 0) throw new UsageError(`--baseline ${path}: its finding ${bad + 1} cannot be read; make it anew`);
  return findings as readonly KnownFinding[];
}

const severities: ReadonlySet<unknown> = new Set<CheckedFinding["severity"]>([
  "error",
  "warning",
  "information",
  "hint",
]);

function isKnownFinding(value: unknown): value is KnownFinding {
  if (typeof value !== "object" || value === null) return false;
  const { file, rule, severity, place, fingerprint, count } = value as Record<string, unknown>;
  return (
    [file, rule, place, fingerprint].every((text) => typeof text === "string") &&
    severities.has(severity) &&
    Number.isInteger(count) &&
    (count as number) > 0
  );
}

/** Which findings are on the list, and what is on it and was not found where it was looked for. */
export function heldAgainst(list: string, known: readonly KnownFinding[], files: readonly CheckedFile[]): Against {
  const left = known.map((entry) => ({ entry, count: entry.count }));
  const folder = folderOf(list);
  const byFile = grouped(left, ({ entry }) => `${entry.file}\n${entry.fingerprint}`);
  const found = new Set<CheckedFinding>();
  const strike = (finding: CheckedFinding, from: (typeof left)[number] | undefined): void => {
    if (from === undefined) return;
    from.count--;
    found.add(finding);
  };
  const eachFinding = (take: (finding: CheckedFinding, file: string) => void): void => {
    for (const file of files) for (const finding of file.findings) take(finding, pathFrom(folder, file.uri));
  };
  eachFinding((finding, file) =>
    strike(
      finding,
      byFile.get(`${file}\n${finding.fingerprint}`)?.find(({ count }) => count > 0),
    ),
  );
  // A file that is no longer there may have been renamed: its findings are known under their new name too.
  const isThere = new Map<string, boolean>();
  const lost = left.filter(({ entry: { file } }) => {
    const there = isThere.get(file) ?? existsSync(resolve(folder, file));
    isThere.set(file, there);
    return !there;
  });
  const byPrint = grouped(lost, ({ entry }) => entry.fingerprint);
  eachFinding((finding) => {
    if (!found.has(finding))
      strike(
        finding,
        byPrint.get(finding.fingerprint)?.find(({ count }) => count > 0),
      );
  });
  const checked = new Set(files.map(({ uri }) => pathFrom(folder, uri)));
  const gone = left
    .filter(({ entry: { file }, count }) => count > 0 && (checked.has(file) || isThere.get(file) === false))
    .map(({ entry }) => goneFinding(folder, entry));
  return { list: shown(URI.file(resolve(list)).toString()), known: found, gone };
}

function goneFinding(folder: string, { file, rule, severity, place, fingerprint }: KnownFinding): GoneFinding {
  return { path: shown(URI.file(resolve(folder, file)).toString()), rule, severity, place, fingerprint };
}

/** Writes what was found, beside what the list knows of files that were not looked at; how many findings it then holds. */
export function writeKnown(list: string, files: readonly CheckedFile[]): number {
  const folder = folderOf(list);
  const checked = new Set(files.map(({ uri }) => pathFrom(folder, uri)));
  const kept = (existsSync(list) ? readKnown(list) : []).filter(
    ({ file }) => !checked.has(file) && existsSync(resolve(folder, file)),
  );
  const now = files.flatMap((file) => counted(pathFrom(folder, file.uri), file.findings));
  const findings = [...kept, ...now].sort((a, b) => compare(a.file, b.file));
  try {
    writeFileSync(list, json({ findings }));
  } catch (error) {
    throw new UsageError(`--baseline ${list}: cannot be written (${(error as Error).message})`);
  }
  return findings.reduce((sum, { count }) => sum + count, 0);
}

function counted(file: string, findings: readonly CheckedFinding[]): readonly KnownFinding[] {
  const groups = grouped(findings, ({ fingerprint }) => fingerprint);
  return [...groups.values()].flatMap((group) =>
    group.slice(0, 1).map(({ rule, severity, place, fingerprint }) => {
      return { file, rule, severity, place, fingerprint, count: group.length };
    }),
  );
}

/** In the order of code points, whatever the machine's language. */
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function folderOf(list: string): string {
  const folder = dirname(resolve(list));
  if (!existsSync(folder)) throw new UsageError(`--baseline ${list}: there is no folder ${dirname(list)}`);
  return realpathSync(folder);
}

function pathFrom(folder: string, uri: string): string {
  const path = URI.parse(uri).fsPath;
  return relative(folder, existsSync(path) ? realpathSync(path) : path).replaceAll("\\", "/");
}

function grouped<T>(all: readonly T[], keyOf: (one: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const one of all) {
    const key = keyOf(one);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [one]);
    else group.push(one);
  }
  return groups;
}
