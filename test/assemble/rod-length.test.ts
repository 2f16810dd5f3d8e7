/** A rod that is set longer or shorter: the rocker is solved again, and everything on it follows. */
import { describe, expect, it } from "vitest";
import { distance, type Vec3 } from "../../server/maths/vec3.js";
import type { AxleMechanism } from "../../server/elements/mechanism.js";
import type { Corner, CornerMotion } from "../../server/linkage/corner.js";
import {
  carText,
  cornerSpring,
  elementIn,
  frontOf,
  mechanismOf,
  number,
  wishboneLinkage,
} from "../support/written-car.js";

const rods = (left: string, right = left): string =>
  wishboneLinkage.replace("inner (-2, 333, 519) mm", `inner (-2, 333, 519) mm, longer ${left}`) +
  (left === right ? "" : `\n    right { push-rod.longer ${right} }`);

const elements = `${cornerSpring}
    spring third for heave {
      rate 50 N/mm
      between left.rocker.third and right.rocker.third
    }
    damper diagonal for roll {
      damping 3 N*s/mm
      between left.rocker.high and right.rocker.low
    }
    spring tied for heave {
      rate 30 N*m/deg
      twists left.rocker against right.rocker
      tie { arm (-10, 283, 400) mm }
    }
    anti-roll-bar bar for roll {
      torsion-bar { diameter 24 mm, bore 18 mm, length 420 mm }
      lever { pivot (-110, 346, 300) mm, axis (0, 1, 0), end (-25, 346, 295) mm }
      drop-link rocker.bar
    }
    anti-roll-bar tee for roll {
      tee { foot (-300, 0, 300) mm, head (-100, 0, 300) mm, end (-100, 330, 300) mm }
      torsion-bar { diameter 24 mm, length 200 mm }
      drop-link rocker.bar
    }`;

const at = (corner: Corner, travel: number): CornerMotion => {
  const motion = corner.motion(travel);
  if ("kind" in motion) throw new Error("not reached");
  return motion;
};

/** The travel at which the rocker stands as it is drawn; the angle rises with the travel. */
function asDrawn(corner: Corner): number {
  let [low, high] = [-0.02, 0.02];
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if ((at(corner, middle).rocker?.value ?? Number.NaN) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const deflections = ({ elements: all }: AxleMechanism, left: CornerMotion, right: CornerMotion) =>
  new Map(
    all.map(({ path, connection }) => {
      const d = connection?.deflection({ left, right });
      if (d === undefined || "kind" in d) throw new Error(`${path} has no deflection`);
      return [path, d.s] as const;
    }),
  );

const outer: Vec3 = [0.005, 0.64, 0.175];
const inner: Vec3 = [-0.002, 0.333, 0.519];

describe("a rod that is set longer than drawn", () => {
  it.each([1.25, -1.25, 4])("is longer by %d mm at every travel", (mm) => {
    const { corners } = mechanismOf(carText({ linkage: rods(`${mm} mm`) }));
    for (const travel of [-0.02, 0, 0.02]) {
      const motion = at(corners.left, travel);
      const length = distance(motion.point("lower-wishbone", outer).p, motion.point("rocker", inner).p);
      expect(length - distance(outer, inner)).toBeCloseTo(mm / 1000, 12);
    }
  });

  it("leaves the wheel where it is, and works the spring as its motion ratio says", () => {
    const drawn = mechanismOf(carText({}));
    const set = mechanismOf(carText({ linkage: rods("0.01 mm") }));
    const centre = ({ corners }: AxleMechanism) => at(corners.left, 0).point("upright", [0, 0.78, 0.32]).p;
    expect(distance(centre(set), centre(drawn))).toBeLessThan(1e-15);
    const [one, other] = [drawn, set].map((mechanism) => {
      const { left, right } = mechanism.corners;
      return deflections(mechanism, at(left, 0), at(right, 0)).get("front.left.side") ?? Number.NaN;
    });
    // By virtual work: the spring's share of rod length is its motion ratio over the rod's own, both by the wheel.
    const motion = (z: number) => at(drawn.corners.left, z);
    const h = 1e-5;
    const rod = (z: number) => distance(motion(z).point("lower-wishbone", outer).p, motion(0).point("rocker", inner).p);
    const spring = (z: number) => deflections(drawn, motion(z), motion(0)).get("front.left.side") ?? Number.NaN;
    const ratio = (spring(h) - spring(-h)) / (rod(-h) - rod(h));
    expect(((other ?? 0) - (one ?? 0)) / 1e-5 / ratio).toBeCloseTo(1, 3);
  });

  it("turns what hangs on the rockers alone back to its drawn place where the rockers are", () => {
    const mechanism = mechanismOf(carText({ elements, linkage: rods("3 mm", "-2 mm") }));
    const { left, right } = mechanism.corners;
    const [atLeft, atRight] = [at(left, asDrawn(left)), at(right, asDrawn(right))];
    const all = deflections(mechanism, atLeft, atRight);
    const names = ["third", "diagonal", "tied", "bar", "tee"];
    const moved = names.filter((name) => !(Math.abs(all.get(`front.${name}`) ?? Number.NaN) < 1e-12));
    expect(moved).toEqual([]);
  });

  it("on one side only twists the bar at rest", () => {
    const mechanism = mechanismOf(carText({ elements, linkage: rods("1 mm", "0 mm") }));
    const { left, right } = mechanism.corners;
    const twist = deflections(mechanism, at(left, 0), at(right, 0)).get("front.bar") ?? 0;
    expect(Math.abs(twist)).toBeGreaterThan(1e-3);
  });

  it("changes the figures, and alike on both sides", () => {
    const drawn = frontOf(carText({ elements }));
    const set = frontOf(carText({ elements, linkage: rods("4 mm") }));
    const ratio = (analysis: typeof drawn, side: string) =>
      number(elementIn(analysis, `front.${side}.side`).motionRatio);
    expect(ratio(set, "left")).not.toBeCloseTo(ratio(drawn, "left"), 4);
    expect(ratio(set, "left")).toBeCloseTo(ratio(set, "right"), 12);
  });

  it("and does not reach, says so by how much it is set", () => {
    const { problems, cornerMissing } = mechanismOf(carText({ linkage: rods("500 mm") }));
    const why = "the push-rod is set 500 mm longer than drawn, and so the rocker does not reach it";
    expect(cornerMissing.left).toBe(why);
    expect(problems[0]).toMatchObject({ kind: "linkage", reason: why });
  });
});
