/** What attachments of elements may join to: the bodies, eyes and levers of an axle, side by side. */
import type { AxleName, Given, Side, Sides } from "./origin.js";
import { inCar, pointIn } from "./given.js";
import { wordIn, type TreeBlock, type TreeStatement } from "./tree.js";
import type { Vec3 } from "./car.js";

export interface AxleSides {
  readonly name: AxleName;
  readonly blocks: Sides<TreeBlock>;
  /** Its anti-roll bars, as the left side has them. */
  readonly bars: readonly TreeStatement[];
}

export const axleSides = (name: AxleName, blocks: Sides<TreeBlock>): AxleSides => ({
  name,
  blocks,
  bars: blocks.left.statements.filter(({ word, name: own }) => word === "anti-roll-bar" && own !== undefined),
});

export interface Eye {
  readonly statement: TreeStatement;
  readonly point: Given<Vec3>;
}

const rockerBlock = (axle: AxleSides, side: Side): TreeBlock | undefined =>
  wordIn(wordIn(axle.blocks[side], "linkage")?.block, "rocker")?.block;

export const hasRocker = (axle: AxleSides, side: Side): boolean => rockerBlock(axle, side) !== undefined;

/** Whether something of the rocker could not be read, so that an eye may be there without being known. */
export const hasUnreadEyes = (axle: AxleSides, side: Side): boolean => {
  const linkage = wordIn(axle.blocks[side], "linkage");
  return rockerBlock(axle, side)?.broken?.has("eye") === true || linkage?.block?.broken?.has("rocker") === true;
};

export function eyeNames(axle: AxleSides, side: Side): readonly string[] {
  return (rockerBlock(axle, side)?.statements ?? []).flatMap((statement) =>
    statement.word === "eye" && statement.name !== undefined ? [statement.name.text] : [],
  );
}

/** An eye in the car's frame; in a planar linkage it lies in the plane of the wheel centre. */
export function eyeOf(axle: AxleSides, side: Side, name: string): Eye | undefined {
  const statement = rockerBlock(axle, side)?.statements.find(
    (other) => other.word === "eye" && other.name?.text === name,
  );
  const point = statement?.values.find((value) => value.kind === "point");
  if (statement === undefined || point?.kind !== "point") return undefined;
  return { statement, point: inSpace(inCar(point, side), axle, side) };
}

export const isPlanar = (axle: AxleSides): boolean =>
  wordIn(axle.blocks.left, "linkage")?.block?.concept === "linkage-planar";

/** (y, z) in the plane of the wheel centre as a point in space. */
export function inSpace(point: Given<readonly number[]>, axle: AxleSides, side: Side): Given<Vec3> {
  const [first = 0, second = 0, third] = point.value;
  if (third !== undefined) return point as Given<Vec3>;
  const centre = pointIn(wordIn(axle.blocks[side], "wheel")?.block, "centre", side);
  return { ...point, value: [centre?.value[0] ?? 0, first, second] };
}

export const barNamed = ({ bars }: AxleSides, wanted: string): TreeStatement | undefined =>
  bars.find(({ name }) => name?.text === wanted);

export const barNames = ({ bars }: AxleSides): readonly string[] => bars.flatMap(({ name }) => name?.text ?? []);
