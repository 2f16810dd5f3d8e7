/** Hover of camber and toe: from the drawn to the wanted angle in shims, steps, and turns of the track rod. */
import { type AngleChange, angleChange } from "../analyses/alignment.js";
import type { WheelAtRest } from "../analyses/results.js";
import { angleSetting } from "../assemble/alignment.js";
import type { CheckedCar } from "../findings/context.js";
import type { AxleName, Given, Side } from "../model/origin.js";
import { showNumber, showQuantity } from "../quantities/index.js";
import { isAbsent, showFigure } from "./figures.js";
import { unitsOfCar } from "./units-of-car.js";

export interface Written {
  readonly axle: AxleName;
  readonly side: Side;
  readonly angle: "camber" | "toe";
  readonly given: Given;
}

/** Which wheels the line at this place sets. */
function writtenAt({ model }: CheckedCar, uri: string, start: number): readonly Written[] {
  const all = (["front", "rear"] as const).flatMap((axle) =>
    (["left", "right"] as const).flatMap((side) =>
      (["camber", "toe"] as const).flatMap((angle) => {
        const given = model.axles[axle]?.wheel[side][angle];
        return given === undefined ? [] : [{ axle, side, angle, given }];
      }),
    ),
  );
  return all.filter(({ given }) => given.statement.uri === uri && given.statement.start === start);
}

const rootOf = (car: CheckedCar): CheckedCar => (car.base === undefined ? car : rootOf(car.base));

export function alignmentCard(car: CheckedCar, uri: string, start: number): string | undefined {
  const lines = writtenAt(car, uri, start).map((one) => [one, lineOf(car, one)] as const);
  const [first, second] = lines;
  if (first === undefined) return undefined;
  const { axle, angle } = first[0];
  if (second === undefined || second[1] === first[1]) {
    const name = second === undefined ? `${axle}.${first[0].side}.${angle}` : `${axle}.${angle}`;
    return `**${name}** · ${first[1]}`;
  }
  return lines.map(([one, line]) => `**${one.axle}.${one.side}.${one.angle}** · ${line}`).join("\n\n");
}

function lineOf(car: CheckedCar, { axle, side, angle, given }: Written): string {
  const rest = car.analysis.axles[axle]?.atRest[side];
  const parts = [atRestWords(rest, angle, given)];
  parts.push(...angleWords(car, { axle, side, angle, given }));
  return parts.filter((part) => part !== undefined).join("; ");
}

/** How the angle gets from where it is drawn to where it is wanted; "as drawn" where it is there. */
export function angleWords(car: CheckedCar, { axle, side, angle, given }: Written): readonly string[] {
  const wanted = car.model.axles[axle];
  const drawn = rootOf(car).model.axles[axle];
  if (wanted === undefined || drawn === undefined) return [];
  return changeWords(angleChange(angleSetting({ wanted, drawn }, side, angle)), given.unit, car);
}

function atRestWords(rest: WheelAtRest | undefined, angle: "camber" | "toe", { unit }: Given): string | undefined {
  const figure = rest?.[angle];
  return figure === undefined || isAbsent(figure) ? undefined : `at rest ${showFigure(figure, unit, 3)}`;
}

export const AS_DRAWN = "as drawn";

/** Below this an angle is as drawn, rad. */
const SAME = 1e-9;

function changeWords(
  { drawn, wanted, shims, steps, rod }: AngleChange,
  unit: string,
  car: CheckedCar,
): readonly string[] {
  if (Math.abs(wanted - drawn) < SAME) return [AS_DRAWN];
  const length = unitsOfCar(car.model)("length");
  const change = `${signed(wanted - drawn, unit)} from the drawn ${showQuantity(drawn, unit, 3)}`;
  const ways: string[] = [];
  if (shims !== undefined) {
    const word = shims.count < 0 ? "taken out" : "added";
    ways.push(`${counted(Math.abs(shims.count), "shim")} of ${showQuantity(shims.thickness, length, 3)} ${word}`);
  }
  if (steps !== undefined) ways.push(counted(Math.abs(steps), "step"));
  if (rod !== undefined && shims === undefined) ways.push(...rodWords(rod, length, unit));
  return [ways.length === 0 ? change : `${change}: ${ways.join(", ")}`];
}

function rodWords(rod: NonNullable<AngleChange["rod"]>, length: string, unit: string): readonly string[] {
  const { longer, turns, camber } = rod;
  if (isAbsent(longer)) return [longer.reason];
  const way = longer < 0 ? "shorter" : "longer";
  const count = turns === undefined || isAbsent(turns) ? "" : ` (${counted(Math.abs(turns), "turn")})`;
  const besides = isAbsent(camber) ? "" : `, which changes camber by ${signed(camber, unit)}`;
  return [`track rod ${showQuantity(Math.abs(longer), length, 3)} ${way}${count}${besides}`];
}

function counted(count: number, what: string): string {
  const shown = showNumber(count, 3);
  return `${shown} ${what}${shown === "1" ? "" : "s"}`;
}

const signed = (value: number, unit: string): string => `${value > 0 ? "+" : ""}${showQuantity(value, unit, 2)}`;
