/**
 * Dimensions that bear what a part has to bear: the smallest change of those tried, proven on the car. Bars and coils
 * keep their rate: a longer bar is made thicker (G J/L the same, stress as L^(−3/4)), thicker wire gets more turns
 * (d⁴/n the same, stress as d^(−3)). A blade is set to another position, or made thicker, and then is stiffer.
 */
import type { Fix, TextEdit } from "../finding.js";
import { lineIn } from "./faulty.js";
import { lineEdit, numberIn, onGrid } from "./line-edits.js";
import { changeWords, isFitted, rateChange } from "./other-parts.js";
import { clearedBy, type Mending } from "./proof.js";

/** Lines with their new text, and what to call the change. */
interface Variant {
  readonly lines: readonly (readonly [line: string, text: string])[];
  readonly title: string;
}

const TRIES = 24;
const tries = (share: number): readonly number[] => Array.from({ length: TRIES }, (_, i) => 1 + share * (i + 1));

const TENTH = 1e-4;
const HALF = 5e-4;
const FIVE = 5e-3;

function torsionBars(mending: Mending): readonly Variant[] {
  const [diameter, length] = [numberIn(mending, "torsion-bar.diameter"), numberIn(mending, "torsion-bar.length")];
  if (diameter === undefined || length === undefined) return [];
  const bore = numberIn(mending, "torsion-bar.bore")?.si ?? 0;
  return tries(0.05).flatMap((factor): readonly Variant[] => {
    const longer = onGrid(length.si * factor, length.unit, FIVE, "up");
    const thicker = ((diameter.si ** 4 - bore ** 4) * factor + bore ** 4) ** 0.25;
    const wide = onGrid(thicker, diameter.unit, TENTH, "near");
    if (longer === undefined || wide === undefined) return [];
    const lines = [["torsion-bar.diameter", wide] as const, ["torsion-bar.length", longer] as const];
    return [{ lines, title: `Make its torsion bar ${wide} thick and ${longer} long` }];
  });
}

function coils(mending: Mending): readonly Variant[] {
  const [wire, turns] = [numberIn(mending, "coil.wire"), numberIn(mending, "coil.active-turns")];
  if (wire === undefined || turns === undefined) return [];
  return tries(0.02).flatMap((factor): readonly Variant[] => {
    const thicker = onGrid(wire.si * factor, wire.unit, TENTH, "up");
    if (thicker === undefined) return [];
    const more = Number((turns.si * factor ** 4).toPrecision(3));
    const lines = [["coil.wire", thicker] as const, ["coil.active-turns", `${more}`] as const];
    return [{ lines, title: `Wind it from ${thicker} wire with ${more} turns` }];
  });
}

/** The other positions of the adjuster, the nearest first. */
function positions(mending: Mending): readonly Variant[] {
  const written = lineIn(mending.element.model.block, "blade.position")?.values ?? [];
  const [set = 0, of = 0] = written.map((value) => (value.kind === "number" ? value.value : 0));
  return Array.from({ length: Math.min(of, TRIES) }, (_, i) => i + 1)
    .filter((position) => position !== set)
    .sort((a, b) => Math.abs(a - set) - Math.abs(b - set))
    .map((position): Variant => {
      const text = `${position} of ${of}`;
      return { lines: [["blade.position", text]], title: `Set its blade to position ${text}` };
    });
}

function thickerBlades(mending: Mending): readonly Variant[] {
  const section = lineIn(mending.element.model.block, "blade.section")?.values ?? [];
  const [thick, wide] = section;
  if (thick?.kind !== "number" || wide?.kind !== "number") return [];
  return tries(0.08).flatMap((factor): readonly Variant[] => {
    const thin = onGrid(thick.value * factor, wide.unit, HALF, "up");
    const width = onGrid(wide.value, wide.unit, TENTH, "near");
    if (thin === undefined || width === undefined) return [];
    const text = `${thin.replace(/ .*$/, "")} x ${width}`;
    return [{ lines: [["blade.section", text]], title: `Make its blade ${text}` }];
  });
}

function fixFor(mending: Mending, { lines, title }: Variant): Fix | undefined {
  const edits = lines.map(([line, text]) => lineEdit(mending, line, text));
  if (!edits.every((edit): edit is TextEdit => edit !== undefined)) return undefined;
  const after = clearedBy(mending, { edits });
  const change = after && rateChange(mending.element, after);
  if (after === undefined) return undefined;
  const words = change === undefined ? "" : `, ${changeWords(change)}`;
  return { title: `${title}${words}`, edits, preferred: false, safe: false };
}

function firstOf(mending: Mending, variants: readonly Variant[]): readonly Fix[] {
  for (const variant of variants) {
    const found = fixFor(mending, variant);
    if (found !== undefined) return [found];
  }
  return [];
}

/** What is on the shelf cannot be made otherwise: nothing is offered for the dimensions of a part that is fitted. */
export function strongerDimensions(mending: Mending<"over-stress">): readonly Fix[] {
  const { part } = mending.fault.stress;
  const made = !isFitted(mending, part === "torsion bar" ? "torsion-bar" : part);
  switch (part) {
    case "coil":
      return made ? firstOf(mending, coils(mending)) : [];
    case "torsion bar":
      return made ? firstOf(mending, torsionBars(mending)) : [];
    case "blade":
      return [...firstOf(mending, positions(mending)), ...(made ? firstOf(mending, thickerBlades(mending)) : [])];
  }
}
