/** Elements of a sheet: the part that is fitted, and everything on it that a mechanic sets. */
import type { CheckedCar } from "../../findings/context.js";
import { adjustablesOf } from "../../model/adjustables.js";
import type { CarModel, ElementModel } from "../../model/car.js";
import { type NumberAt, type PropertyAt, propertyAt } from "../../model/property-at.js";
import { showNumber, showQuantity } from "../../quantities/index.js";
import type { SheetElement, SheetItem } from "./item.js";

/** Set by hand though it has no adjuster of its own. */
const ALWAYS = ["packer", "stroke"];

/** One line for both sides where they are alike, else one a side. */
export function sheetElements({ model }: CheckedCar, elements: readonly ElementModel[]): readonly SheetElement[] {
  const lines = elements.map((element) => lineOf(model, element, element.path));
  return elements.flatMap((element, i) => {
    const line = lines[i];
    if (line === undefined) return [];
    const twin = elements.findIndex((other) => isTwin(element, other));
    const other = lines[twin];
    if (other === undefined || !isAlike(line, other)) return [line];
    return element.side === "right" ? [] : [lineOf(model, element, `${element.axle ?? ""}.${element.name}`)];
  });
}

const isTwin = (one: ElementModel, other: ElementModel): boolean =>
  one.side !== undefined && other.side !== undefined && one.side !== other.side && one.name === other.name;

function isAlike(one: SheetElement, other: SheetElement): boolean {
  const said = ({ part, settings }: SheetElement): string => [part, ...settings].map((item) => item?.value).join("|");
  return said(one) === said(other);
}

function lineOf(model: CarModel, element: ElementModel, path: string): SheetElement {
  const { kind, part, notes } = element;
  const claim = element.for.length === 0 ? "" : ` for ${element.for.join(" and ")}`;
  return {
    path,
    kind: `${kind}${claim}`,
    part: part && { key: `${path}.fit`, name: "part", value: part.name },
    settings: settingsOf(model, element, path),
    notes,
  };
}

function settingsOf(model: CarModel, element: ElementModel, path: string): readonly SheetItem[] {
  const own = model.axles[element.axle ?? "front"]?.name === element.axle ? `${element.axle ?? ""}.` : "";
  const base = element.side === undefined ? path : `${own}${element.name}`;
  const sided = element.side === undefined ? undefined : `${own}${element.side}.${element.name}`;
  const adjusted = adjustablesOf(model)
    .map(({ property }) => property)
    .filter((property) => isBelow(property, base) || (sided !== undefined && isBelow(property, sided)));
  const more = ALWAYS.flatMap((word) => propertyAt(model, `${sided ?? base}.${word}`) ?? []);
  const numbers = [...adjusted, ...more].filter((property): property is NumberAt => property.kind === "number");
  const rests = new Map(numbers.map((property) => [restOf(property, base, sided), property]));
  return [...rests].map(([rest, property]) => ({
    key: `${path}.${rest}`,
    name: nameOf(rest),
    value: valueOf(property),
  }));
}

const isBelow = ({ path }: PropertyAt, owner: string): boolean => path.startsWith(`${owner}.`);

const restOf = ({ path }: PropertyAt, base: string, sided: string | undefined): string =>
  path.slice((sided !== undefined && path.startsWith(`${sided}.`) ? sided : base).length + 1);

/** `drop-link.longer` is "drop-link", since its value says by how much; `bump.clicks` is "bump clicks". */
const nameOf = (rest: string): string => rest.replace(/\.longer$/, "").replaceAll(".", " ");

/** "3 of 5", "1.25 mm longer (1 turn)", "55 N/mm". */
export function valueOf({ path, given, step, count, dimension }: NumberAt): string {
  if (count !== undefined) return `${showNumber(given.value, 4)} of ${showNumber(count, 4)}`;
  if (!path.endsWith(".longer")) return showQuantity(given.value, given.unit, 5);
  if (given.value === 0) return "as drawn";
  const way = given.value < 0 ? "shorter" : "longer";
  const by = `${showQuantity(Math.abs(given.value), given.unit, 4)} ${way}`;
  return step === undefined || dimension !== "length" ? by : `${by} (${turnsOf(given.value / step.value)})`;
}

export function turnsOf(turns: number): string {
  const shown = showNumber(Math.abs(turns), 3);
  return `${shown} turn${shown === "1" ? "" : "s"}`;
}
