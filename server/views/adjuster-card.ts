/**
 * How long a rod or a drop link is set against the drawing, by the line that sets it: in its unit and, where its
 * thread is known, in turns.
 */
import type { AxleModel, CarModel, CornerModel, ElementModel } from "../model/car.js";
import type { Given, Side } from "../model/origin.js";
import { showNumber, showQuantity } from "../quantities/index.js";

interface SetLength {
  /** `front.left.push-rod` */
  readonly owner: readonly [axle: string, side: Side, rest: string];
  readonly longer: Given;
  readonly thread: Given | undefined;
}

/** Lengths below this are rounding, m. */
const SAME = 1e-9;

/** "**front.push-rod** · set 1.25 mm shorter than drawn (1 turn of 1.25 mm/turn)", one line a side where they differ. */
export function adjusterCard(car: CarModel, uri: string, start: number): string | undefined {
  const all = [car.axles.front, car.axles.rear].flatMap((axle) => (axle === undefined ? [] : lengthsIn(axle)));
  const here = all.filter(({ longer }) => longer.statement.uri === uri && longer.statement.start === start);
  const [first, second] = here;
  if (first === undefined) return undefined;
  if (second !== undefined && Math.abs(first.longer.value - second.longer.value) < SAME) {
    const [axle, , rest] = first.owner;
    return line(`${axle}.${rest}`, first);
  }
  return here.map((one) => line(one.owner.join("."), one)).join("\n\n");
}

function line(owner: string, { longer, thread }: SetLength): string {
  const change = Math.abs(longer.value);
  if (change < SAME) return `**${owner}** · as long as drawn`;
  const than = `${longer.value < 0 ? "shorter" : "longer"} than drawn`;
  const turns = thread === undefined ? "" : ` (${inTurns(change, thread)})`;
  return `**${owner}** · set ${showQuantity(change, longer.unit, 4)} ${than}${turns}`;
}

function inTurns(change: number, { value, unit }: Given): string {
  const turns = showNumber(change / value, 4);
  return `${turns} ${turns === "1" ? "turn" : "turns"} of ${showQuantity(value, unit, 4)}`;
}

function lengthsIn(axle: AxleModel): readonly SetLength[] {
  return (["left", "right"] as const).flatMap((side) => [
    ...ofRod(axle.name, side, axle.corner[side]),
    ...axle.elements.flatMap((element) => ofLink(axle.name, side, element)),
  ]);
}

function ofRod(axle: string, side: Side, corner: CornerModel): readonly SetLength[] {
  const rod = corner.kind === "hardpoints" || corner.kind === "planar" ? corner.rod : undefined;
  if (rod?.longer === undefined) return [];
  return [{ owner: [axle, side, rod.kind], longer: rod.longer, thread: rod.thread }];
}

function ofLink(axle: string, side: Side, { name, connection }: ElementModel): readonly SetLength[] {
  const longer = connection?.kind === "bar" || connection?.kind === "tee" ? connection.longer[side] : undefined;
  return longer === undefined ? [] : [{ owner: [axle, side, `${name}.drop-link`], longer, thread: undefined }];
}
