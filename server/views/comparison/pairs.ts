/**
 * Which car or set-up of one file (or of one version of a file) belongs to which of the other: by name; else the same
 * content under another name is a renamed one; the rest came or went.
 */
import type { CheckedCar } from "../../findings/context.js";
import type { CarModel } from "../../model/car.js";
import { changesBetween } from "./changes.js";

export type CarPair =
  | { readonly status: "both" | "renamed"; readonly old: CheckedCar; readonly now: CheckedCar }
  | { readonly status: "added"; readonly now: CheckedCar }
  | { readonly status: "deleted"; readonly old: CheckedCar };

export const nameOf = ({ setup, name }: CarModel): string => setup ?? name;

export function pairCars(old: readonly CheckedCar[], now: readonly CheckedCar[]): readonly CarPair[] {
  const gone = new Set(old.filter(({ model }) => !now.some((other) => nameOf(other.model) === nameOf(model))));
  const pairs = now.map((car): CarPair => {
    const same = old.find(({ model }) => nameOf(model) === nameOf(car.model));
    if (same !== undefined) return { status: "both", old: same, now: car };
    const before = [...gone].find((other) => isRenamed(other.model, car.model));
    if (before === undefined) return { status: "added", now: car };
    gone.delete(before);
    return { status: "renamed", old: before, now: car };
  });
  return [...pairs, ...[...gone].map((car): CarPair => ({ status: "deleted", old: car }))];
}

/** A car or set-up that says the same is the same one, whatever it is called now. */
function isRenamed(old: CarModel, now: CarModel): boolean {
  if ((old.setup === undefined) !== (now.setup === undefined)) return false;
  return changesBetween(old, now).every(({ of }) => of === "note");
}

/** Whether two are versions of one car: they derive from cars of one name, or say the same. */
export const isOneCar = (old: CarModel, now: CarModel): boolean =>
  old.name === now.name || changesBetween(old, now).every(({ of }) => of === "note");
