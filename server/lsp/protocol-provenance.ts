/** What client and server say to each other about where values come from, and who changes them. Types only. */
import type { PlainRange } from "./protocol.js";

/** What is asked about: what stands at a place, or a value of a car or set-up of that file by its path. */
export type ValueAsked =
  | { readonly uri: string; readonly position: { readonly line: number; readonly character: number } }
  | { readonly uri: string; readonly name: string; readonly path: string };

/** A place with what is told of it. */
export interface ToldPlace {
  /** "45 N/mm", or the line where it has no value of its own. */
  readonly label: string;
  /** "set-up quarrow-wet" */
  readonly by: string;
  /** The line as it is written, or what the language says. */
  readonly text: string;
  /** "wet.crank:6"; undefined where no file says it. */
  readonly where: { readonly uri: string; readonly range: PlainRange; readonly shown: string } | undefined;
}

/** Values to choose from. */
export interface ValueChoices {
  readonly kind: "choose";
  /** The car or set-up. */
  readonly name: string;
  readonly values: readonly { readonly path: string; readonly value: string; readonly by: string }[];
}

/** A sentence for the user. */
export interface NothingTold {
  readonly kind: "none";
  readonly why: string;
}

/** Asks for the lines that made a value what it is, the one in force first. */
export type WhereFromMethod = "bellcrank/whereFrom";

export type WhereFromAnswer =
  | { readonly kind: "chain"; readonly title: string; readonly steps: readonly ToldPlace[] }
  | ValueChoices
  | NothingTold;

/** Asks for the set-ups of the workspace that change a value, opened or not. */
export type ChangersMethod = "bellcrank/changers";

export type ChangersAnswer =
  | { readonly kind: "changers"; readonly title: string; readonly changers: readonly ToldPlace[] }
  | NothingTold;

/** Arguments of the client's commands `bellcrank.whereFrom` and `bellcrank.showChangers`, as a hover's links pass them. */
export type ValueLinkArguments = readonly [asked: ValueAsked];
