/**
 * A driver, fuel or ballast line puts its mass where the car is not: below the ground, wider than the wheels, or further
 * than half a wheelbase ahead of the front or behind the rear wheels. It is computed with all the same.
 *
 * Most often x is written without its minus (x points forward, and the front axle is usually at 0), or a digit slipped.
 *
 * ```crank wrong
 * use "shared.crank"
 *
 * setup wet from wren {
 *   ballast floor { mass 6 kg, centre (-1200, 0, -400) mm }
 * }
 * ```
 *
 * ```crank right
 * use "shared.crank"
 *
 * setup wet from wren {
 *   ballast floor { mass 6 kg, centre (-1200, 0, 40) mm }
 * }
 * ```
 */
import { massDataOf, massStatements } from "../../../assemble/masses.js";
import { statementOf } from "../../../assemble/reading.js";
import type { CarModel, ResolvedStatement } from "../../../model/car.js";
import { showQuantity } from "../../../quantities/index.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import type { Finding, Rule } from "../../finding.js";
import { placeFor, standsInBase } from "../../where.js";

const meta = {
  id: "mass-outside",
  title: "A mass lies outside the car",
  cost: "model",
  severity: "warning",
} as const;

export const massOutside: Rule = { meta, check };

interface Outside {
  readonly line: ResolvedStatement;
  readonly name: string;
  readonly origin: ResolvedStatement["origin"];
  /** "400 mm below the plane z = 0, under the ground" */
  readonly words: string;
}

function outsideIn(model: CarModel): readonly Outside[] {
  const bounds = boundsOf(model);
  return massStatements(model).flatMap((line) => {
    const [centre] = statementOf(line.block, "centre")?.values ?? [];
    if (centre?.kind !== "point") return [];
    const [x = 0, y = 0, z = 0] = centre.value;
    const words = wordsFor({ x, y, z }, bounds, centre.unit);
    return words === undefined ? [] : [{ line, name: line.name?.text ?? line.word, origin: centre.origin, words }];
  });
}

interface Bounds {
  readonly front: number | undefined;
  readonly rear: number | undefined;
  /** Half of the wider track. */
  readonly half: number;
  /** Height of the plane z = 0 above the ground. */
  readonly height: number;
}

function boundsOf(model: CarModel): Bounds {
  const { axles, wheelbase } = massDataOf(model);
  const reach = (wheelbase ?? Infinity) / 2;
  const ahead = axles.front?.wheels.left.centre?.[0];
  const behind =
    axles.rear?.wheels.left.centre?.[0] ?? (ahead === undefined ? undefined : ahead - (wheelbase ?? Infinity));
  const tracks = [model.axles.front?.track?.value, model.axles.rear?.track?.value].filter(
    (track) => track !== undefined,
  );
  return {
    front: ahead === undefined ? undefined : ahead + reach,
    rear: behind === undefined ? undefined : behind - reach,
    half: tracks.length === 0 ? Infinity : Math.max(...tracks) / 2,
    height: Math.max(axles.front?.drawnRideHeight ?? 0, axles.rear?.drawnRideHeight ?? 0),
  };
}

function wordsFor(
  { x, y, z }: { readonly x: number; readonly y: number; readonly z: number },
  { front, rear, half, height }: Bounds,
  unit: string,
): string | undefined {
  const shown = (length: number): string => showQuantity(length, unit, 4);
  if (z < -height) return `${shown(-z - height)} under the ground`;
  if (Math.abs(y) > half) return `${shown(Math.abs(y) - half)} further out than the wheels' contact`;
  if (front !== undefined && x > front) return `${shown(x - front)} beyond half a wheelbase ahead of the front wheels`;
  if (rear !== undefined && x < rear) return `${shown(rear - x)} beyond half a wheelbase behind the rear wheels`;
  return undefined;
}

const isIn = ({ model }: CheckedCar, { line }: Outside): boolean =>
  outsideIn(model).some((one) => one.line === line || one.line.origin.start === line.origin.start);

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    for (const outside of outsideIn(car.model)) {
      if (standsInBase(car, (base) => isIn(base, outside))) continue;
      const { origin, line, name, words } = outside;
      const place = placeFor(context, car, { places: [origin, line.wordOrigin] });
      yield {
        rule: meta.id,
        severity: meta.severity,
        uri: context.uri,
        span: { start: place.start, end: place.end },
        message: `${name} lies outside the car, ${words}; it is added to the masses there all the same. Correct its centre: x points forward, y left, z up.`,
        related: [],
        tags: [],
        data: undefined,
      };
    }
  }
}
