/** The line above an axle (its rates) and above a car or set-up (how it differs, its expectations, what it rests on). */
import type { Span } from "../../grammar/index.js";
import type { CheckedCar } from "../findings/context.js";
import type { FileView } from "../snapshot/workspace.js";
import { axleLine } from "./axle-summary.js";
import { sharesLine } from "./cases-page.js";
import { motionTitle } from "./motion-lines.js";
import { differenceLine } from "./setup-difference.js";

export interface Lens {
  readonly span: Span;
  readonly title: string;
  /** The car or set-up whose figures these are. */
  readonly car: string;
  /** Of a lens that tells differences: the car or set-up that they are differences from. */
  readonly against?: { readonly uri: string; readonly name: string };
}

type Titled = Omit<Lens, "car">;

export function lensesOf(file: FileView): readonly Lens[] {
  return file.cars.flatMap((car) => {
    const name = car.model.setup ?? car.model.name;
    return [...differenceLenses(car), carLens(car), ...axleLenses(file, car)].map((lens) => ({ ...lens, car: name }));
  });
}

function differenceLenses({ model, base }: CheckedCar): readonly Titled[] {
  if (base === undefined) return [];
  const against = { uri: base.model.origin.uri, name: base.model.setup ?? base.model.name };
  return [{ span: model.nameOrigin, title: differenceLine(model, base.model), against }];
}

function axleLenses(file: FileView, car: CheckedCar): readonly Titled[] {
  if (car.model.setup !== undefined) return setupAxleLenses(car);
  return (["front", "rear"] as const).flatMap((name) => {
    const axle = car.model.axles[name];
    if (axle === undefined || axle.nameOrigin.uri !== file.uri) return [];
    return [{ span: axle.nameOrigin, title: axleLine(car, name) }];
  });
}

/** A set-up's axles stand in another file: their rates come above the set-up itself. */
function setupAxleLenses(car: CheckedCar): readonly Titled[] {
  return (["front", "rear"] as const)
    .filter((name) => car.model.axles[name] !== undefined)
    .map((name) => ({ span: car.model.nameOrigin, title: `${name}: ${axleLine(car, name)}` }));
}

function carLens(car: CheckedCar): Titled {
  return {
    span: car.model.nameOrigin,
    title: [restsOn(car), motionTitle(car), sharesLine(car), expectationsOf(car)]
      .filter((part) => part !== "")
      .join(" · "),
  };
}

/** What a set-up derives from directly stands in the line below. */
function restsOn({ model: { bases, title, name } }: CheckedCar): string {
  if (bases.length === 0) return title ?? name;
  return bases.length === 1 ? "" : `from ${bases.join(" from ")}`;
}

function expectationsOf(car: CheckedCar): string {
  const judged = car.analysis.expectations.filter(({ met }) => met !== undefined);
  const met = judged.filter((result) => result.met === true).length;
  const unjudged = car.analysis.expectations.length - judged.length;
  const waiting = unjudged === 0 ? "" : ` (${unjudged} not judged)`;
  return car.analysis.expectations.length === 0 ? "" : `${met} of ${judged.length} expectations met${waiting}`;
}
