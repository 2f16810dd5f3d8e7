/**
 * A page of main figures of a car or set-up, for snapshots that a person can review: each with its
 * unit, in the author's system, at static trim. What is absent is left out; that a figure is there is
 * what the snapshot holds.
 */
import type {
  AxleAnalysis,
  CarAnalysis,
  ElementFigures,
  Figure,
  StrengthFigures,
} from "../../server/analyses/results.js";
import type { CheckedCar } from "../../server/findings/context.js";
import type { CarModel, ElementModel } from "../../server/model/car.js";
import { atWheelsUnit, elementUnits } from "../../server/views/element-units.js";
import { isAbsent, showFigure, showShare } from "../../server/views/figures.js";
import { type ShowUnit, unitsOfCar } from "../../server/views/units-of-car.js";

type Entry = readonly [what: string, figure: Figure | undefined, unit: string];

export function figurePage({ model, analysis }: CheckedCar): string {
  const unit = unitsOfCar(model);
  const { front, rear } = analysis.axles;
  const axles = [front, rear].filter((axle) => axle !== undefined);
  const models = [model.axles.front, model.axles.rear, model].flatMap((holder) => holder?.elements ?? []);
  return [
    model.setup ?? model.name,
    ...axles.flatMap((axle) => axleLines(axle, unit)),
    ...[...axles.flatMap(({ elements }) => elements), ...analysis.elements].flatMap((figures) =>
      elementLines(figures, models, unit),
    ),
    ...carLines(analysis, unit),
    ...expectedLines(model, analysis),
  ].join("\n");
}

const written = (entries: readonly Entry[]): string =>
  entries
    .flatMap(([what, figure, unit]) =>
      figure === undefined || isAbsent(figure) ? [] : [`${what} ${showFigure(figure, unit)}`],
    )
    .join(", ");

function axleLines({ rates, atRest }: AxleAnalysis, unit: ShowUnit): readonly string[] {
  const [rate, torsional] = [unit("rate"), unit("torsional-rate")];
  const single = isAbsent(rates.wheelRate.left) ? undefined : rates.wheelRate.left;
  const share = isAbsent(rates.rollStiffnessShare) ? [] : [`roll share ${showShare(rates.rollStiffnessShare)}`];
  const springs = written([
    ["heave", rates.heaveRate, rate],
    ["roll", rates.rollStiffness, torsional],
    ["left wheel", single, rate],
    ["right wheel", rates.wheelRate.right === single ? undefined : rates.wheelRate.right, rate],
  ]);
  const tyres = written([
    ["with tyres: heave", rates.rideRate.heave, rate],
    ["roll", rates.rideRate.roll, torsional],
    ["frequency", rates.heaveFrequency, unit("frequency")],
  ]);
  const dampers = written([
    ["damping: heave", rates.heaveDamping, unit("damping")],
    ["roll", rates.rollDamping, unit("torsional-damping")],
  ]);
  const loads = written([
    ["left load", atRest.left.load, unit("force")],
    ["right load", atRest.right.load, unit("force")],
  ]);
  return [`  ${rates.axle}: ${[springs, tyres, dampers, loads, ...share].filter((part) => part !== "").join("; ")}`];
}

function elementLines(figures: ElementFigures, models: readonly ElementModel[], unit: ShowUnit): readonly string[] {
  const model = models.find(({ path }) => path === figures.path);
  if (model === undefined) throw new Error(`no element ${figures.path} in the car`);
  // Mirrored ones say the same; a one-sided set-up shows in its left one's absence of a twin, which the axle's line tells.
  if (figures.path.includes(".right.")) return [];
  const units = elementUnits(figures, unit);
  const sensitivity = figures.sensitivity;
  const motion = isAbsent(sensitivity)
    ? []
    : [
        `moves ${figures.for.map((mode) => units.motion(sensitivity[mode === "corner" ? "heave" : (mode as "heave")])).join(" and ")}`,
      ];
  const parts = [
    ...motion,
    written([
      [figures.kind === "damper" ? "damping" : "rate", figures.rate, units.rate],
      ["at wheels", figures.atWheels, atWheelsUnit(model, unit)],
      ["load", figures.staticLoad, units.load],
      ["pressure", figures.fluid?.pressure, unit("pressure")],
      ["adds in heave", figures.inertance?.heave, unit("mass")],
      ["adds at one wheel", figures.inertance?.single, unit("mass")],
    ]),
    ...strengthParts(figures.strength, units.travel, unit),
    ...eventParts(figures.events, units.travel, unit),
  ];
  const told = parts.filter((part) => part !== "");
  return [`  ${figures.path}: ${told.length > 0 ? told.join(", ") : showFigure(figures.rate, units.rate)}`];
}

function strengthParts(strength: ElementFigures["strength"], travel: string, unit: ShowUnit): readonly string[] {
  if (strength === undefined || isAbsent(strength)) return [];
  const { stresses, coil, stroke } = strength satisfies StrengthFigures;
  const stress = unit("stress");
  return [
    ...stresses.map(
      ({ part, kind, most, allowable }) =>
        `${part} ${kind} up to ${showFigure(most, stress, 3)} of ${showFigure(allowable, stress, 3)}`,
    ),
    ...(coil === undefined ? [] : [`coil ${showFigure(coil.margin, travel, 3)} from solid at least`]),
    ...(stroke === undefined
      ? []
      : [
          `stroke left at least ${showFigure(stroke.bump.least, travel, 3)} in bump, ${showFigure(stroke.rebound.least, travel, 3)} in rebound`,
        ]),
  ];
}

function eventParts(events: ElementFigures["events"], travel: string, unit: ShowUnit): readonly string[] {
  if (events === undefined || isAbsent(events)) return [];
  return events.map(({ what, at, where }) => {
    const place =
      where === undefined ? "beyond the travel" : `${where.mode} ${showFigure(where.travel, unit("length"), 3)}`;
    return `${what === "free" ? "begins to carry" : "stage used up"} at ${showFigure(at, travel, 3)} (${place})`;
  });
}

/** What the car is expected to be, as it is; in load cases too. */
function expectedLines({ expectations }: CarModel, analysis: CarAnalysis): readonly string[] {
  const told = analysis.expectations.map(({ index, value, unit }) => {
    const wanted = expectations[index];
    const at = wanted?.at === undefined ? "" : ` at ${wanted.at}`;
    return `${wanted?.figure}${at} ${showFigure(value, unit)}`;
  });
  return told.length === 0 ? [] : [`  expected: ${told.join(", ")}`];
}

function carLines({ modal, changeOvers }: CarAnalysis, unit: ShowUnit): readonly string[] {
  const { body } = modal.springs;
  const told = written([
    ["heave", body.heave, unit("rate")],
    ["pitch", body.pitch, unit("torsional-rate")],
    ["roll", body.roll, unit("torsional-rate")],
  ]);
  const over = (changeOvers ?? []).map(
    ({ path, angle, lateral }) =>
      `  ${path} changes over at ${showFigure(angle, unit("angle"), 3)}, ${showFigure(lateral, unit("acceleration"), 3)}`,
  );
  return [...(told === "" ? [] : [`  car: ${told}`]), ...over];
}
