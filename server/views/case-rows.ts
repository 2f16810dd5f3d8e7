/** The figures of a load case, one a row with what it is of and in which unit: what every face shows of it. */
import type { CaseAxle, CaseElement, CaseFigures, CaseWheel } from "../analyses/equilibrium/results.js";
import type { Figure } from "../analyses/results.js";
import type { DimensionName } from "../../grammar/vocabulary/word.js";
import type { ShowUnit } from "./units-of-car.js";

export interface CaseRow {
  /** `car`, `front`, `front left`, or the path of an element. */
  readonly subject: string;
  readonly name: string;
  readonly figure: Figure;
  readonly unit: string;
}

type Named = readonly [name: string, figure: Figure, dimension: DimensionName];

const rowsOf = (subject: string, named: readonly Named[], unit: ShowUnit): readonly CaseRow[] =>
  named.map(([name, figure, dimension]) => ({ subject, name, figure, unit: unit(dimension) }));

/** Of the whole car: attitude, the three shares, air. */
export function carRows(found: CaseFigures, unit: ShowUnit): readonly CaseRow[] {
  const { front, rear, roll, pitch, rollGradient, air } = found;
  return [
    ...rowsOf("front", [["ride height", front.rideHeight, "length"]], unit),
    ...rowsOf("rear", [["ride height", rear.rideHeight, "length"]], unit),
    ...found.clearances.flatMap(({ name, height }) => rowsOf(name, [["clearance", height, "length"]], unit)),
    ...rowsOf(
      "car",
      [
        ["roll angle", roll, "angle"],
        ["roll gradient", rollGradient, "angle-per-acceleration"],
        ["pitch angle", pitch, "angle"],
        ["load transfer at the front", found.loadTransferFront, "share"],
        ["roll stiffness at the front", found.rollStiffnessFront, "share"],
        ["downforce at the front", found.downforceFront, "share"],
      ],
      unit,
    ),
    ...rowsOf("front", [["downforce", air.front, "force"]], unit),
    ...rowsOf("rear", [["downforce", air.rear, "force"]], unit),
    ...rowsOf("car", [["drag", air.drag, "force"]], unit),
  ];
}

export const wheelName = ({ axle, side }: Pick<CaseWheel, "axle" | "side">): string => `${axle} ${side}`;

export const wheelRows = ({ wheels }: CaseFigures, unit: ShowUnit): readonly CaseRow[] =>
  wheels.flatMap((wheel) =>
    rowsOf(
      wheelName(wheel),
      [
        ["load", wheel.load, "force"],
        ["travel", wheel.travel, "length"],
        ["left in bump", wheel.left.bump, "length"],
        ["left in rebound", wheel.left.rebound, "length"],
        ["lateral force", wheel.lateral, "force"],
        ["longitudinal force", wheel.longitudinal, "force"],
        ["camber to the road", wheel.camberToRoad, "angle"],
        ["toe", wheel.toe, "angle"],
      ],
      unit,
    ),
  );

/** In what its force and its deflection are measured. */
export function elementDimensions({ torsional, measure }: Pick<CaseElement, "torsional" | "measure">): {
  readonly force: DimensionName;
  readonly deflection: DimensionName;
} {
  if (measure === "volume") return { force: "pressure", deflection: "volume" };
  return torsional ? { force: "moment", deflection: "angle" } : { force: "force", deflection: "length" };
}

export function elementRows({ elements }: CaseFigures, unit: ShowUnit): readonly CaseRow[] {
  return elements.flatMap((element) => {
    const { force, deflection } = elementDimensions(element);
    const { stroke, stop } = element;
    return rowsOf(
      element.path,
      [
        ["force", element.force, force],
        ["deflection", element.deflection, deflection],
        ...(stroke === undefined
          ? []
          : ([
              ["stroke left in bump", stroke.bump, deflection],
              ["stroke left in rebound", stroke.rebound, deflection],
            ] as const)),
        ...(stop === undefined ? [] : ([["left until it carries", stop.left, deflection]] as const)),
        ...element.stresses.map(({ part, stress }): Named => [`stress of the ${part}`, stress, "stress"]),
      ],
      unit,
    );
  });
}

/** Rates of both axles at the positions of the case. */
export const axleRateRows = (name: "front" | "rear", axle: CaseAxle, unit: ShowUnit): readonly CaseRow[] =>
  rowsOf(
    name,
    [
      ["heave rate (both wheels)", axle.heaveRate, "rate"],
      ["roll stiffness", axle.rollStiffness, "torsional-rate"],
      ["single wheel, left", axle.wheelRate.left, "rate"],
      ["single wheel, right", axle.wheelRate.right, "rate"],
      ["with tyres: heave", axle.rideRate.heave, "rate"],
      ["with tyres: roll", axle.rideRate.roll, "torsional-rate"],
      ["with tyres: single wheel", axle.rideRate.single, "rate"],
      ["heave damping", axle.heaveDamping, "damping"],
      ["roll damping", axle.rollDamping, "torsional-damping"],
    ],
    unit,
  );
