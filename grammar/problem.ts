/**
 * What the grammar has to say about a text that it could not read in full: structure only.
 * The words are put to it by the rule files of `server/findings`.
 */
import type { Span } from "./span.js";

export type SyntaxProblem = Span &
  (
    | { readonly kind: "unexpected"; readonly found: string; readonly expected: readonly string[] }
    | { readonly kind: "unclosed-block"; readonly opened: Span }
    /** The line that a block belongs to whose `{` is missing behind it. */
    | { readonly kind: "unopened-block" }
    | { readonly kind: "unclosed-bracket"; readonly opened: Span }
    | { readonly kind: "unclosed-text" }
    | { readonly kind: "stray-closing"; readonly found: string }
    | { readonly kind: "bad-character"; readonly found: string; readonly suggestion?: string }
    | { readonly kind: "decimal-comma"; readonly suggestion: string }
    | { readonly kind: "bad-number"; readonly found: string }
    | { readonly kind: "spaceless-minus"; readonly suggestion: string }
    | { readonly kind: "too-deep"; readonly limit: number }
    | { readonly kind: "too-long-name"; readonly limit: number }
    | { readonly kind: "not-utf8" }
  );
