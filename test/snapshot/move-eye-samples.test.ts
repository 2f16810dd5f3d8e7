/** Every eye of every sample dragged a little: what is shown meanwhile is what the changed text then gives, and no more is changed. */
import { describe, expect, it } from "vitest";
import { type EyeMove, moveEye, onWrittenSide } from "../../server/snapshot/move-eye.js";
import type { Vec3 } from "../../server/maths/vec3.js";
import type { PanelAxle } from "../../server/views/mechanism/data.js";
import { edited } from "../lsp/club.js";
import { answerFor, sampleFile } from "../support/panel-page.js";
import { sampleNames } from "../support/samples.js";

const SIDES = ["left", "right"] as const;
/** Off the rocker's plane, whichever way its axis points. */
const BY: Vec3 = [0.0013, 0.0017, -0.0011];

const eyesOf = (name: string, axle: PanelAxle): readonly EyeMove[] =>
  SIDES.flatMap((side) => {
    const corner = axle[side];
    const design = corner.steers.indexOf(0) * corner.travels.length + corner.travels.indexOf(0);
    return corner.points
      .filter(({ role }) => role === "eye")
      .map(({ id, at }): EyeMove => {
        const from = at.length === 3 ? 0 : 3 * design;
        const to = BY.map((by, i) => (at[from + i] ?? 0) + by) as unknown as Vec3;
        return { name, axle: axle.name, side, point: id, to };
      });
  });

/** What the page draws by: ids and places, lines and elements with their figures; where in the text it stands is another matter. */
const drawn = (axle: PanelAxle | undefined) =>
  axle && {
    figures: axle.figures,
    sides: SIDES.map((side) => ({
      ...axle[side],
      points: axle[side].points.map(({ id, role, at }) => ({ id, role, at })),
    })),
    elements: axle.elements.map((element) => ({ ...element, place: undefined })),
  };

describe("a dragged eye", () => {
  it.each(sampleNames)("is shown as the text of %s then has it", (sample) => {
    const file = sampleFile(sample);
    const { car } = answerFor(file);
    const moves = (car?.axles ?? []).flatMap((axle) => eyesOf(car!.name, axle));
    // Every third, beginning with the first: the check is the same for all.
    for (const asked of moves.filter((_, i) => i % 3 === 0)) {
      const moved = moveEye(file, onWrittenSide(file, asked));
      if (moved.edit === undefined) {
        expect(moved.reason).toMatch(/\.$/);
        continue;
      }
      const text = edited(file.text, [moved.edit]);
      const after = sampleFile(sample, () => text);
      const then = answerFor(after, asked.name).car?.axles.find(({ name }) => name === asked.axle);
      expect(drawn(moved.axle)).toEqual(drawn(then));
      expect(after.problems.length).toBe(file.problems.length);
      expect(Math.abs(text.split("\n").length - file.text.split("\n").length)).toBeLessThanOrEqual(2);
    }
  });
});
