/** Kerb strikes for machines: JSON, whose form is described by `schema/kerb.json`, and the course of it as CSV. */
import type { CheckedCar } from "../../findings/context.js";
import { fromSI } from "../../quantities/index.js";
import { cautions } from "../../views/cautions.js";
import { isAbsent } from "../../views/figures.js";
import { type KerbFound, kerbRows } from "../../views/kerb-page.js";
import { unitsOfCar } from "../../views/units-of-car.js";
import { csv } from "./csv.js";
import { absence, json, quantity, rounded } from "./json.js";

export function kerbJson({ model }: CheckedCar, found: readonly KerbFound[]): string {
  const unit = unitsOfCar(model);
  return json({
    car: model.name,
    setup: model.setup ?? null,
    kerbs: found.map(([name, strike]) => ({
      kerb: name,
      ...(isAbsent(strike)
        ? absence(strike)
        : {
            case: strike.case ?? null,
            speed: quantity(strike.kerb.speed, unit("speed")),
            duration: quantity(strike.figures.duration, "s"),
            figures: kerbRows(strike.figures, unit).map(({ subject, name: figure, value, unit: shown }) => ({
              of: subject,
              figure,
              value: quantity(value, shown),
            })),
          }),
    })),
    cautions,
  });
}

const WHEELS = ["FL", "FR", "RL", "RR"];

/** One row for each moment; a kerb that cannot be passed has none, and the text form says why. */
export function kerbCsv({ model }: CheckedCar, found: readonly KerbFound[]): string {
  const unit = unitsOfCar(model);
  const [length, force] = [unit("length"), unit("force")];
  const head = [
    "kerb",
    "time s",
    ...WHEELS.map((wheel) => `road ${wheel} ${length}`),
    ...WHEELS.map((wheel) => `travel ${wheel} ${length}`),
    ...WHEELS.map((wheel) => `tyre load ${wheel} ${force}`),
    `front ride height ${length}`,
    `rear ride height ${length}`,
    "roll deg",
    "pitch deg",
  ];
  const rows = found.flatMap(([name, strike]) =>
    isAbsent(strike)
      ? []
      : strike.moments.map(({ t, x, road, state: { balance } }) => [
          name,
          rounded(t),
          ...road.heights.map((height) => shown(height, length)),
          ...x.slice(3, 7).map((travel) => shown(travel, length)),
          ...balance.wheels.map(({ load }) => shown(load, force)),
          ...balance.heights.map((height) => shown(height, length)),
          ...x.slice(1, 3).map((angle) => shown(angle, "deg")),
        ]),
  );
  return csv([head, ...rows]);
}

const shown = (value: number, unit: string): number => rounded(fromSI(value, unit) ?? value);
