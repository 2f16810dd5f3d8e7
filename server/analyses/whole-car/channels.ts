/**
 * Splits a car on a road into independent random heights: left and right together, and opposed.
 *
 * r_L = r_t + r_o, r_R = r_t − r_o with spectra (1 + γ)/2 and (1 − γ)/2 of the road's. A mirrored car meets each with
 * one of its halves, any other car with all of itself.
 */
import { product, type Rows } from "../../maths/rows.js";
import type { WholeCar } from "./car-data.js";
import { ROAD_OPPOSED, ROAD_TOGETHER } from "./halves.js";
import type { Part } from "./parts.js";
import type { Sides } from "./road-profile.js";
import { type Displacement, type Operator, type Responder, responderOf } from "./transfer.js";

/** What moves, over the seven freedoms and four heights. */
export interface Output extends Displacement {
  readonly operator: Operator;
}

/** One random height that enters at the front and, later, at the rear. */
export interface Channel {
  readonly responder: Responder;
  /** How much each of the responder's heights takes of it: at the front, and of the delayed one. */
  readonly front: readonly number[];
  readonly rear: readonly number[];
  /** s */
  readonly delay: number;
  /** 1 where left and right have it alike, −1 where opposed: of what both have in common γ it has (1 + sign γ)/2. */
  readonly sign: 1 | -1;
  /** By output: its displacement among the responder's, each of which is told once whatever rests on it. */
  readonly of: readonly number[];
  readonly displacements: number;
  readonly operators: readonly Operator[];
}

/** @param parts of this car @param way of the responders, for tests */
export function channelsOf(
  car: WholeCar,
  parts: readonly Part[],
  speed: number,
  sides: Sides,
  outputs: readonly Output[],
  way?: Responder["way"],
): readonly Channel[] {
  const answering = new Map<Part, ReturnType<typeof answeringOf>>();
  const channel = (sign: 1 | -1, part: Part): Channel => {
    const road = sign === 1 ? ROAD_TOGETHER : ROAD_OPPOSED;
    const columns = part.half === undefined ? road : UNIT;
    const known = answering.get(part) ?? answeringOf(part, outputs, way);
    answering.set(part, known);
    return {
      ...known,
      front: columns.map((row) => row[0]!),
      rear: columns.map((row) => row[1]!),
      delay: car.wheelbase / speed,
      sign,
      operators: outputs.map(({ operator }) => operator),
    };
  };
  const [first, second = first] = parts;
  if (first === undefined || second === undefined) return [];
  return sides === "same" ? [channel(1, first)] : [channel(1, first), channel(-1, second)];
}

function answeringOf(
  part: Part,
  outputs: readonly Output[],
  way: Responder["way"] | undefined,
): Pick<Channel, "responder" | "of" | "displacements"> {
  const { half } = part;
  const own = half === undefined ? outputs : outputs.map((one) => inHalf(one, half.coordinates, half.inputs));
  const { of, kept } = told(own);
  return { responder: responderOf(part, kept, way), of, displacements: kept.length };
}

const UNIT: Rows = [
  [1, 0],
  [0, 1],
];

const inHalf = ({ motion, road }: Displacement, coordinates: Rows, inputs: Rows): Displacement => ({
  motion: product([motion], coordinates)[0]!,
  road: product([road], inputs)[0]!,
});

/** Each displacement once: one that is another's opposite has the same mean square. */
function told(all: readonly Displacement[]): {
  readonly of: readonly number[];
  readonly kept: readonly Displacement[];
} {
  const kept: Displacement[] = [];
  const of = all.map((one) => {
    const known = kept.findIndex((other) => isSame(one, other, 1) || isSame(one, other, -1));
    if (known >= 0) return known;
    kept.push({ motion: one.motion, road: one.road });
    return kept.length - 1;
  });
  return { of, kept };
}

const isSame = (a: Displacement, b: Displacement, sign: 1 | -1): boolean =>
  isTimes(a.motion, b.motion, sign) && isTimes(a.road, b.road, sign);

function isTimes(a: readonly number[], b: readonly number[], sign: 1 | -1): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== sign * b[i]!) return false;
  return true;
}
