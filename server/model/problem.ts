/** What the resolver has to say about a file: structure only; the rule files word it. */
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import type { Origin, Side } from "./origin.js";

export type ModelProblem = Origin &
  (
    | {
        readonly kind: "unknown-word";
        readonly word: string;
        readonly concept: string;
        readonly candidates: readonly string[];
      }
    | {
        readonly kind: "unknown-name";
        readonly name: string;
        readonly target: string;
        readonly candidates: readonly string[];
      }
    | {
        readonly kind: "unknown-unit";
        readonly unit: string;
        readonly dimension: DimensionName | undefined;
        readonly candidates: readonly string[];
      }
    | {
        readonly kind: "missing-unit";
        readonly digits: string;
        readonly dimension: DimensionName;
        readonly candidates: readonly string[];
      }
    | {
        readonly kind: "dimension";
        /** `any` where what is due has no name of its own. */
        readonly expected: DimensionName;
        /** The name of a dimension, or what it is made of: `length^2*mass`. */
        readonly due: string;
        readonly found: string;
        readonly candidates: readonly string[];
      }
    | {
        readonly kind: "missing-property";
        readonly word: string;
        readonly concept: string;
        readonly owner: string;
        readonly starter: string | undefined;
        readonly insertAt: number;
      }
    | { readonly kind: "duplicate"; readonly word: string; readonly what: "property" | "name"; readonly first: Origin }
    /** Two words of which a block holds one. */
    | { readonly kind: "rivals"; readonly word: string; readonly other: string; readonly first: Origin }
    | {
        readonly kind: "wrong-form";
        readonly word: string;
        readonly expected: readonly string[];
        readonly detail: string | undefined;
      }
    /** Turns of an adjuster that has no thread; `statement` is the whole line. */
    | { readonly kind: "no-thread"; readonly word: string; readonly statement: Origin }
    | { readonly kind: "unused-part"; readonly name: string }
    | { readonly kind: "unused-let"; readonly name: string }
    | {
        readonly kind: "needless-override";
        readonly path: string;
        readonly inherited: Origin;
        readonly why: "same-value" | "mirror-image";
      }
    | {
        readonly kind: "override-without-target";
        readonly path: string;
        readonly failing: string;
        readonly candidates: readonly string[];
      }
    /** A line for one side of what the axle has once, for both. */
    | { readonly kind: "no-sides"; readonly path: string; readonly side: Side; readonly thing: string }
    | { readonly kind: "cycle"; readonly what: "use" | "from" | "let"; readonly path: readonly string[] }
    | {
        readonly kind: "file-not-found";
        readonly path: string;
        readonly reason: "missing" | "outside" | "not-text" | "not-a-path";
      }
    | { readonly kind: "csv"; readonly path: string; readonly line: number; readonly detail: string }
    | {
        readonly kind: "range-violated";
        readonly word: string;
        readonly value: number;
        readonly unit: string;
        readonly dimension: DimensionName;
        readonly limit: string;
      }
    | {
        readonly kind: "implausible-value";
        readonly word: string;
        readonly value: number;
        readonly unit: string;
        readonly dimension: DimensionName;
        readonly from: number;
        readonly to: number;
        readonly source: string;
      }
    | { readonly kind: "reserved-name"; readonly name: string }
    | { readonly kind: "table-order"; readonly word: string }
  );
