/**
 * A rule's context from a few texts, made by the engine itself: parsed, resolved, figures when
 * they are asked for.
 */
import { format } from "../../grammar/index.js";
import type { RuleContext } from "../../server/findings/context.js";
import { AxleAnalyses } from "../../server/snapshot/axle-analyses.js";
import { CheckedFiles } from "../../server/snapshot/checked-files.js";
import { DocumentTexts } from "../../server/snapshot/texts.js";

export type Files = Readonly<Record<string, string>>;

const root = "memory:///club/";

export const uriOf = (name: string): string => root + name;

/** @param files texts by name relative to one folder; names that are not there are missing files. */
export function contextOf(files: Files, name: string): RuleContext {
  if (files[name] === undefined) throw new Error(`no file ${name} among ${Object.keys(files).join(", ")}`);
  const texts = new DocumentTexts({ read: (uri) => textIn(files, uri) });
  return new CheckedFiles(texts, new AxleAnalyses()).context(uriOf(name));
}

function textIn(files: Files, uri: string): { text: string } | { missing: "missing" | "outside" } {
  if (!uri.startsWith(root)) return { missing: "outside" };
  const text = files[decodeURIComponent(uri.slice(root.length))];
  return text === undefined ? { missing: "missing" } : { text };
}

/** Whether the text is laid out as the formatter would. */
export const isFormatted = (text: string): boolean => format(text) === text;
