/** Load cases and expectations, and who speaks of a case by name. */
import type { CaseModel, ExpectationModel, ResolvedValue } from "./car.js";
import { checkFigure, hasLostElements, isOfNoElement } from "./figure-check.js";
import { numberIn } from "./given.js";
import type { Given, Origin } from "./origin.js";
import type { Sink } from "./sink.js";
import { wordIn, type CarTree, type TreeStatement } from "./tree.js";

/** Case names with the place where each was declared first. */
export function caseRoots(tree: CarTree): ReadonlyMap<string, Origin> {
  const roots = new Map<string, Origin>();
  for (const { word, name, root } of tree.block.statements) {
    if (word === "case" && name !== undefined) roots.set(name.text, root ?? name.origin);
  }
  return roots;
}

export function casesOf(tree: CarTree): readonly CaseModel[] {
  return tree.block.statements.flatMap((statement) => {
    const { word, name, block, origin } = statement;
    if (word !== "case" || name === undefined || block === undefined) return [];
    const speed = numberIn(block, "speed");
    const lateral = numberIn(block, "lateral");
    const longitudinal = numberIn(block, "longitudinal");
    return [{ name: name.text, origin, nameOrigin: name.origin, speed, lateral, longitudinal, block }];
  });
}

type PathValue = Extract<ResolvedValue, { kind: "path" }>;

export function checkCase(value: PathValue, cases: ReadonlyMap<string, Origin>, sink: Sink): void {
  const name = value.segments.join(".");
  const root = cases.get(name);
  if (root !== undefined) sink.refer({ target: "case", name, place: undefined, declaration: root }, value.origin);
  else sink.report({ ...value.origin, kind: "unknown-name", name, target: "case", candidates: [...cases.keys()] });
}

/** The cases that an actuator's rows speak of. */
export function checkHold(element: TreeStatement, cases: ReadonlyMap<string, Origin>, sink: Sink): void {
  for (const { key } of wordIn(element.block, "hold")?.block?.rows ?? []) {
    // The cases stand elsewhere, and may have moved.
    sink.cannotRepeat();
    if (key.kind === "path") checkCase(key, cases, sink);
  }
}

/** The cases in which kerbs are met; what a set-up inherits is told where it is written. */
export function checkKerbs(
  tree: CarTree,
  base: CarTree | undefined,
  cases: ReadonlyMap<string, Origin>,
  sink: Sink,
): void {
  const inherited = new Set(base?.block.statements);
  for (const statement of tree.block.statements) {
    if (statement.word !== "kerb" || inherited.has(statement)) continue;
    for (const value of wordIn(statement.block, "case")?.values ?? []) {
      if (value.kind === "path") checkCase(value, cases, sink);
    }
  }
}

/** What a set-up is made from: its tree and what was published of it. */
export interface Inherited {
  readonly tree: CarTree;
  readonly expectations: readonly ExpectationModel[];
}

/** What is expected of an element goes with the element where a set-up removes it. */
export function expectationsOf(
  tree: CarTree,
  base: Inherited | undefined,
  cases: ReadonlyMap<string, Origin>,
  sink: Sink,
): readonly ExpectationModel[] {
  const known = new Map(base?.expectations.map((expectation) => [expectation.origin, expectation]));
  const inherited = new Set(base?.tree.block.statements);
  const hasLost = base !== undefined && hasLostElements(base.tree, tree);
  return tree.block.statements.flatMap((statement) => {
    if (statement.word !== "expect") return [];
    if (!inherited.has(statement)) return expectationOf(statement, tree, cases, sink) ?? [];
    return hasLost && speaksOfNothing(statement, tree) ? [] : (known.get(statement.origin) ?? []);
  });
}

function speaksOfNothing(statement: TreeStatement, tree: CarTree): boolean {
  const figure = statement.values.find((value) => value.kind === "path");
  return figure?.kind === "path" && isOfNoElement(figure, tree);
}

function expectationOf(
  statement: TreeStatement,
  tree: CarTree,
  cases: ReadonlyMap<string, Origin>,
  sink: Sink,
): ExpectationModel | undefined {
  const [figure, at] = statement.values.filter((value) => value.kind === "path");
  const numbers = statement.values.filter((value) => value.kind === "number");
  const wants = wantsOf(statement.form, numbers);
  if (figure?.kind !== "path" || wants === undefined) return undefined;
  if (at?.kind === "path") checkCase(at, cases, sink);
  if (!checkFigure(figure, numbers, at !== undefined, tree, sink)) return undefined;
  return {
    figure: figure.segments.join("."),
    figureOrigin: figure.origin,
    at: at?.kind === "path" ? at.segments.join(".") : undefined,
    wants,
    origin: statement.origin,
  };
}

/** The four ways come in one order without `at` and in the same order with it. */
function wantsOf(form: number, numbers: readonly Given[]): ExpectationModel["wants"] | undefined {
  const [first, second] = numbers;
  if (first === undefined) return undefined;
  switch (form % 4) {
    case 0:
      return second && { kind: "between", from: first, to: second };
    case 1:
      return { kind: "above", limit: first };
    case 2:
      return { kind: "below", limit: first };
    default:
      return second && { kind: "within", target: first, tolerance: second };
  }
}
