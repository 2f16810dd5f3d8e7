/** Elements of an axle or of the car from their statements, corner elements once a side. */
import { findWord } from "../../grammar/vocabulary/index.js";
import type { Surroundings } from "./attachments.js";
import { connectionOf } from "./connection-view.js";
import type { Attachment, ElementKind, ElementModel, Mode, ResolvedValue } from "./car.js";
import { checkHold } from "./case-view.js";
import { checkLines } from "./cylinders.js";
import type { Origin, Side } from "./origin.js";
import { isCornerElement } from "./sides.js";
import { wordIn, type TreeBlock, type TreeStatement } from "./tree.js";

/** All that an element needs to know beside its own lines, but for its side. */
export interface ElementPlace {
  readonly around: Surroundings;
  readonly cases: ReadonlyMap<string, Origin>;
}

const isElement = (statement: TreeStatement, block: TreeBlock): boolean =>
  findWord(block.concept, statement.word)?.role === "element" &&
  statement.name !== undefined &&
  statement.block !== undefined;

/** What a set-up was made from, where its linkages and wheels are still the same. */
export interface ElementsBase {
  readonly model: { readonly elements: readonly ElementModel[] };
}

/** In the order of the text; `right` has the right side's lines where they differ. */
export function elementsOf(
  left: TreeBlock,
  right: TreeBlock,
  place: ElementPlace,
  base: ElementsBase | undefined,
): readonly ElementModel[] {
  const elements: ElementModel[] = [];
  const known = base && new Known(base.model.elements, left === right);
  const add = (statement: TreeStatement, side: Side | undefined): void => {
    elements.push(known?.take(statement, side) ?? elementOf(statement, side, place));
  };
  const rightByName = right === left ? undefined : byName(right);
  for (const statement of left.statements) {
    if (!isElement(statement, left)) continue;
    if (!isCornerElement(statement)) add(statement, undefined);
    else {
      add(statement, "left");
      const other = rightByName === undefined ? statement : rightByName.get(statement.name?.text ?? "");
      if (other !== undefined) add(other, "right");
    }
  }
  for (const statement of rightByName?.values() ?? []) {
    if (isElement(statement, right) && isCornerElement(statement) && !isIn(left, statement)) add(statement, "right");
  }
  return elements;
}

/** Elements of the base, handed out again in their order as long as their lines are the same. */
class Known {
  readonly #elements: readonly ElementModel[];
  readonly #isSymmetric: boolean;
  #next = 0;

  constructor(elements: readonly ElementModel[], isSymmetric: boolean) {
    this.#elements = elements;
    this.#isSymmetric = isSymmetric;
  }

  take({ block, origin }: TreeStatement, side: Side | undefined): ElementModel | undefined {
    for (let index = this.#next; index < this.#elements.length; index++) {
      const element = this.#elements[index] as ElementModel;
      if (element.block !== block || element.side !== side) continue;
      this.#next = index + 1;
      return element.origin === origin && this.#standsAlone(element) ? element : undefined;
    }
    return undefined;
  }

  /** A bar may differ on its right side; what is joined to a bar's lever depends on the bar. */
  #standsAlone({ kind, connection }: ElementModel): boolean {
    if (kind === "anti-roll-bar") return this.#isSymmetric;
    if (connection?.kind === "cylinders") return connection.cylinders.every(({ ends }) => !ends.some(isOfLever));
    return connection?.kind !== "between" || !connection.ends.some(isOfLever);
  }
}

const isOfLever = (end: Attachment): boolean => end.kind === "lever-end";

const byName = (block: TreeBlock): Map<string, TreeStatement> =>
  new Map(
    block.statements.flatMap((statement) => (statement.name === undefined ? [] : [[statement.name.text, statement]])),
  );

const isIn = (block: TreeBlock, { name }: TreeStatement): boolean =>
  block.statements.some((other) => other.name?.text === name?.text);

function elementOf(statement: TreeStatement, side: Side | undefined, place: ElementPlace): ElementModel {
  const { name, block } = statement as TreeStatement & { name: NonNullable<TreeStatement["name"]>; block: TreeBlock };
  const around: Surroundings = { ...place.around, side };
  const axle = around.axle?.name;
  const claims = statement.values.find((value) => value.kind === "modes");
  const modes = claims?.kind === "modes" ? claims.modes : [];
  if (statement.word === "hydraulic-link") checkLines(statement, around);
  if (statement.word === "actuator") checkHold(statement, place.cases, around.sink);
  return {
    kind: statement.word as ElementKind,
    name: name.text,
    path: [axle, side, name.text].filter((step) => step !== undefined).join("."),
    axle,
    side,
    for: modes.map((mode) => mode.text as Mode),
    origin: statement.origin,
    nameOrigin: name.origin,
    forOrigins: modes.map((mode) => mode.origin),
    notes: statement.notes,
    connection: connectionOf(statement, around),
    block,
    part: partOf(block),
  };
}

function partOf(block: TreeBlock): ElementModel["part"] {
  const fit = wordIn(block, "fit");
  const wanted: ResolvedValue | undefined = fit?.values[0];
  if (fit === undefined || wanted?.kind !== "path") return undefined;
  const name = wanted.segments.join(".");
  return { name, word: "fit", origin: wanted.origin };
}
