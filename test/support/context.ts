/**
 * A rule's context made by hand from a few texts: parsed and resolved, with no analyses. For rules
 * that look at words and values only; a rule that needs figures is tested through the workspace.
 */
import { format, parse, type Parsed } from "../../grammar/index.js";
import type { RuleContext } from "../../server/findings/context.js";
import { applyEdits } from "../../server/findings/edits.js";
import { resolveFile } from "../../server/model/resolve.js";
import type { Missing } from "../../server/model/resolved-file.js";

export type Files = Readonly<Record<string, string>>;

const root = "memory:///club/";

export const uriOf = (name: string): string => root + name;

/** @param files texts by name relative to one folder; names that are not there are missing files. */
export function contextOf(files: Files, name: string): RuleContext {
  const uri = uriOf(name);
  const text = textIn(files, uri);
  if (text === undefined) throw new Error(`no file ${name} among ${Object.keys(files).join(", ")}`);
  const parsed = parse(text);
  const resolved = resolveFile(uri, sourceIn(files), readIn(files));
  return {
    uri,
    text,
    parsed,
    problems: resolved.problems,
    cars: [],
    textOf: (other) => textIn(files, other),
    retry: (edits) => contextOf(edited(files, edits), name),
  };
}

type Edits = Parameters<RuleContext["retry"]>[0];

function edited(files: Files, edits: Edits): Files {
  const entries = Object.entries(files).map(([name, text]) => {
    const own = edits.filter((edit) => edit.uri === uriOf(name));
    return [
      name,
      applyEdits(
        text,
        own.map((edit) => ({ span: edit, newText: edit.newText })),
      ),
    ] as const;
  });
  return Object.fromEntries(entries);
}

function textIn(files: Files, uri: string): string | undefined {
  return uri.startsWith(root) ? files[decodeURIComponent(uri.slice(root.length))] : undefined;
}

function sourceIn(files: Files): (uri: string) => { parsed: Parsed } | { missing: Missing } {
  const parsed = new Map<string, Parsed>();
  return (uri) => {
    const text = textIn(files, uri);
    if (text === undefined) return { missing: uri.startsWith(root) ? "missing" : "outside" };
    const known = parsed.get(uri) ?? parse(text);
    parsed.set(uri, known);
    return { parsed: known };
  };
}

function readIn(files: Files): (uri: string) => { text: string } | { missing: Missing } {
  return (uri) => {
    const text = textIn(files, uri);
    return text === undefined ? { missing: uri.startsWith(root) ? "missing" : "outside" } : { text };
  };
}

/** Whether the text is laid out as the formatter would. */
export const isFormatted = (text: string): boolean => format(text) === text;
