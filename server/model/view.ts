/** A car or set-up as it is published, with the tree that it was made from: what a set-up derives from. */
import type { ResolvedCar } from "./resolved-file.js";
import type { CarTree } from "./tree.js";

export interface View {
  readonly model: ResolvedCar;
  readonly tree: CarTree;
}
