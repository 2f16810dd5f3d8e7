/**
 * An eye of a rocker lies where a rocker can hardly hold it: on its axis or so close that no bearing leaves room, absurdly
 * far from it, far along the axis from where the rod works it, or where another eye already is.
 *
 * On the axis nothing moves the eye, whatever is joined to it: a warning. The rest is information (common practice, no
 * published source): a lever below 8 mm or above 250 mm, more than 150 mm along the axis from the rod (a shaft with several
 * levers, which twists between them), two eyes nearer to each other than a pin is thick. Where two elements share a pin,
 * join both to one eye.
 *
 * ```crank wrong
 * use "axle.crank"
 *
 * setup on-axis from plover {
 *   front.rocker.eye spare (30, 190, 400) mm
 * }
 * ```
 *
 * ```crank right
 * use "axle.crank"
 *
 * setup on-lever from plover {
 *   front.rocker.eye spare (30, 160, 400) mm
 * }
 * ```
 */
import { cross, distance, dot, norm, sub, unit, type Vec3 } from "../../../maths/vec3.js";
import type { AxleModel } from "../../../model/car.js";
import type { Side } from "../../../model/origin.js";
import { showQuantity } from "../../../quantities/index.js";
import type { CheckedCar, RuleContext } from "../../context.js";
import { PIN, type PlacedEye, placedRocker, sameText, SHORTEST_LEVER } from "../../coupling/placed-rocker.js";
import type { Finding, Rule, Severity } from "../../finding.js";
import { lengthUnit } from "../../length-unit.js";
import { placeFor, standsInBase } from "../../where.js";

const meta = {
  id: "rocker-eye",
  title: "An eye where a rocker can hardly hold it",
  cost: "model",
  severity: "information",
} as const;

const ON_AXIS = 5e-4;
const LONG = 0.25;
const ALONG = 0.15;

export const rockerEye: Rule = { meta, check };

interface Doubt {
  readonly eye: string;
  readonly given: PlacedEye["given"];
  /** Tells doubts about one eye apart. */
  readonly kind: string;
  readonly severity: Severity;
  readonly message: string;
}

function* check(context: RuleContext): Generator<Finding> {
  for (const car of context.cars) {
    for (const axle of [car.model.axles.front, car.model.axles.rear]) {
      if (axle === undefined) continue;
      for (const doubt of doubtsOf(axle)) {
        if (standsInBase(car, (base) => hasSame(base, axle.name, doubt))) continue;
        yield findingOf(context, car, axle, doubt);
      }
    }
  }
}

function hasSame({ model }: CheckedCar, name: AxleModel["name"], doubt: Doubt): boolean {
  const axle = model.axles[name];
  return axle !== undefined && doubtsOf(axle).some(({ eye, kind }) => eye === doubt.eye && kind === doubt.kind);
}

function findingOf(
  context: RuleContext,
  car: CheckedCar,
  axle: AxleModel,
  { given, severity, message }: Doubt,
): Finding {
  const { start, end } = placeFor(context, car, { places: [given.origin, axle.nameOrigin], axle: axle.name });
  return {
    rule: meta.id,
    severity,
    uri: context.uri,
    span: { start, end },
    message,
    related: [],
    tags: [],
    data: undefined,
  };
}

/** Of the left rocker, and of what is written for the right one alone. */
function doubtsOf(axle: AxleModel): readonly Doubt[] {
  const left = placedRocker(axle, "left")?.eyes;
  return (["left", "right"] as const).flatMap((side) => {
    const rocker = placedRocker(axle, side);
    if (rocker === undefined || !(norm(rocker.axis) > 0)) return [];
    const eyes = [...rocker.eyes];
    return eyes.flatMap(([name, eye], index) => {
      if (side === "right" && sameText(eye, left?.get(name))) return [];
      const others = eyes.slice(0, index);
      return [...leverDoubts(axle, side, name, eye, rocker), ...twinDoubts(axle, name, eye, others)];
    });
  });
}

/** Where the push or pull rod works the rocker; undefined without one. */
function rodEnd(axle: AxleModel, side: Side): Vec3 | undefined {
  const corner = axle.corner[side];
  return corner.kind === "hardpoints" ? corner.rod?.inner.value : undefined;
}

function leverDoubts(
  axle: AxleModel,
  side: Side,
  eye: string,
  { given, point }: PlacedEye,
  { pivot, axis }: { readonly pivot: Vec3; readonly axis: Vec3 },
): readonly Doubt[] {
  const along = unit(axis);
  const lever = norm(cross(along, sub(point, pivot)));
  const rod = rodEnd(axle, side);
  const off = rod === undefined ? 0 : Math.abs(dot(along, sub(point, rod)));
  const shown = (metres: number): string => showQuantity(metres, given.unit || lengthUnit(axle), 3);
  const practice = "(common practice, no published source)";
  const doubt = (kind: string, message: string, severity: Severity = "information"): readonly Doubt[] => [
    { eye, given, kind, severity, message },
  ];
  if (lever < ON_AXIS) {
    return doubt(
      "axis",
      `Eye ${eye} lies on the rocker's axis, so that the rocker turning does not move it. Move it off the axis.`,
      "warning",
    );
  }
  if (lever < SHORTEST_LEVER) {
    return doubt(
      "short",
      `Eye ${eye} is only ${shown(lever)} from the rocker's axis, where its bearing is: below ${shown(SHORTEST_LEVER)} there is hardly room for a pin ${practice}. Check the point.`,
    );
  }
  if (lever > LONG) {
    return doubt(
      "long",
      `Eye ${eye} is ${shown(lever)} from the rocker's axis; rockers reach to ${shown(LONG)} at most ${practice}. Check the point and its unit.`,
    );
  }
  if (off > ALONG) {
    return doubt(
      "along",
      `Eye ${eye} is ${shown(off)} along the axis from where the rod works the rocker; beyond ${shown(ALONG)} that is a shaft which twists ${practice}. Check the point, or count the shaft in.`,
    );
  }
  return [];
}

/** Eyes that are drawn in one plane may be apart across it: nothing is said of those. */
function twinDoubts(
  { corner }: AxleModel,
  eye: string,
  { given, point }: PlacedEye,
  others: readonly (readonly [string, PlacedEye])[],
): readonly Doubt[] {
  if (corner.left.kind !== "hardpoints" || corner.right.kind !== "hardpoints") return [];
  const twin = others.find(([, other]) => distance(point, other.point) < PIN);
  if (twin === undefined) return [];
  const apart = showQuantity(distance(point, twin[1].point), given.unit, 2);
  const message = `Eyes ${twin[0]} and ${eye} are ${apart} apart, nearer than a pin is thick (common practice, no published source). Where both elements share a pin, join them to one eye; else move one of them.`;
  return [{ eye, given, kind: `twin of ${twin[0]}`, severity: "information", message }];
}
