/**
 * The axles in view at one pose: which corner is where in its tables, and every point of it.
 *
 * In: what the server sampled, and a pose. Out: points in the car's frame, body held still.
 */
import type { PanelAxle, PanelCar, PanelCorner, PanelEnd } from "../../../server/lsp/protocol-panel.js";
import { type Point3, dot, minus, sum, times } from "./geometry.js";
import { type Arms, AT_REST, type AxleName, type CornerRange, type Pose, type SideName, travelOf } from "./pose.js";
import { cornerWeights, numberAt, pointAt, vectorAt, type Weights } from "./tables.js";

export const SIDES: readonly SideName[] = ["left", "right"];

/** Stands in where the text states none: an angle needs some arm, and without a track there is no axle of it to draw. */
const USUAL_TRACK = 1.4;
const USUAL_WHEELBASE = 2.5;

export const armsOf = (car: PanelCar, axle: PanelAxle, singleAxle: AxleName): Arms => ({
  track: axle.track ?? USUAL_TRACK,
  wheelbase: car.wheelbase ?? USUAL_WHEELBASE,
  singleAxle,
});

export interface PosedCorner {
  readonly axle: AxleName;
  readonly side: SideName;
  readonly data: PanelCorner;
  readonly travel: number;
  readonly weights: Weights;
  /** Undefined where the links do not reach. */
  readonly points: readonly (Point3 | undefined)[];
  readonly rockerAngle: number;
}

export interface PosedAxle {
  readonly data: PanelAxle;
  readonly left: PosedCorner;
  readonly right: PosedCorner;
}

/** What a corner can do; one without geometry keeps to the envelope. */
export function rangesOf(car: PanelCar, axles: readonly PanelAxle[], singleAxle: AxleName): readonly CornerRange[] {
  return axles.flatMap((axle) =>
    SIDES.map((side): CornerRange => {
      const { travels } = axle[side];
      const drawn = travels.length > 1;
      return {
        axle: axle.name,
        side,
        arms: armsOf(car, axle, singleAxle),
        from: (drawn ? travels[0] : axle.travel.from) ?? 0,
        to: (drawn ? travels.at(-1) : axle.travel.to) ?? 0,
      };
    }),
  );
}

function posedCorner(axle: PanelAxle, side: SideName, travel: number, steer: number): PosedCorner {
  const data = axle[side];
  const weights = cornerWeights(data, travel, steer);
  return {
    axle: axle.name,
    side,
    data,
    travel,
    weights,
    points: data.points.map((point) => pointAt(point, weights)),
    rockerAngle: (data.rocker && numberAt(data.rocker.angle, weights)) ?? 0,
  };
}

export function posedAxle(axle: PanelAxle, pose: Pose, arms: Arms): PosedAxle {
  const at = (side: SideName): PosedCorner =>
    posedCorner(axle, side, travelOf(pose, { axle: axle.name, side }, arms), pose.steer);
  return { data: axle, left: at("left"), right: at("right") };
}

export const posedCar = (
  car: PanelCar,
  axles: readonly PanelAxle[],
  pose: Pose,
  singleAxle: AxleName,
): readonly PosedAxle[] => axles.map((axle) => posedAxle(axle, pose, armsOf(car, axle, singleAxle)));

export function endPoint({ axle, side, point }: PanelEnd, axles: readonly PosedAxle[]): Point3 | undefined {
  return axles.find(({ data }) => data.name === axle)?.[side].points[point];
}

/** A rigid motion: turned by rows of `turn`, then shifted. */
export interface BodyMotion {
  readonly turn: readonly [Point3, Point3, Point3];
  readonly shift: Point3;
}

export const HELD: BodyMotion = {
  turn: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  shift: [0, 0, 0],
};

/**
 * How the body moves when the road is held instead: down with the mean travel, rolled and pitched as the wheels' travels say, about the
 * road's middle. Roll about x (positive lifts the left side) after pitch about y (positive is nose down).
 */
export function bodyOver(axles: readonly PosedAxle[], road: number): BodyMotion {
  if (axles.length === 0) return HELD;
  const means = axles.map(({ left, right }) => (left.travel + right.travel) / 2);
  const mean = average(means);
  const roll = average(
    axles.map(({ data, left, right }) => Math.atan((right.travel - left.travel) / (data.track ?? USUAL_TRACK))),
  );
  const places = axles.map(({ left, right }) => middleX(left, right));
  const [front, rear] = places;
  const pitch =
    front === undefined || rear === undefined || front === rear
      ? 0
      : Math.atan(((means[0] ?? 0) - (means[1] ?? 0)) / (front - rear));
  const [cr, sr, cp, sp] = [Math.cos(roll), Math.sin(roll), Math.cos(pitch), Math.sin(pitch)];
  const turn: BodyMotion["turn"] = [
    [cp, 0, sp],
    [sr * sp, cr, -sr * cp],
    [-cr * sp, sr, cr * cp],
  ];
  const about: Point3 = [average(places), 0, road];
  return { turn, shift: sum(minus(about, applied(turn, about)), [0, 0, -mean]) };
}

const average = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0) / values.length;

const middleX = (left: PosedCorner, right: PosedCorner): number =>
  average([left, right].map(({ data }) => data.wheel?.centre[0] ?? 0));

const applied = (turn: BodyMotion["turn"], a: Point3): Point3 => [dot(turn[0], a), dot(turn[1], a), dot(turn[2], a)];

/** A direction of the room, as the body has it. */
export const intoBody = ({ turn }: BodyMotion, a: Point3): Point3 =>
  sum(sum(times(a[0], turn[0]), times(a[1], turn[1])), times(a[2], turn[2]));

/** Height of the road below the wheels at design, m; 0 where no wheel has a place. */
export function roadHeight(axles: readonly PanelAxle[]): number {
  const heights = axles.flatMap((axle) => {
    const arms: Arms = { track: axle.track ?? USUAL_TRACK, wheelbase: USUAL_WHEELBASE, singleAxle: axle.name };
    const posed = posedAxle(axle, AT_REST, arms);
    return SIDES.flatMap((side) => {
      const contact = axle[side].wheel?.contact;
      const z = contact && vectorAt(contact, posed[side].weights)?.[2];
      return z === undefined ? [] : [z];
    });
  });
  return heights.length === 0 ? 0 : average(heights);
}
