/**
 * Short names for the slots of a form, so that a row of the vocabulary reads like the line it
 * describes: `[declares("element"), keyword("for"), modes]`.
 */
import type { DimensionName, Form, NameTarget, Slot } from "./word.js";

export const keyword = (word: string): Slot => ({ kind: "keyword", word });
export const choice = (...words: string[]): Slot => ({ kind: "choice", words });
export const quantity = (dimension: DimensionName): Slot => ({ kind: "quantity", dimension });
export const range = (dimension: DimensionName): Slot => ({ kind: "range", dimension });
export const text = (label: string): Slot => ({ kind: "text", label });
export const declares = (target: NameTarget): Slot => ({ kind: "name", declares: target });
export const refersTo = (target: NameTarget): Slot => ({ kind: "reference", to: target });

export const point: Slot = { kind: "point", size: 3, dimension: "length" };
export const planarPoint: Slot = { kind: "point", size: 2, dimension: "length" };
export const direction: Slot = { kind: "point", size: 3, dimension: "number" };
export const attachment: Slot = { kind: "attachment" };
export const body: Slot = { kind: "body" };
export const modes: Slot = { kind: "modes" };
export const figure: Slot = { kind: "figure" };

/** One value, in any of these dimensions: the first is the usual one. */
export const oneOf = (...dimensions: DimensionName[]): readonly Form[] => dimensions.map((name) => [quantity(name)]);

/** The form of a word that takes nothing but its block. */
export const blockOnly: readonly Form[] = [[]];
