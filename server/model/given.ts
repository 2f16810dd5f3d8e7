/**
 * Values out of resolved blocks, by word; and points of a right side put back into the car's frame.
 * A resolved value is a `Given` with its kind beside it, so nothing is copied.
 */
import type { ResolvedValue, Vec3 } from "./car.js";
import type { Given, Side } from "./origin.js";
import { mirrorCoordinates } from "./sides.js";
import { wordIn, type TreeBlock, type TreeStatement } from "./tree.js";

export function numberIn(block: TreeBlock | undefined, word: string): Given | undefined {
  return numberOf(wordIn(block, word));
}

export function numberOf(statement: TreeStatement | undefined): Given | undefined {
  const value = statement?.values.find(isNumber);
  return value;
}

const isNumber = (value: ResolvedValue): value is Extract<ResolvedValue, { kind: "number" }> => value.kind === "number";

export function choiceIn(block: TreeBlock | undefined, word: string): string | undefined {
  const [value] = wordIn(block, word)?.values ?? [];
  return value?.kind === "word" ? value.text : undefined;
}

/** The point behind a word, in the frame of the car. */
export function pointIn(block: TreeBlock | undefined, word: string, side: Side): Given<Vec3> | undefined {
  return pointOf(wordIn(block, word), side) as Given<Vec3> | undefined;
}

export function pointOf(statement: TreeStatement | undefined, side: Side): Given<readonly number[]> | undefined {
  for (const value of statement?.values ?? []) if (value.kind === "point") return inCar(value, side);
  return undefined;
}

/** The tree keeps right sides in the frame of a left one. */
export function inCar<T extends Given<readonly number[]>>(point: T, side: Side): T {
  return side === "left" ? point : { ...point, value: mirrorCoordinates(point.value) };
}
