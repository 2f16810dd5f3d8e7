/** Hovers of what weighs: the sum of the car's masses, and what the scales ask for. */
import { massStatements } from "../assemble/masses.js";
import type { CheckedCar } from "../findings/context.js";
import { cautions } from "./cautions.js";
import { asTable } from "./section.js";
import { unitsOfCar } from "./units-of-car.js";
import { measuredCard } from "./measured.js";
import { massesOf, massSection, scalesSections, weightsOf } from "./weights-page.js";

const MASSES: ReadonlySet<string> = new Set([
  "mass",
  "mass-front",
  "cg-height",
  "cg-left",
  "roll-inertia",
  "pitch-inertia",
  "driver",
  "fuel",
  "ballast",
]);

const why = (reasons: ReadonlySet<string>): readonly string[] =>
  reasons.size === 0 ? [] : [[...reasons].map((reason) => `- no figure where ${reason}`).join("\n")];

const isBallast = ({ model }: CheckedCar, name: string): boolean =>
  massStatements(model).some((line) => line.name?.text === name);

/** @param word that the line of the car or set-up begins with */
export function weightsCard(car: CheckedCar, word: string | undefined): string | undefined {
  if (word === "scales" || word === "cross-weight") return scalesCard(car);
  if (word === "measured") return measuredCard(car);
  if (word === undefined || !(MASSES.has(word) || isBallast(car, word))) return undefined;
  const reasons = new Set<string>();
  const table = asTable(massSection(massesOf(car), weightsOf(car).weighed, unitsOfCar(car.model), reasons));
  return [table, ...why(reasons)].join("\n\n");
}

function scalesCard(car: CheckedCar): string | undefined {
  const { scales } = weightsOf(car);
  if (scales === undefined) return undefined;
  const reasons = new Set<string>();
  const sections = scalesSections(scales, unitsOfCar(car.model), reasons).filter(({ rows }) => rows.length > 0);
  return [...sections.map(asTable), ...why(reasons), `_${cautions.replaceAll("\n", " ")}_`].join("\n\n");
}
