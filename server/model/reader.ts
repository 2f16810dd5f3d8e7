/**
 * Reads the values of one statement at a time: knows the scope of the block, looks up names in
 * expressions, and notes when a value has to wait for the car's other properties.
 */
import type { Item, Path } from "../../grammar/index.js";
import type { Form, Slot, Word } from "../../grammar/vocabulary/word.js";
import { matchesDimension, parseUnit } from "../quantities/index.js";
import { sameDimension, type Amount } from "./amount.js";
import { dimensions } from "../../grammar/vocabulary/dimensions.js";
import { evaluate } from "./expressions.js";
import type { FormFit } from "./forms.js";
import { referToLet, reportUnknown, settleLet } from "./lets.js";
import type { Origin } from "./origin.js";
import type { ModelProblem } from "./problem.js";
import { findLet, type Let, type Scope } from "./scope.js";
import type { ValueReader } from "./values.js";

/** What expressions may read beside `let` names, once the car around them is known. */
export interface Properties {
  amountOf(path: Path, scope: Scope): Amount | undefined;
  letAmount(known: Let): Amount | undefined;
}

export class Reader implements ValueReader {
  readonly uri: string;
  readonly scope: Scope;
  readonly properties: Properties | undefined;
  readonly #tell: ((problem: ModelProblem) => void) | undefined;
  statement: Origin;
  word = "";
  limits: Word | undefined = undefined;
  /** Set when a value named a property and no car is known yet: the statement is read again later. */
  deferred = false;
  #quiet = false;

  constructor(scope: Scope, properties?: Properties, tell?: (problem: ModelProblem) => void) {
    this.scope = scope;
    this.uri = scope.uri;
    this.properties = properties;
    this.#tell = tell;
    this.statement = { uri: scope.uri, start: 0, end: 0 };
  }

  /** Turns to another statement. */
  on(statement: Origin, word: string, limits: Word | undefined): this {
    this.statement = statement;
    this.word = word;
    this.limits = limits;
    this.deferred = false;
    return this;
  }

  report(problem: ModelProblem): void {
    if (this.#quiet) return;
    if (this.#tell === undefined) this.scope.sink.report(problem);
    else this.#tell(problem);
  }

  lookUp(path: Path): Amount | undefined {
    const known = findLet(this.scope, path);
    if (known !== undefined) return this.#ofLet(known, path);
    if (this.properties !== undefined) return this.properties.amountOf(path, this.scope);
    if (this.scope.inCar) {
      this.deferred = true;
      return undefined;
    }
    reportUnknown(path, this.scope);
    return undefined;
  }

  #ofLet(known: Let, path: Path): Amount | undefined {
    referToLet(known, this.scope, path);
    const settled = settleLet(known);
    if (!settled.readsProperties) return settled.amount;
    if (this.properties !== undefined) return this.properties.letAmount(known);
    this.deferred = true;
    return undefined;
  }

  /** Of forms with one shape the one whose dimensions the values have; without any, the most usual. */
  choose(fits: readonly FormFit[], items: readonly Item[]): FormFit | undefined {
    if (fits.length < 2) return fits[0];
    this.#quiet = true;
    const found = fits.find(({ form, starts }) =>
      form.every((slot, index) => this.#suits(slot, items[starts[index] ?? -1])),
    );
    this.#quiet = false;
    this.deferred = false;
    return found ?? fits[0];
  }

  #suits(slot: Slot, item: Item | undefined): boolean {
    // The unit of a range stands at its end.
    if (slot.kind === "range" && item?.kind === "range")
      return this.#suits({ kind: "quantity", dimension: slot.dimension }, item.to);
    if (slot.kind !== "quantity" || slot.dimension === "any" || item === undefined) return true;
    if (item.kind === "quantity") {
      const unit = parseUnit(item.unit?.text ?? "");
      return unit !== undefined && matchesDimension(unit, slot.dimension);
    }
    const amount = evaluate(item, this);
    return amount === undefined || sameDimension(amount.exponents, dimensions[slot.dimension]);
  }
}

/** The unit of the next number of the same dimension, which covers a bare one before it (`8 x 30 mm`). */
export function pairUnit(
  form: Form,
  starts: readonly number[],
  items: readonly Item[],
  slot: number,
): string | undefined {
  const here = form[slot];
  for (let next = slot + 1; next < form.length; next++) {
    const other = form[next];
    if (other?.kind !== "quantity" || here?.kind !== "quantity" || other.dimension !== here.dimension) continue;
    const item = items[starts[next] ?? -1];
    if (item?.kind === "quantity" && item.unit !== undefined) return item.unit.text;
  }
  return undefined;
}
