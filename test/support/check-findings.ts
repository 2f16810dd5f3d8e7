/**
 * Annotated source as test: under a line, a comment of carets says which finding stands there.
 *
 *   front.thrid.rate 95 N/mm
 * #       ^^^^^ error override-without-target: Did you mean "third"
 *
 * The carets stand under the span (under its part on that line where it goes on below); a `#` that
 * touches them counts as one, for spans in the first column. The id may be left out; the words have
 * to be part of the message. Every finding has to be annotated, and every annotation found.
 */
import { expect } from "vitest";
import { LineTable } from "../../grammar/index.js";
import type { RuleContext } from "../../server/findings/context.js";
import type { Finding } from "../../server/findings/finding.js";
import { runRules } from "../../server/findings/run.js";
import { contextOf, type Files } from "./context.js";

interface Annotation {
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly severity: string;
  readonly rule: string | undefined;
  readonly words: string;
}

export interface Checked {
  /** The source without its annotations: what was checked. */
  readonly text: string;
  readonly context: RuleContext;
  readonly findings: readonly Finding[];
}

const pattern = /^(\s*#?\s*)(\^+)\s+(error|warning|information|hint)(?: ([a-z-]+))?:\s*(.*)$/;

/** Runs all rules over the annotated source and compares; `files` are those that it may use. */
export function checkFindings(annotated: string, files: Files = {}, name = "annotated.crank"): Checked {
  const { text, annotations } = split(annotated);
  const context = contextOf({ ...files, [name]: text }, name);
  const findings = runRules(context).filter((finding) => finding.uri === context.uri);
  expect(shown(text, findings, annotations)).toBe(annotated);
  return { text, context, findings };
}

/** Takes the annotations out of the source. */
export function split(annotated: string): { text: string; annotations: readonly Annotation[] } {
  const lines: string[] = [];
  const annotations: Annotation[] = [];
  for (const line of annotated.split("\n")) {
    const match = pattern.exec(line);
    if (match && lines.length > 0 && line.trimStart().startsWith("#"))
      annotations.push(annotation(match, lines.length - 1));
    else lines.push(line);
  }
  return { text: lines.join("\n"), annotations };
}

function annotation(match: RegExpExecArray, line: number): Annotation {
  const [, lead = "", carets = "", severity = "", rule, words = ""] = match;
  const touching = lead.endsWith("#");
  const from = touching ? lead.length - 1 : lead.length;
  return { line, from, to: lead.length + carets.length, severity, rule, words };
}

/** The text with its real findings written below its lines, in the words of the annotation that fits. */
function shown(text: string, findings: readonly Finding[], annotations: readonly Annotation[]): string {
  const table = new LineTable(text);
  const lines = text.split("\n");
  const below = new Map<number, string[]>();
  const left = [...annotations];
  for (const finding of findings) {
    const place = placeOf(finding, table, lines);
    const fitting = left.findIndex((one) => fits(one, finding, place));
    const as = fitting === -1 ? undefined : left.splice(fitting, 1)[0];
    const notes = below.get(place.line) ?? [];
    notes.push(noteFor(finding, place, as));
    below.set(place.line, notes);
  }
  return lines.flatMap((line, index) => [line, ...(below.get(index) ?? [])]).join("\n");
}

interface Place {
  readonly line: number;
  readonly from: number;
  readonly to: number;
}

function placeOf({ span }: Finding, table: LineTable, lines: readonly string[]): Place {
  const start = table.position(span.start);
  const end = table.position(span.end);
  const lineEnd = lines[start.line]?.length ?? 0;
  const to = end.line === start.line ? end.character : lineEnd;
  return { line: start.line, from: start.character, to: Math.max(to, start.character + 1, 2 - start.character) };
}

function fits(one: Annotation, finding: Finding, place: Place): boolean {
  return (
    one.line === place.line &&
    one.from === place.from &&
    one.to === place.to &&
    one.severity === finding.severity &&
    (one.rule === undefined || one.rule === finding.rule) &&
    finding.message.includes(one.words.replace(/…$/, ""))
  );
}

function noteFor(finding: Finding, { from, to }: Place, as: Annotation | undefined): string {
  const carets = from === 0 ? `#${"^".repeat(to - 1)}` : `#${" ".repeat(from - 1)}${"^".repeat(to - from)}`;
  const rule = as && as.rule === undefined ? "" : ` ${finding.rule}`;
  return `${carets} ${finding.severity}${rule}: ${as?.words ?? finding.message}`;
}
