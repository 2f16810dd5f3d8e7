/** What a kerb does to one car or set-up, as tables of text. */
import type { ElementStrike, StrikeFigures } from "../analyses/kerb/figures.js";
import type { CarKerbs, KerbStrike } from "../analyses/kerb/car-kerbs.js";
import type { CheckedCar } from "../findings/context.js";
import { showQuantity } from "../quantities/index.js";
import { cautions } from "./cautions.js";
import { titleOf } from "./car-title.js";
import { isAbsent, showFigure } from "./figures.js";
import { loadUnit, kerbTables, speedUnit } from "./kerb-tables.js";
import { nameOfCase, wheelName } from "./modes-page.js";
import type { RatesPage } from "./rates-page.js";
import { asTable, type Section } from "./section.js";
import { type ShowUnit, unitsOfCar } from "./units-of-car.js";

export interface KerbRow {
  readonly subject: string;
  readonly name: string;
  readonly value: number;
  readonly unit: string;
}

/** What was asked for that the car has: each kerb by its name. */
export type KerbFound = readonly [name: string, ReturnType<CarKerbs["at"]> & object];

function elementRows(element: ElementStrike, unit: ShowUnit): readonly KerbRow[] {
  const { path, measure, before, force, deflection, speed, onStop } = element;
  const load = loadUnit(measure, unit);
  const travel = unit(measure);
  const row = (name: string, value: number, shown: string): KerbRow => ({ subject: path, name, value, unit: shown });
  const isDamper = speed !== undefined;
  return [
    row("force before", before, load),
    row("least force", force.least, load),
    row("most force", force.most, load),
    ...(deflection === undefined
      ? []
      : [row("least deflection", deflection.least, travel), row("most deflection", deflection.most, travel)]),
    ...(isDamper && measure !== "volume"
      ? [
          row("fastest rebound", speed.least, speedUnit(measure, unit)),
          row("fastest bump", speed.most, speedUnit(measure, unit)),
        ]
      : []),
    ...(onStop === undefined ? [] : [row("time on the stop", onStop, "s")]),
  ];
}

export function kerbRows(
  { wheels, elements, rideHeight, clearance }: StrikeFigures,
  unit: ShowUnit,
): readonly KerbRow[] {
  const [force, length] = [unit("force"), unit("length")];
  return [
    ...wheels.flatMap(({ before, load, travel, offGround }, i) => {
      const subject = wheelName(i);
      return [
        { subject, name: "tyre load before", value: before, unit: force },
        { subject, name: "least tyre load", value: load.least, unit: force },
        { subject, name: "most tyre load", value: load.most, unit: force },
        { subject, name: "most rebound travel", value: travel.least, unit: length },
        { subject, name: "most bump travel", value: travel.most, unit: length },
        { subject, name: "time off the ground", value: offGround, unit: "s" },
      ];
    }),
    { subject: "front", name: "lowest ride height", value: rideHeight[0], unit: length },
    { subject: "rear", name: "lowest ride height", value: rideHeight[1], unit: length },
    ...clearance.map(({ name, least }) => ({ subject: name, name: "lowest point", value: least, unit: length })),
    ...elements.flatMap((element) => elementRows(element, unit)),
  ];
}

function titleOfStrike({ name, kerb, case: at }: KerbStrike, unit: ShowUnit): string {
  const size = `${showFigure(kerb.height, unit("length"))} high, ${showFigure(kerb.length, unit("length"))} long (${kerb.shape})`;
  const wheels = `${kerb.wheels === "both" ? "both sides" : `the ${kerb.wheels} side`}, ${kerb.axle === "both" ? "both axles" : `the ${kerb.axle} axle`}`;
  const from = at === undefined ? "straight ahead" : nameOfCase(at);
  return `${name}: ${size} under ${wheels}, ${from} at ${showQuantity(kerb.speed, unit("speed"), 4)}`;
}

/** Worked out when somebody points at it; undefined where the car has no such kerb. */
export function kerbCard({ kerbs, model }: CheckedCar, name: string): string | undefined {
  const found = kerbs.at(name);
  if (found === undefined) return undefined;
  if (isAbsent(found)) return found.reason;
  const unit = unitsOfCar(model);
  // A hover holds what one looks for first; twenty elements are for the command line.
  const [wheels, heights] = kerbTables(found.figures, unit).map(asTable);
  const parts = [titleOfStrike(found, unit), wheels, heights, stopsLine(found.figures, unit), `_${cautions}_`];
  return parts.join("\n\n");
}

/** "On its stop: front.third-stop for 12 ms, at most 340 N. …" */
function stopsLine({ elements }: StrikeFigures, unit: ShowUnit): string {
  const met = elements.filter(({ onStop }) => onStop !== undefined && onStop > 0);
  const told = met.map(
    ({ path, onStop, force, measure }) =>
      `${path} for ${showQuantity(onStop ?? 0, "ms", 3)}, at most ${showFigure(force.most, loadUnit(measure, unit), 3)}`,
  );
  const stops = told.length === 0 ? "No stop is met." : `On its stop: ${told.join("; ")}.`;
  return `${stops} Forces and speeds of every element: \`bellcrank kerb\`.`;
}

/** The first of its tables carries what is struck. */
function strikeSections(strike: KerbStrike, unit: ShowUnit): readonly Section[] {
  const title = titleOfStrike(strike, unit);
  return kerbTables(strike.figures, unit).map((table, i) => (i === 0 ? { ...table, title } : table));
}

export function kerbPage({ model }: CheckedCar, found: readonly KerbFound[]): RatesPage {
  const unit = unitsOfCar(model);
  const reasons = found.flatMap(([name, strike]) => (isAbsent(strike) ? [`${name}: ${strike.reason}`] : []));
  const sections = found.flatMap(([, strike]) => (isAbsent(strike) ? [] : strikeSections(strike, unit)));
  return { title: titleOf(model), sections, reasons, notes: sections.length === 0 ? [] : [HOW] };
}

const HOW =
  "travel is from where the wheel was before; heights are above the level road; tyres are springs with damping that push and never pull, " +
  "the kerb averaged over the contact patch; rods, frame and tyre carcass are taken as rigid, so that real peaks on sharp edges differ";
