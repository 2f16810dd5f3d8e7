/** What a check has to say, and how to mend it. One vocabulary for the editor, the command line and CI. */
import type { Span } from "../../grammar/index.js";
import type { Origin } from "../model/origin.js";
import type { RuleContext } from "./context.js";

export type Severity = "error" | "warning" | "information" | "hint";

export interface Finding {
  /** The rule's id: file name, code and page anchor. */
  readonly rule: string;
  readonly severity: Severity;
  readonly uri: string;
  readonly span: Span;
  /** What is wrong (with figures), why it matters, what to do. */
  readonly message: string;
  readonly related: readonly { readonly origin: Origin; readonly message: string }[];
  /** `unnecessary` lets an editor fade the text. */
  readonly tags: readonly "unnecessary"[];
  /** For the rule's own fix function; opaque to everybody else. */
  readonly data: unknown;
}

export interface TextEdit {
  readonly uri: string;
  readonly span: Span;
  readonly newText: string;
}

export interface Fix {
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** The one an editor applies by default. */
  readonly preferred: boolean;
  /** Safe in bulk: never changes what the car is, or cannot be anything else. Part of `source.fixAll`. */
  readonly safe: boolean;
}

/** What a rule needs before it can run: `syntax` the tree, `model` the resolved file, `solved` the analyses. */
export type Cost = "syntax" | "model" | "solved";

export interface Rule {
  readonly meta: {
    readonly id: string;
    readonly title: string;
    readonly cost: Cost;
    readonly severity: Severity;
  };
  check(context: RuleContext): Iterable<Finding>;
  /** Fixes are computed when they are asked for, never while checking. */
  fix?(finding: Finding, context: RuleContext): readonly Fix[];
}
