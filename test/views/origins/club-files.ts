/** The sample car in memory with further files beside it, and questions put to places of its texts. */
import { readFileSync } from "node:fs";
import { createWorkspace } from "../../../server/snapshot/create.js";
import type { FileView } from "../../../server/snapshot/workspace.js";
import { type Asked, askedAt } from "../../../server/views/origins/asked.js";
import type { ValueChain } from "../../../server/views/origins/chain.js";
import { chainOfAsked } from "../../../server/views/origins/chain-of-asked.js";

export interface ClubFiles {
  readonly fileOf: (name: string) => FileView;
  readonly every: readonly FileView[];
  /** What the first `part` inside the first `marker` asks about. */
  asked(name: string, marker: string, part?: string): Asked;
  chain(name: string, marker: string, part?: string): ValueChain | undefined;
}

export function clubFiles(more: Readonly<Record<string, string>> = {}): ClubFiles {
  const names = ["quill.crank", "parts.crank", "wet.crank", "dry.crank"];
  const club = Object.fromEntries(names.map((name) => [name, readFileSync(`samples/quill/${name}`, "utf8")]));
  const texts: Readonly<Record<string, string | undefined>> = { ...club, ...more };
  const nameIn = (uri: string): string => uri.split("/").at(-1) ?? uri;
  const workspace = createWorkspace({
    read: (uri) => {
      const text = texts[nameIn(uri)];
      return text === undefined ? { missing: "missing" } : { text };
    },
  });
  const uriOf = (name: string): string => (name.startsWith("file:") ? name : `file:///club/${name}`);
  const fileOf = (name: string): FileView => workspace.file(uriOf(name));
  const asked = (name: string, marker: string, part = marker): Asked => {
    const file = fileOf(name);
    const start = file.text.indexOf(marker);
    if (start < 0) throw new Error(`"${marker}" does not stand in ${name}`);
    return askedAt(file, start + marker.indexOf(part) + 1);
  };
  return {
    fileOf,
    every: Object.keys(texts).map(fileOf),
    asked,
    chain: (name, marker, part) => {
      const found = asked(name, marker, part);
      return found.kind === "none" ? undefined : chainOfAsked(found, fileOf);
    },
  };
}

/** "set-up quarrow-wet: front.third.rate 45 N/mm = 45 N/mm" */
export const stepsIn = (chain: ValueChain | undefined): readonly string[] =>
  chain?.steps.map(
    ({ kind, by, text, value }) => `${kind} · ${by} · ${text}${value === undefined ? "" : ` = ${value}`}`,
  ) ?? [];
