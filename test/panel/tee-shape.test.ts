/** The cross arm of a drawn T-shaped bar keeps its shape, and its drop links their lengths, wherever the wheels are. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { distance } from "../../client/panel/page/geometry.js";
import { AT_REST, type Pose } from "../../client/panel/page/pose.js";
import { posedCar } from "../../client/panel/page/scene.js";
import { teeShape, type TeeShape } from "../../client/panel/page/tee-shape.js";
import type { PanelTee } from "../../server/lsp/protocol-panel.js";
import { answerFor, sampleFile } from "../support/panel-page.js";
import { PANEL_READ } from "../support/tolerances.js";

const samples = ["dunlin/dunlin.crank", "systems/tee-bar.crank"];

function shapeAt(sample: string, pose: Pose): TeeShape {
  const { car } = answerFor(sampleFile(sample));
  const axle = car!.axles.find(({ elements }) => elements.some(({ drawn }) => drawn[0]?.kind === "tee"))!;
  const tee = axle.elements.flatMap(({ drawn }) => drawn).find((drawn): drawn is PanelTee => drawn.kind === "tee")!;
  return teeShape(tee, posedCar(car!, [axle], pose, axle.name))!;
}

const lengthsOf = ({ foot, arm, links }: TeeShape): readonly number[] => [
  distance(...arm),
  ...arm.map((end) => distance(foot, end)),
  ...links.map((link) => distance(...link)),
];

describe("a drawn T-shaped bar", () => {
  it.each(samples)("keeps its lengths in every pose of %s", (sample) => {
    const drawn = lengthsOf(shapeAt(sample, AT_REST));
    expect(drawn.length).toBe(5);
    const part = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(part, part, (heave, roll) => {
        const now = lengthsOf(shapeAt(sample, { ...AT_REST, heave: 0.012 * heave, roll: 0.009 * roll }));
        const misses = now.map((length, i) => Math.abs(length - (drawn[i] ?? 0)));
        expect(Math.max(...misses)).toBeLessThan(2 * PANEL_READ);
      }),
      { numRuns: 25 },
    );
  });

  it("swings with both wheels and turns where they part", () => {
    const tilt = ({ arm: [l, r] }: TeeShape): number => Math.hypot(l[0] - r[0], l[2] - r[2]);
    const [rest, heave, roll] = [AT_REST, { ...AT_REST, heave: 0.012 }, { ...AT_REST, roll: 0.009 }].map((pose) =>
      shapeAt("dunlin/dunlin.crank", pose),
    );
    expect(tilt(heave!) - tilt(rest!)).toBeCloseTo(0, 4);
    expect(distance(heave!.head, rest!.head)).toBeGreaterThan(1e-3);
    expect(tilt(roll!)).toBeGreaterThan(1e-3);
  });

  it("stands still where its drop links are off", () => {
    const off = shapeAt("dunlin/november.crank", { ...AT_REST, heave: 0.01 });
    expect(off.links).toEqual([]);
    expect(off.arm).toEqual(shapeAt("dunlin/november.crank", AT_REST).arm);
  });
});
