import { describe, expect, it } from "vitest";
import { type EyeMove, moveEye, onWrittenSide } from "../../server/snapshot/move-eye.js";
import { sampleFile } from "../support/panel-page.js";

const QUILL = "quill/quill.crank";
const asked: EyeMove = {
  name: "quill",
  axle: "front",
  side: "left",
  point: "rocker.roll-low",
  to: [0.045, 0.175, 0.35623],
};

const leakOf = (move: ReturnType<typeof moveEye>): string | undefined =>
  move.axle?.elements.find(({ name }) => name === "roll-damper")?.leak?.text;

describe("moving an eye for the panel", () => {
  it("writes its new place to a tenth of a millimetre, where it is written now", () => {
    const moved = moveEye(sampleFile(QUILL), asked);
    expect(moved.edit?.newText).toBe("(45, 175, 356.2) mm");
    const line = sampleFile(QUILL).text.split("\n")[moved.edit?.range.start.line ?? 0] ?? "";
    expect(line.slice(moved.edit!.range.start.character, moved.edit!.range.end.character)).toBe("(45, 175, 348) mm");
  });
  it("says what the axle would then be: the same as the changed text is", () => {
    const moved = moveEye(sampleFile(QUILL), asked);
    const typed = moveEye(
      sampleFile(QUILL, (text) => text.replace("(45, 175, 348)", "(45, 175, 356.2)")),
      asked,
    );
    expect(leakOf(moved)).toMatch(/% in heave/);
    expect(leakOf(moved)).toBe(leakOf(typed));
    expect(moved.axle?.figures).toEqual(typed.axle?.figures);
  });
  it("keeps the eye in the plane across its rocker's axis", () => {
    expect(moveEye(sampleFile(QUILL), { ...asked, to: [0.2, 0.18, 0.35] }).at).toEqual([0.045, 0.18, 0.35]);
  });
  it("writes the left eye where the right one is its mirror image", () => {
    const file = sampleFile(QUILL);
    const right: EyeMove = { ...asked, side: "right", to: [0.045, -0.18, 0.35] };
    expect(moveEye(file, onWrittenSide(file, right)).edit?.newText).toBe("(45, 180, 350) mm");
  });
  it("moves an inherited eye by a line of the set-up", () => {
    const file = sampleFile("quill/wet.crank");
    const name = file.cars[0]!.model.setup!;
    const moved = moveEye(file, { ...asked, name });
    expect(moved.edit?.uri).toBe(file.uri);
    expect(moved.edit?.newText).toContain("front.rocker.roll-low (45, 175, 356.2) mm");
  });
  it("leaves a name or a sum alone, and says so", () => {
    const file = sampleFile(QUILL, (text) =>
      text.replace("car quill", "let low = 348 mm\n\ncar quill").replace("(45, 175, 348) mm", "(45 mm, 175 mm, low)"),
    );
    expect(moveEye(file, asked)).toMatchObject({ edit: undefined, reason: expect.stringMatching(/name or a sum/) });
  });
  it("answers an eye that is no more with a reason", () => {
    expect(moveEye(sampleFile(QUILL), { ...asked, point: "rocker.none" }).reason).toMatch(/no such eye/);
  });
});
