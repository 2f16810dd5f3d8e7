/** Heave, pitch and roll alone where a person meets them: the hover of a car and of a case, and the lens. */
import { describe, expect, it } from "vitest";
import { showQuantity } from "../../server/quantities/index.js";
import { createWorkspace } from "../../server/snapshot/create.js";
import { hoverAt } from "../../server/views/hover.js";
import { lensesOf } from "../../server/views/lens.js";
import { motionLine } from "../../server/views/motion-lines.js";
import { quillParts, quillText } from "../support/quill.js";
import { number } from "../support/written-car.js";

function opened(text = quillText) {
  const workspace = createWorkspace({ read: () => ({ text: quillParts["parts.crank"] }) });
  workspace.set("memory:///quill.crank", text);
  const file = workspace.file("memory:///quill.crank");
  return { file, car: file.cars[0]!, hover: (at: string) => hoverAt(file, text.indexOf(at) + 1)?.markdown ?? "" };
}

describe("the body's motions alone", () => {
  const { file, car, hover } = opened();
  const heave = (at?: string): string => {
    const pure = car.ride.pure(at);
    if ("reason" in pure) throw new Error(pure.reason);
    return showQuantity(number(pure.heave.frequency), "Hz", 3);
  };

  it("stand in the hover of a car and of a case, which has its own", () => {
    expect(hover("car quill")).toContain(`heave ${heave()} (damping ratio 0.`);
    expect(hover("case top-speed")).toContain(`heave ${heave("top-speed")} (damping ratio 0.`);
    expect(motionLine(car, "top-speed")).not.toBe(motionLine(car, undefined));
  });

  it("stand in the lens", () => {
    expect(lensesOf(file)[0]?.title).toMatch(new RegExp(`heave ${heave()} at 0\\.\\d+ of critical, pitch .*, roll `));
  });

  it("say why there are none", () => {
    const without = opened(quillText.replace(/^ {2}roll-inertia .*$/m, ""));
    expect(without.hover("car quill")).toMatch(/No frequencies and damping ratios: .*roll-inertia/);
    expect(lensesOf(without.file)[0]?.title).not.toMatch(/critical/);
  });
});
