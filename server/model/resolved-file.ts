/** What comes out of the resolver for one file: plain readonly data. */
import type { Parsed } from "../../grammar/index.js";
import type { NameTarget } from "../../grammar/vocabulary/word.js";
import type { CarModel } from "./car.js";
import type { Origin } from "./origin.js";
import type { ModelProblem } from "./problem.js";

export type Missing = "missing" | "outside" | "not-text";
export type Source = { readonly parsed: Parsed } | { readonly missing: Missing };
export type ReadText = (uri: string) => { readonly text: string } | { readonly missing: Missing };

export interface ResolvedCar extends CarModel {
  /** The name of the car or set-up that a set-up derives from. */
  readonly base: string | undefined;
  readonly baseModel: CarModel | undefined;
}

export interface ResolvedFile {
  readonly uri: string;
  /** Cars and set-ups that are declared in this file, in order; one whose base cannot be found is left out. */
  readonly cars: readonly ResolvedCar[];
  /** Everything to say about this file. What is wrong in a used file is told with that file. */
  readonly problems: readonly ModelProblem[];
  /** Every file that this one rests on, itself included. */
  readonly uses: readonly string[];
  /** Tables and curves that are read from beside it (CSV). */
  readonly readsText: readonly string[];
  readonly symbols: readonly ModelSymbol[];
}

/**
 * A name and where this file speaks of it. A symbol that is declared in a used file carries that
 * declaration, and the references of this file only: references across files are the union over
 * the files, joined by `declaration`.
 */
export interface ModelSymbol {
  readonly target: NameTarget;
  readonly name: string;
  /** Dotted place of the name within its car (`front.third`), the bare name for what stands at file level. */
  readonly path: string;
  /** The name itself. */
  readonly declaration: Origin;
  /** Places of the name elsewhere in this file, in order. */
  readonly references: readonly Origin[];
}
