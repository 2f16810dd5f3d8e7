/**
 * Every figure of a car that a comparison looks at, each with a key by which it is found in another car: at rest, of its
 * pure motions, and in each load case.
 *
 * In: a car, and the units that figures are shown in. Out: one row a figure, the important ones marked.
 */
import type { CaseFigures } from "../../analyses/equilibrium/results.js";
import type { AxleAnalysis, ElementFigures, Figure } from "../../analyses/results.js";
import { figureAtPath } from "../../analyses/figure-paths.js";
import type { CheckedCar } from "../../findings/context.js";
import type { AxleName } from "../../model/origin.js";
import { axleRows } from "../axle-summary.js";
import { axleRateRows, carRows, type CaseRow, elementRows, wheelRows } from "../case-rows.js";
import { elementUnits, atWheelsUnit } from "../element-units.js";
import { isAbsent } from "../figures.js";
import { everyElement } from "../subject.js";
import type { ShowUnit } from "../units-of-car.js";
import type { ChangeGroup } from "./change.js";

export interface FigureRow {
  /** `front`, `front left`, `car`, `front.third` */
  readonly subject: string;
  readonly name: string;
  /** The load case; undefined at rest. */
  readonly at: string | undefined;
  readonly group: ChangeGroup;
  readonly figure: Figure;
  readonly unit: string;
  /** What a reviewer wants to see first: rates, frequencies, damping, balance, heights, clearances, travel left. */
  readonly isMain: boolean;
  /** The property whose adjuster sets it, if one does. */
  readonly property: string | undefined;
}

const AXLES = ["front", "rear"] as const;

/** Those of the car at rest alone: no motion is worked out and no load case solved for them. */
export const figureRowsAtRest = (car: CheckedCar, unit: ShowUnit): readonly FigureRow[] => [
  ...AXLES.flatMap((axle) => axleFigures(car, axle, unit)),
  ...carFigures(car, unit),
  ...elementFigures(car, unit),
];

export function figureRows(car: CheckedCar, unit: ShowUnit): readonly FigureRow[] {
  return [
    ...AXLES.flatMap((axle) => axleFigures(car, axle, unit)),
    ...carFigures(car, unit),
    ...motionFigures(car),
    ...elementFigures(car, unit),
    ...car.cases.names.flatMap((name) => caseFigures(car, name, unit)),
  ];
}

type Short = readonly [subject: string, name: string, figure: Figure, unit: string];

const row = (
  [subject, name, figure, unit]: Short,
  group: ChangeGroup,
  rest: Partial<Pick<FigureRow, "at" | "isMain" | "property">> = {},
): FigureRow => ({ subject, name, figure, unit, group, at: undefined, isMain: true, property: undefined, ...rest });

const topicOf = (name: string): string =>
  name.includes("heave") ? "heave" : name.includes("roll") ? "roll" : "single wheel";

function axleFigures({ analysis }: CheckedCar, axle: AxleName, unit: ShowUnit): readonly FigureRow[] {
  const found = analysis.axles[axle];
  if (found === undefined) return [];
  return [
    ...axleRows(found.rates).map(({ name, figure, dimension }) => {
      const [subject, own] = name.startsWith("single wheel, ")
        ? [`${axle} ${name.slice("single wheel, ".length)}`, "single wheel rate"]
        : [axle, name];
      return row([subject, own, figure, unit(dimension)], { axle, topic: topicOf(name) });
    }),
    ...shareRows(found, axle, unit),
    ...restRows(found, axle, unit),
  ];
}

function shareRows({ rates }: AxleAnalysis, axle: AxleName, unit: ShowUnit): readonly FigureRow[] {
  return rates.shares.flatMap(({ path, heave, roll }) => [
    row([path, "adds in heave", heave, unit("rate")], { axle, topic: "heave" }, { isMain: false }),
    row([path, "adds in roll", roll, unit("torsional-rate")], { axle, topic: "roll" }, { isMain: false }),
  ]);
}

function restRows({ atRest }: AxleAnalysis, axle: AxleName, unit: ShowUnit): readonly FigureRow[] {
  const group = { axle, topic: "stance" };
  const wheels = (["left", "right"] as const).flatMap((side) => {
    const { load, camber, toe } = atRest[side];
    const of = (property: string) => ({ isMain: false, property: `${axle}.${side}.${property}` });
    return [
      row([`${axle} ${side}`, "wheel load", load, unit("force")], group, { isMain: false }),
      row([`${axle} ${side}`, "camber", camber, unit("angle")], group, of("camber")),
      row([`${axle} ${side}`, "toe", toe, unit("angle")], group, of("toe")),
    ];
  });
  const height = row([axle, "ride height", atRest.rideHeight, unit("length")], group, {
    property: `${axle}.ride-height`,
  });
  return [height, ...wheels];
}

const ofCar = (topic: string): ChangeGroup => ({ axle: undefined, topic });

