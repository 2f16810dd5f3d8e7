/** Solving for what is expected, for the faces: a file of a workspace, one of its cars or set-ups, and what to vary. */
import type { CheckedCar } from "../findings/context.js";
import { type Answer, type SolveAnswer, solveFor, type Vary } from "../findings/solving/solve-for.js";
import { nameOf } from "../findings/where.js";
import type { FileView } from "./workspace.js";

export type { Answer, SolveAnswer, Vary };

export const solveCar = (
  file: FileView,
  car: CheckedCar,
  vary: readonly Vary[],
  wanted: readonly string[],
): SolveAnswer => solveFor(file, nameOf(car), vary, wanted);
