/** A comparison as workflow commands of a hosted CI: annotations, and only on lines that the pull request changes. */
import type { Change } from "../../views/comparison/change.js";
import type { ComparedFinding, Comparison } from "../../views/comparison/comparison.js";
import { changedLines } from "../../views/comparison/changed-lines.js";
import type { VerdictChange } from "../../views/comparison/verdicts.js";
import type { Compared } from "../comparing/compared.js";
import { shown } from "../workspace.js";
import { workflowCommand } from "./workflow-command.js";

interface Note {
  readonly level: "notice" | "warning" | "error";
  readonly uri: string;
  readonly line: number;
  readonly title: string;
  readonly message: string;
}

export function compareGithub(compared: Compared): string {
  const lines = new Map<string, ReadonlySet<number>>();
  const isChanged = ({ uri, line }: Note): boolean => {
    const known = lines.get(uri) ?? changedLines(compared.textBefore(uri), compared.textAfter(uri) ?? "");
    lines.set(uri, known);
    return known.has(line);
  };
  const notes = compared.review.cars.flatMap(({ comparison }) => (comparison === undefined ? [] : notesOf(comparison)));
  const texts = notes
    .filter(isChanged)
    .map(({ level, uri, line, title, message }) => workflowCommand(level, { file: shown(uri), line, title }, message));
  // The same line of a car is a change in every set-up that rests on it.
  return [...new Set(texts)].join("");
}

function notesOf({ now, changes, verdicts, fresh }: Comparison): readonly Note[] {
  const missed = verdicts.filter(({ status }) => status === "newly-missed");
  return [
    ...changes.flatMap(changeNote),
    ...missed.map((verdict) => missedNote(verdict, now.name)),
    ...fresh.map(findingNote),
  ];
}

function changeNote({ path, old, now, difference }: Change): readonly Note[] {
  if (now?.line === undefined) return [];
  const message = [`${old?.text ?? "nothing"} → ${now.text}`, ...(difference === undefined ? [] : [difference])].join(
    "; ",
  );
  return [{ level: "notice", uri: now.origin.uri, line: now.line, title: path, message }];
}

const missedNote = ({ message, origin, line }: VerdictChange, name: string): Note => ({
  level: "warning",
  uri: origin.uri,
  line,
  title: `newly missed by ${name}`,
  message,
});

const findingNote = ({ severity, uri, line, rule, message }: ComparedFinding): Note => ({
  level: severity === "error" ? "error" : severity === "warning" ? "warning" : "notice",
  uri,
  line,
  title: `bellcrank: ${rule}`,
  message,
});
