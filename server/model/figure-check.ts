/** What `expect` and `figure` read: a figure that exists, of an element that exists, in its own dimension. */
import { figureAt, type FigurePath, figureNames, findWord } from "../../grammar/vocabulary/index.js";
import { matchesDimension, parseUnit, unitsOf } from "../quantities/index.js";
import { describeDimension } from "./amount.js";
import type { ResolvedValue } from "./car.js";
import type { AxleName } from "./origin.js";
import { axleBlock, type CarTree, type TreeBlock, type TreeStatement } from "./tree.js";
import type { Sink } from "./sink.js";

type PathValue = Extract<ResolvedValue, { kind: "path" }>;
type NumberValue = Extract<ResolvedValue, { kind: "number" }>;

/** False where the figure cannot be read or its limits are of another dimension; a problem says so. */
export function checkFigure(
  figure: PathValue,
  numbers: readonly NumberValue[],
  hasCase: boolean,
  tree: CarTree,
  sink: Sink,
  word: "expect" | "figure" = "expect",
): boolean {
  const found = figureAt(figure.segments);
  if (found === undefined) {
    const name = figure.segments.at(-1) ?? "";
    const place = figureNames.includes(name) ? figure.origin : (figure.segmentOrigins.at(-1) ?? figure.origin);
    const isKnown = figureNames.includes(name);
    const candidates = isKnown ? [] : figureNames;
    sink.report({
      ...place,
      kind: "unknown-name",
      name: isKnown ? figure.segments.join(".") : name,
      target: "figure",
      candidates,
    });
    // A figure that is half typed still speaks of its element.
    const alike = figureAt([...figure.segments.slice(0, -1), ANY_OF_ELEMENT]);
    if (alike?.element !== undefined) referTo(namedIn(alike, tree), alike, figure, sink);
    return false;
  }
  if (found.element !== undefined && !checkNamed(found, found.element, figure, tree, sink)) return false;
  if (found.figure.needsCase && !hasCase) {
    const expected = [`${word} ${figure.segments.join(".")} at CASE …`];
    const detail = "This figure exists only in a load case.";
    sink.report({ ...figure.origin, kind: "wrong-form", word, expected, detail });
    return false;
  }
  return numbers.every((number) => checkLimit(number, found.figure.dimensions, sink));
}

/** Some figure that every element has. */
const ANY_OF_ELEMENT = "load";

/** Whether an element of the base is gone. */
export function hasLostElements(base: CarTree, tree: CarTree): boolean {
  return scopes.some((scope) => {
    const before = blockOf(base, scope);
    const now = blockOf(tree, scope);
    if (before === undefined || before === now) return false;
    const names = new Set(now?.statements.map(({ name }) => name?.text));
    return elementsIn(before).some(({ name }) => !names.has(name?.text));
  });
}

const scopes = [undefined, "front", "rear"] as const;

const blockOf = (tree: CarTree, axle: AxleName | undefined): TreeBlock | undefined =>
  axle === undefined ? tree.block : axleBlock(tree, axle, "left");

/** Whether a figure is that of an element which is not there. */
export function isOfNoElement({ segments }: PathValue, tree: CarTree): boolean {
  const found = figureAt(segments);
  if (found?.element === undefined) return false;
  const block = blockOf(tree, found.axle);
  const named = found.figure.scope === "point" ? pointsIn : elementsIn;
  return block === undefined || !named(block).some(({ name }) => name?.text === found.element);
}

/** The element, or the point of the body, that a figure is of. */
function checkNamed(path: FigurePath, name: string, figure: PathValue, tree: CarTree, sink: Sink): boolean {
  const elements = namedIn(path, tree);
  if (referTo(elements, path, figure, sink)) return true;
  const candidates = elements.flatMap((element) => element.name?.text ?? []);
  const place = figure.segmentOrigins.at(-2) ?? figure.origin;
  sink.report({ ...place, kind: "unknown-name", name, target: "element", candidates });
  return false;
}

function namedIn({ figure, axle }: FigurePath, tree: CarTree): readonly TreeStatement[] {
  const block = blockOf(tree, axle);
  if (block === undefined) return [];
  return figure.scope === "point" ? pointsIn(block) : elementsIn(block);
}

/** Whether it is there. */
function referTo(
  elements: readonly TreeStatement[],
  { axle, element: name = "" }: FigurePath,
  figure: PathValue,
  sink: Sink,
): boolean {
  const root = elements.find((element) => element.name?.text === name)?.root;
  if (root === undefined) return false;
  const place = axle && { segment: axle, outer: undefined };
  sink.refer({ target: "element", name, place, declaration: root }, figure.segmentOrigins.at(-2) ?? figure.origin);
  return true;
}

const pointsIn = (block: TreeBlock): readonly TreeStatement[] =>
  block.statements.filter(({ word }) => word === "clearance-point");

const elementsIn = (block: TreeBlock): readonly TreeStatement[] =>
  block.statements.filter((statement) => findWord(block.concept, statement.word)?.role === "element");

function checkLimit(number: NumberValue, dimensions: readonly Parameters<typeof unitsOf>[0][], sink: Sink): boolean {
  const unit = parseUnit(number.unit);
  const [usual = "any"] = dimensions;
  if (unit === undefined || dimensions.some((dimension) => matchesDimension(unit, dimension))) return true;
  const { origin } = number;
  if (number.unit === "") {
    const digits = String(number.value);
    sink.report({ ...origin, kind: "missing-unit", digits, dimension: usual, candidates: unitsOf(usual) });
  } else {
    const found = describeDimension(unit.dimension);
    sink.report({ ...origin, kind: "dimension", expected: usual, due: usual, found, candidates: unitsOf(usual) });
  }
  return false;
}
