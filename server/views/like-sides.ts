/** Whether the left and the right one of a corner pair have the same figures, so that one of them speaks for both. */
import type { ElementFigures } from "../analyses/results.js";
import { isAbsent } from "./figures.js";
import type { ElementSubject } from "./subject.js";

/** `front.left.side` and `front.right.side` as `front.side`. */
export const pathOfPair = ({ model }: ElementSubject): string =>
  model.path
    .split(".")
    .filter((name) => name !== model.side)
    .join(".");

/** Two of one name, whose figures are each other's mirror image; equal to what a hover shows of them. */
export function areAlike([left, right, ...more]: readonly ElementSubject[]): boolean {
  if (left?.figures === undefined || right?.figures === undefined || more.length > 0) return false;
  return (
    pathOfPair(left) === pathOfPair(right) &&
    left.model.part?.name === right.model.part?.name &&
    shown(left.figures, 1) === shown(right.figures, -1)
  );
}

/** Numbers to six digits; what roll and warp do is opposite on the two sides. */
function shown(figures: ElementFigures, turned: 1 | -1): string {
  const { sensitivity } = figures;
  const motion = isAbsent(sensitivity)
    ? sensitivity
    : { ...sensitivity, roll: turned * sensitivity.roll, warp: turned * sensitivity.warp };
  return JSON.stringify({ ...figures, path: "", sensitivity: motion }, (_, value: unknown) =>
    typeof value === "number" ? rounded(value) : value,
  );
}

const rounded = (value: number): number => (Math.abs(value) < 1e-9 ? 0 : Number(value.toPrecision(6)));
