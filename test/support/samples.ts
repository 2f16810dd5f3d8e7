/** The sample cars as they stand under samples/, by their path there; those with a mistake on purpose are left out. */
import { readdirSync, readFileSync } from "node:fs";
import { sep } from "node:path";
import type { CheckedCar, RuleContext } from "../../server/findings/context.js";
import { kinematics } from "../../server/analyses/kinematics.js";
import { assembleAxle } from "../../server/assemble/assemble.js";
import { contextOf, type Files } from "./context.js";

const folder = new URL("../../samples/", import.meta.url);

export const samples: Files = Object.fromEntries(
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((name) => name.split(sep).join("/"))
    .filter((name) => /\.(crank|csv)$/.test(name) && !name.startsWith("broken/"))
    .map((name) => [name, readFileSync(new URL(name, folder), "utf8")]),
);

export const sampleNames: readonly string[] = Object.keys(samples)
  .filter((name) => name.endsWith(".crank"))
  .sort();

/** A sample with some of its text changed; every `from` has to be there. */
export function sampleContext(name: string, ...changes: readonly (readonly [from: string, to: string])[]): RuleContext {
  const text = changes.reduce((before, [from, to]) => {
    if (!before.includes(from)) throw new Error(`${name} does not say ${from}`);
    return before.replace(from, to);
  }, samples[name] ?? "");
  return contextOf({ ...samples, [name]: text }, name);
}

/** The car or set-up of that name in a sample; without a name its first. */
export function sampleCar(name: string, car?: string): CheckedCar {
  const { cars } = sampleContext(name);
  const found = cars.find(({ model }) => car === undefined || (model.setup ?? model.name) === car);
  if (found === undefined) throw new Error(`no ${car ?? "car"} in ${name}`);
  return found;
}

/** The left rocker's angle from design by its wheel's travel, rad, as `kinematics` gives it. */
export function rockerAngle(name: string, end: "front" | "rear"): (travel: number) => number {
  const { model } = sampleCar(name);
  const axle = model.axles[end];
  if (axle === undefined) throw new Error(`no ${end} axle in ${name}`);
  const mechanism = assembleAxle(axle, model);
  return (travel) => {
    const left = kinematics(mechanism, [travel], [0])[0]?.left;
    if (left === undefined || "kind" in left || typeof left.rocker !== "number") throw new Error("no rocker angle");
    return left.rocker;
  };
}
