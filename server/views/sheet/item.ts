/**
 * What a setup sheet is made of: single settings as text, each with a key that stays the same from one sheet to the next.
 *
 * Invariant: two sheets are compared by keys and texts alone, so that an earlier one can be a file that was kept.
 */
import type { Section } from "../section.js";

export interface SheetItem {
  /** As an override says it where there is one: `front.third.rate`; else `corner-weight.front.left`. */
  readonly key: string;
  readonly name: string;
  readonly value: string;
  /** How to get there: "1 shim of 1 mm added". */
  readonly how?: string;
  /** What the last sheet said, where it said something else; `undefined` with `isNew` where it did not say it. */
  readonly was?: string;
  readonly isNew?: boolean;
}

/** A line for the four wheels of the flat patch: FL, FR, RL, RR; undefined where there is no figure. */
export interface PatchLine {
  readonly name: string;
  readonly wheels: readonly (SheetItem | undefined)[];
  /** Whether the mechanics write down what they measured. */
  readonly isMeasured: boolean;
}

/** An element or a rod with everything that is set on it. */
export interface SheetElement {
  readonly path: string;
  /** "spring for heave" */
  readonly kind: string;
  readonly part: SheetItem | undefined;
  readonly settings: readonly SheetItem[];
  readonly notes: readonly string[];
}

export interface SheetAxle {
  readonly name: "front" | "rear";
  readonly settings: readonly SheetItem[];
  readonly elements: readonly SheetElement[];
}

export interface SheetExpectation {
  readonly text: string;
  readonly verdict: "met" | "missed" | "not-judged";
  readonly message: string;
}

export interface SetupSheet {
  readonly car: string;
  readonly title: string;
  readonly setup: string | undefined;
  readonly from: readonly string[];
  readonly notes: readonly string[];
  readonly patch: readonly PatchLine[];
  readonly axles: readonly SheetAxle[];
  /** Figures that a mechanic would look for and that are not there, each with its reason. */
  readonly missing: readonly string[];
  /** Brakes, masses that are carried, and what joins the axles. */
  readonly settings: readonly SheetItem[];
  readonly elements: readonly SheetElement[];
  readonly expectations: readonly SheetExpectation[];
  /** What was written down for this very set-up, beside what is predicted. */
  readonly measured: Section | undefined;
  /** Findings that a mechanic has to know of: the file has them, so some figures may be missing or wrong. */
  readonly errors: number;
  readonly warnings: number;
  /** What it is held against, and what was said there and is not any more. */
  readonly last: { readonly name: string; readonly gone: readonly SheetItem[] } | undefined;
}

export function itemsOf({ patch, axles, settings, elements }: Omit<SetupSheet, "last">): readonly SheetItem[] {
  const inElement = (all: readonly SheetElement[]): readonly SheetItem[] =>
    all.flatMap(({ part, settings: own }) => [...(part === undefined ? [] : [part]), ...own]);
  return [
    ...patch.flatMap(({ wheels }) => wheels.flatMap((item) => item ?? [])),
    ...axles.flatMap((axle) => [...axle.settings, ...inElement(axle.elements)]),
    ...settings,
    ...inElement(elements),
  ];
}

/** "1 error and 2 warnings"; empty where there are none. */
export function findingWords({ errors, warnings }: Pick<SetupSheet, "errors" | "warnings">): string {
  const counted = (count: number, what: string): readonly string[] =>
    count === 0 ? [] : [`${count} ${what}${count === 1 ? "" : "s"}`];
  return [...counted(errors, "error"), ...counted(warnings, "warning")].join(" and ");
}

export interface LastSheet {
  readonly name: string;
  readonly items: readonly Pick<SheetItem, "key" | "name" | "value">[];
}

/** The same sheet with every setting that the last one said otherwise marked. */
export function marked(sheet: SetupSheet, last: LastSheet): SetupSheet {
  const before = new Map(last.items.map(({ key, value }) => [key, value]));
  const mark = (item: SheetItem): SheetItem => {
    const was = before.get(item.key);
    if (was === item.value) return item;
    return was === undefined ? { ...item, isNew: true } : { ...item, was };
  };
  const inElement = (element: SheetElement): SheetElement => ({
    ...element,
    part: element.part && mark(element.part),
    settings: element.settings.map(mark),
  });
  const known = new Set(itemsOf(sheet).map(({ key }) => key));
  return {
    ...sheet,
    patch: sheet.patch.map((line) => ({ ...line, wheels: line.wheels.map((item) => item && mark(item)) })),
    axles: sheet.axles.map((axle) => ({
      ...axle,
      settings: axle.settings.map(mark),
      elements: axle.elements.map(inElement),
    })),
    settings: sheet.settings.map(mark),
    elements: sheet.elements.map(inElement),
    last: { name: last.name, gone: last.items.filter(({ key }) => !known.has(key)) },
  };
}

export const isChanged = ({ was, isNew }: SheetItem): boolean => was !== undefined || isNew === true;
