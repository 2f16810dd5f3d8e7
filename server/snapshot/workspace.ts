/**
 * The facade: texts in, everything known about them out. Lazy, memoised on content, plain
 * data out. The only place below the faces that remembers anything.
 *
 *   const workspace = createWorkspace(host);
 *   workspace.set(uri, text);        // an open or changed document
 *   workspace.file(uri).findings()   // all rules
 *
 * Invariant: no clock, no file system: files that nobody opened come through `host.read`.
 */
import type { Parsed } from "../../grammar/index.js";
import type { AxleName } from "../model/origin.js";
import type { CarModel } from "../model/car.js";
import type { ModelProblem } from "../model/problem.js";
import type { ModelSymbol } from "../model/resolved-file.js";
import type { KinematicsRow } from "../analyses/results.js";
import type { CheckedCar, RuleContext, Varied } from "../findings/context.js";
import type { Finding, Fix, TextEdit } from "../findings/finding.js";

export interface Host {
  /** Text of a file that is not set, or why there is none. Called at most once a file until `forget`. */
  read(uri: string): { readonly text: string } | { readonly missing: "missing" | "outside" | "not-text" };
}

export interface FileView {
  readonly uri: string;
  readonly text: string;
  readonly parsed: Parsed;
  readonly problems: readonly ModelProblem[];
  readonly cars: readonly CheckedCar[];
  /** Declarations and references of names, for definition, rename and completion. */
  readonly symbols: readonly ModelSymbol[];
  /** Every file that this one rests on, itself included. */
  readonly uses: readonly string[];
  /** Tables and curves that are read from beside those files. */
  readonly readsText: readonly string[];
  /** Text of a file that this one rests on. */
  textOf(uri: string): string | undefined;
  parsedOf(uri: string): Parsed | undefined;
  findings(): readonly Finding[];
  fixes(finding: Finding): readonly Fix[];
  /** The safe fixes of all findings in this file that do not overlap (`source.fixAll`). */
  safeEdits(): readonly TextEdit[];
  /** What a few more lines would make of a car or set-up of this file; nothing is changed by it. */
  vary(of: string, lines: readonly string[]): Varied;
}

export interface Workspace {
  /** Opens or changes a document. */
  set(uri: string, text: string): void;
  /** Closes a document: from now on its text comes from the host again. */
  unset(uri: string): void;
  /** A file changed, came or went on disk: whatever rested on it is stale. */
  forget(uri: string): void;
  file(uri: string): FileView;
  /** Nobody will ask for this file soon: unless it is a document that is set, what was made of it need not be kept. */
  release(uri: string): void;
  /** Documents that are set. */
  open(): readonly string[];
  isOpen(uri: string): boolean;
  /** Set documents that rest on `uri`, itself included. */
  dependents(uri: string): readonly string[];
  /** The files as they would be with these texts, for edits that must prove themselves; nothing is changed by it. */
  changed(texts: ReadonlyMap<string, string>): (uri: string) => RuleContext;
  kinematics(
    car: CarModel,
    axle: AxleName,
    heaves: readonly number[],
    rolls: readonly number[],
  ): readonly KinematicsRow[];
}