function carFigures({ analysis }: CheckedCar, unit: ShowUnit): readonly FigureRow[] {
  const share = (path: string, name: string) => row(["car", name, figureAtPath(analysis, path), "%"], ofCar("balance"));
  const { springs, damping } = analysis.modal;
  const body = (["heave", "pitch", "roll"] as const).flatMap((mode) => {
    const turns = mode !== "heave";
    return [
      row(
        ["car", `${mode} rate of the body`, springs.body[mode], unit(turns ? "torsional-rate" : "rate")],
        ofCar(mode),
        {
          isMain: mode === "pitch",
        },
      ),
      row(
        ["car", `${mode} damping of the body`, damping.body[mode], unit(turns ? "torsional-damping" : "damping")],
        ofCar(mode),
        { isMain: mode === "pitch" },
      ),
    ];
  });
  return [share("roll-stiffness-front", "roll stiffness at the front"), share("cross-weight", "cross weight"), ...body];
}

function motionFigures({ ride }: CheckedCar): readonly FigureRow[] {
  const pure = ride.pure(undefined);
  if (isAbsent(pure)) return [];
  const body = (["heave", "pitch", "roll"] as const).flatMap((mode) => [
    row(["car", `${mode} frequency of the body`, pure[mode].frequency, "Hz"], ofCar(mode)),
    row(["car", `${mode} damping ratio of the body`, pure[mode].dampingRatio, ""], ofCar(mode)),
  ]);
  const wheels = (["corner", "hop"] as const).flatMap((kind) =>
    pure[kind].flatMap((motion, i) => {
      const axle = i < 2 ? "front" : "rear";
      const subject = `${axle} ${i % 2 === 0 ? "left" : "right"}`;
      const name = kind === "hop" ? "wheel hop" : "corner";
      const group = { axle, topic: "single wheel" } as const;
      return [
        row([subject, `${name} frequency`, motion.frequency, "Hz"], group, { isMain: false }),
        row([subject, `${name} damping ratio`, motion.dampingRatio, ""], group, { isMain: kind === "corner" }),
      ];
    }),
  );
  return [...body, ...wheels];
}

function elementFigures(car: CheckedCar, unit: ShowUnit): readonly FigureRow[] {
  return everyElement(car).flatMap(({ model, figures }) => {
    if (figures === undefined) return [];
    const group = { axle: model.axle, topic: model.for.join(" and ") };
    const units = elementUnits(figures, unit);
    const detail = (name: string, figure: Figure, shown: string) =>
      row([figures.path, name, figure, shown], group, { isMain: false });
    return [
      detail("rate", figures.rate, units.rate),
      detail("at the wheels", figures.atWheels, atWheelsUnit(model, unit)),
      detail("static load", figures.staticLoad, units.load),
      ...motionRows(figures, group, unit),
      ...leakRows(figures, group),
    ];
  });
}

function motionRows(figures: ElementFigures, group: ChangeGroup, unit: ShowUnit): readonly FigureRow[] {
  const { path, sensitivity, torsional, measure, motionRatio } = figures;
  const shown = measure === "volume" ? unit("piston-area") : torsional ? unit("angle-per-length") : "";
  if (motionRatio !== undefined) return [row([path, "motion ratio", motionRatio, shown], group, { isMain: false })];
  return figures.for.flatMap((mode) => {
    const figure = isAbsent(sensitivity)
      ? sensitivity
      : Object.entries(sensitivity).find(([name]) => name === mode)?.[1];
    return figure === undefined ? [] : [row([path, `motion in ${mode}`, figure, shown], group, { isMain: false })];
  });
}

function leakRows({ path, leak }: ElementFigures, group: ChangeGroup): readonly FigureRow[] {
  if (leak === undefined || isAbsent(leak)) return [];
  return [
    row([path, `leak into ${leak.mode}`, leak.firstOrder, "%"], group),
    row([path, `leak into ${leak.mode} over the travel`, leak.finite, "%"], group),
  ];
}

function caseFigures(car: CheckedCar, name: string, unit: ShowUnit): readonly FigureRow[] {
  const found = car.cases.at(name);
  if (found?.kind !== "equilibrium") return [];
  const rows = (list: readonly CaseRow[], isMain: (row: CaseRow) => boolean): readonly FigureRow[] =>
    list.map((one) => {
      const property = one.name === "ride height" ? `${one.subject}.ride-height` : undefined;
      const short: Short = [one.subject, one.name.replace(/^left in /, "travel left in "), one.figure, one.unit];
      return row(short, caseGroup(one), { at: name, isMain: isMain(one), property });
    });
  return [
    ...rows(carRows(found, unit), () => true),
    ...rows(wheelRows(found, unit), ({ name: figure }) => figure === "left in bump"),
    ...rows(elementRows(found, unit), ({ name: figure }) => figure.includes("left")),
    ...rows(ratesAt(found, unit), () => false),
  ];
}

const ratesAt = (found: CaseFigures, unit: ShowUnit): readonly CaseRow[] =>
  AXLES.flatMap((axle) => axleRateRows(axle, found[axle], unit));

function caseGroup({ subject }: CaseRow): ChangeGroup {
  const axle = AXLES.find((name) => subject.startsWith(name));
  return { axle, topic: "cases" };
}
