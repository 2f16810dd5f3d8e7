/** What stands above the figures of a car or set-up. */
import type { CarModel } from "../model/car.js";

export const titleOf = ({ name, title, setup, bases }: CarModel): string =>
  setup === undefined ? (title ?? name) : `${setup}, from ${bases.join(" from ")}`;
