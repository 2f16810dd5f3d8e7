/**
 * The shape of the one table that says what the language can say. Completion, hover help,
 * checking, formatting, highlighting, the language configuration and the reference page are
 * all read from it; a new element is a new row, never a new grammar rule.
 */

/**
 * Dimensions that a value can have. `share` is a fraction written in %; `number` is a plain
 * number, `count` a whole one. Each is defined by exponents in `dimensions.ts`; some share them
 * and differ in their usual units only, so that the likely unit is offered.
 */
export type DimensionName =
  | "number"
  | "count"
  | "share"
  | "length"
  | "mass"
  | "time"
  | "angle"
  | "area"
  | "piston-area" // an area that is written in mm^2
  | "volume"
  | "speed"
  | "damper-speed" // a speed that is written in mm/s
  | "angular-speed"
  | "acceleration"
  | "force"
  | "moment"
  | "pressure"
  | "modulus" // a pressure that is written in GPa
  | "stress" // a pressure that is written in MPa
  | "rate" // force per length
  | "torsional-rate" // moment per angle
  | "damping" // force per speed
  | "torsional-damping"
  | "inertia" // mass times length squared
  | "thread" // length per turn
  | "turns"
  | "area-slope" // area per length
  | "angle-per-length"
  | "angle-per-acceleration" // roll gradient
  | "per-length"
  | "flow-resistance" // pressure per volume flow
  | "density"
  | "temperature"
  | "frequency"
  | "any"; // decided elsewhere (let, overrides, expectations)

/** What the name in a slot is, or points at. */
export type NameTarget = "car" | "setup" | "car-or-setup" | "element" | "part" | "eye" | "case" | "let" | "cylinder";

/** One place in a statement after its head. */
export type Slot =
  | { readonly kind: "keyword"; readonly word: string }
  | { readonly kind: "choice"; readonly words: readonly string[] }
  | {
      readonly kind: "quantity";
      readonly dimension: DimensionName;
      readonly label?: string;
      /** Where they differ from the word's own (`limitsOf`, `usualOf` in index.ts choose). */
      readonly usual?: UsualRange;
      readonly limits?: Limits;
    }
  | { readonly kind: "point"; readonly size: 2 | 3; readonly dimension: "length" | "number" }
  | { readonly kind: "range"; readonly dimension: DimensionName }
  | { readonly kind: "text"; readonly label: string }
  | { readonly kind: "name"; readonly declares: NameTarget }
  | { readonly kind: "reference"; readonly to: NameTarget }
  /** `rocker.side`, `left.rocker.third`, `bar.lever.end`, `chassis (x, y, z) mm`, `lower-wishbone (x, y, z) mm`. */
  | { readonly kind: "attachment" }
  /** `rocker`, `left.rocker`, `chassis`: a body that can twist against another. */
  | { readonly kind: "body" }
  /** `for heave and roll`: one or more modes joined by `and`. */
  | { readonly kind: "modes" }
  /** A dotted path to a computed quantity (after `expect`). */
  | { readonly kind: "figure" };

/** The slots of one way to write a statement, in order. */
export type Form = readonly Slot[];

/** The kind of a block: where words stand. `file` is the top level. */
export type Concept = string;

/** Seen in practice, SI; outside of it `implausible-value` informs. */
export interface UsualRange {
  readonly from: number;
  readonly to: number;
  readonly source: string;
}

/** Hard limits, SI; outside of them `range-violated` is an error. */
export interface Limits {
  readonly above?: number;
  readonly atLeast?: number;
  readonly atMost?: number;
  readonly below?: number;
}

export interface Word {
  readonly word: string;
  readonly in: readonly Concept[];
  /** Alternatives; the first is the one that completion offers. An empty form takes nothing. */
  readonly takes: readonly Form[];
  readonly opens?: Concept;
  /**
   * One a form, where the forms differ in the block that they open (`linkage`, `linkage planar`,
   * `linkage ratio`); read both through `opensAt` in index.ts.
   */
  readonly opensByForm?: readonly (Concept | undefined)[];
  /** Whether a block has to follow; only said where a block is opened. */
  readonly block?: "required" | "optional";
  /** Set where the formatter gives each statement of the block its line although it only holds properties. */
  readonly spread?: true;
  readonly role: "structure" | "property" | "element" | "part" | "connection" | "law" | "case" | "expectation";
  /** `one`: once a block; `many`: any number; `named`: any number, each with its own name. */
  readonly times: "one" | "many" | "named";
  readonly needed?: boolean;
  /** Set on the length of an adjuster: `by` behind the statement around it changes this word, from 0 where it is not written. */
  readonly adjusts?: true;
  /** Needed only where none of these words stands in the same block: a stated rate spares the dimensions. */
  readonly unless?: readonly string[];
  /** What holds when the word is absent, in words or as a value. */
  readonly fallback?: string;
  /** A usual value with its unit, inserted when the property is missing. */
  readonly starter?: string;
  /** Holds for values in the dimension of the first form. */
  readonly usual?: UsualRange;
  /** Holds for every quantity, coordinate-free, whatever the form. */
  readonly limits?: Limits;
  /** Parts: the blocks that `fit` may put it in, and how. */
  readonly fits?: PartFit;
  /** A line (or lines) to copy; where absent, the word with its starter is one. */
  readonly example?: string;
  /** Plain words for the engineer: what it is, against what it is measured, its sign. */
  readonly help: string;
}

/**
 * `block`: the part stands in place of the block of the same word (`torsion-bar { … }` in a
 * spring); `contents`: its lines stand directly in the element (`valving` in a damper).
 */
export interface PartFit {
  readonly into: readonly Concept[];
  readonly as: "block" | "contents";
}

export interface ConceptEntry {
  readonly concept: Concept;
  readonly help: string;
  /** Set where the block holds `key: value` rows: the alternatives, the first the usual one. */
  readonly rows?: readonly RowForm[];
  /**
   * Set where lines are overrides: a head that is no word of this concept is a path that starts
   * in the named one (`setup` → `car`). Nothing is needed in such a block, or in one inside it.
   */
  readonly overrides?: Concept;
}

export interface RowForm {
  readonly key: Slot;
  readonly value: Slot;
}

/** The rows of the table that belong together: one chapter of the reference page. */
export interface WordGroup {
  readonly title: string;
  readonly help: string;
  readonly concepts: readonly ConceptEntry[];
  readonly words: readonly Word[];
}
