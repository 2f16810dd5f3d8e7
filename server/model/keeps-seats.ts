/** Whether a set-up leaves seats and rods as they were set for what it derives from. */
import type { CarModel } from "./car.js";

export const keepsSeats = ({ block, setup }: CarModel): boolean =>
  setup !== undefined && block.statements.some(({ word }) => word === "keep-seats");
