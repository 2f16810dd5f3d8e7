/**
 * A refactoring proves itself before it is offered: with it, every car that rests on the changed files is the same, and
 * reading them tells of nothing that it did not tell of before.
 */
import { LineTable, type Position } from "../../grammar/index.js";
import { applyEdits } from "../findings/edits.js";
import { laidOut } from "./laid-out.js";
import type { ModelProblem } from "../model/problem.js";
import type { FileView } from "../snapshot/workspace.js";
import type { MadeName, Offered, Refactored, Refactoring } from "./refactoring.js";
import { areSameCars } from "./same-cars.js";

/** The refactoring as it can be offered, laid out where the text was; undefined where it would change a car. */
export function proven(refactoring: Refactoring, on: Refactored): Offered | undefined {
  const complete = withLayout(refactoring, on.file);
  const texts = textsOf(complete, on.file);
  const now = on.changed(texts);
  const resting = on.resting([...texts.keys()]);
  if (resting?.every((file) => isUnharmed(file, now(file.uri))) !== true) return undefined;
  const { named, ...rest } = complete;
  return named === undefined ? rest : { ...rest, named: { ...named, position: placeOf(named, texts) } };
}

/** Of its first mention. */
function placeOf({ uri, name }: MadeName, texts: ReadonlyMap<string, string>): Position {
  const text = texts.get(uri) ?? "";
  const found = new RegExp(`(?<![\\p{L}\\p{N}_-])${name}(?![\\p{L}\\p{N}_-])`, "u").exec(text);
  return new LineTable(text).position(found?.index ?? 0);
}

function isUnharmed(before: FileView, after: ReturnType<ReturnType<Refactored["changed"]>>): boolean {
  return countOf(after.problems) <= countOf(before.problems) && areSameCars(before.cars, after.cars);
}

/** A part or a name that nobody uses any more is not wrong. */
const harmless: ReadonlySet<string> = new Set(["unused-part", "unused-let"]);

const countOf = (problems: readonly ModelProblem[]): number =>
  problems.filter(({ kind }) => !harmless.has(kind)).length;

function textsOf({ edits, creates }: Refactoring, file: FileView): ReadonlyMap<string, string> {
  const texts = new Map<string, string>();
  for (const uri of new Set(edits.map((edit) => edit.uri))) texts.set(uri, changedText(uri, edits, file));
  if (creates !== undefined) texts.set(creates.uri, creates.text);
  return texts;
}

const changedText = (uri: string, edits: Refactoring["edits"], file: FileView): string =>
  applyEdits(
    file.textOf(uri) ?? "",
    edits.filter((edit) => edit.uri === uri),
  );

function withLayout(refactoring: Refactoring, file: FileView): Refactoring {
  const uris = [...new Set(refactoring.edits.map(({ uri }) => uri))];
  const edits = uris.flatMap((uri) =>
    laidOut(
      file.textOf(uri) ?? "",
      refactoring.edits.filter((edit) => edit.uri === uri),
    ),
  );
  return { ...refactoring, edits };
}
