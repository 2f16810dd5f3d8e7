/** The unit of length in which the author speaks of an axle. */
import type { AxleModel } from "../model/car.js";

export const lengthUnit = ({ travel, track, rideHeight }: AxleModel): string =>
  travel.given?.unit ?? track?.unit ?? rideHeight?.unit ?? "mm";
