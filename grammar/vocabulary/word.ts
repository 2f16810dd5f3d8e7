/**
 * The shape of the one table that says what the language can say. Completion, hover help,
 * checking, formatting, highlighting, the language configuration and the reference page are
 * all read from it; a new element is a new row, never a new grammar rule.
 */

/**
 * Dimensions that a value can have. `share` is a fraction written in %; `number` is a plain
 * number, `count` a whole one. Each is defined by exponents in `dimensions.ts`.
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
  | "volume"
  | "speed"
  | "acceleration"
  | "force"
  | "moment"
  | "pressure"
  | "rate" // force per length
  | "torsional-rate" // moment per angle
  | "damping" // force per speed
  | "torsional-damping"
  | "inertia" // mass times length squared
  | "thread" // length per turn
  | "turns"
  | "area-slope" // area per length
  | "angle-per-length"
  | "per-length"
  | "flow-resistance" // pressure per volume flow
  | "density"
  | "temperature"
  | "frequency"
  | "any"; // decided elsewhere (let, overrides, expectations)

/** What the name in a slot is, or points at. */
export type NameTarget =
  | "car"
  | "setup"
  | "car-or-setup"
  | "element"
  | "part"
  | "eye"
  | "case"
  | "let"
  | "cylinder";

/** One place in a statement after its head. */
export type Slot =
  | { readonly kind: "keyword"; readonly word: string }
  | { readonly kind: "choice"; readonly words: readonly string[] }
  | { readonly kind: "quantity"; readonly dimension: DimensionName; readonly label?: string }
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

export interface Word {
  readonly word: string;
  readonly in: readonly Concept[];
  /** Alternatives; the first is the one that completion offers. An empty form takes nothing. */
  readonly takes: readonly Form[];
  readonly opens?: Concept;
  /** Whether a block has to follow; only said where `opens` is. */
  readonly block?: "required" | "optional";
  readonly role: "structure" | "property" | "element" | "part" | "connection" | "law" | "case" | "expectation";
  /** `one`: once a block; `many`: any number; `named`: any number, each with its own name. */
  readonly times: "one" | "many" | "named";
  readonly needed?: boolean;
  /** What holds when the word is absent, in words or as a value. */
  readonly fallback?: string;
  /** A usual value with its unit, inserted when the property is missing. */
  readonly starter?: string;
  /** Seen in practice; outside of it `implausible-value` informs. SI. */
  readonly usual?: { readonly from: number; readonly to: number; readonly source: string };
  /** Hard limits; outside of them `range-violated` is an error. SI. */
  readonly limits?: {
    readonly above?: number;
    readonly atLeast?: number;
    readonly atMost?: number;
    readonly below?: number;
  };
  /** Plain words for the engineer: what it is, against what it is measured, its sign. */
  readonly help: string;
}

export interface ConceptEntry {
  readonly concept: Concept;
  readonly help: string;
  /** Set where the block holds `key: value` rows. */
  readonly rows?: { readonly key: Slot; readonly value: Slot };
}
