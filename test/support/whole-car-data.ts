/** Whole cars with their eigenvalues and road response from SciPy: `test/oracle/whole_car.py`. */
import { readFileSync } from "node:fs";
import type { WholeCar } from "../../server/analyses/whole-car/car-data.js";
import type { Sides } from "../../server/analyses/whole-car/road-profile.js";

interface WholeCarData {
  readonly cars: readonly {
    readonly car: WholeCar;
    readonly eigenvalues: readonly (readonly [number, number])[];
    /** Hz; where stiffness is symmetric. */
    readonly undamped: readonly number[] | null;
    readonly road: { readonly roughness: number; readonly speed: number; readonly sides: Sides };
    /** Tyre loads, travels, travel speeds, heights, body accelerations. */
    readonly rms: readonly number[];
  }[];
  readonly timesK1: readonly (readonly [number, number])[];
}

export const wholeCarData = JSON.parse(
  readFileSync(new URL("../data/whole-cars.json", import.meta.url), "utf8"),
) as WholeCarData;
