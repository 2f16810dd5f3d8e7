/** Hovers of trim, ride height and kept seats. */
import { describe, expect, it } from "vitest";
import { createWorkspace } from "../../server/snapshot/create.js";
import { hoverAt } from "../../server/views/hover.js";
import { twoAxles } from "../support/two-axles.js";

const car = twoAxles("").replaceAll("ride-height 30 mm", "ride-height 30 mm { thread 1.5 mm/turn }");
const rods = twoAxles("")
  .replaceAll("ride-height 30 mm", "ride-height 30 mm\n    trim by push-rod")
  .replaceAll("inner (-2, 333, 519) mm }", "inner (-2, 333, 519) mm, thread 1.25 mm/turn }")
  .replaceAll("rate 150 N/mm", "rate 150 N/mm\n      preload 2000 N");

function hover(text: string, at: string): string {
  const workspace = createWorkspace({ read: () => ({ missing: "missing" }) });
  workspace.set("file:///car.crank", text);
  return hoverAt(workspace.file("file:///car.crank"), text.lastIndexOf(at) + 1)?.markdown ?? "";
}

const setup = (base: string, lines: string): string => `${base}\nsetup trial from tried {\n  ${lines}\n}\n`;

describe("the hover of how a car is set", () => {
  it("tells the seats' movement and load at the car's ride height", () => {
    expect(hover(car, "ride-height 30 mm")).toMatch(/\| front\.left\.side \| 13\.\d+ mm \| 19\d\d N \|/);
  });

  it("tells turns for what a set-up changes: two millimetres of ride height are four thirds of a turn, nearly", () => {
    const shown = hover(setup(car, "front.ride-height by +2 mm"), "front.ride-height");
    // The thread counts ride height; the spring is also pressed a little more, since its motion ratio falls on the way.
    const turns = Number(/\+([\d.]+) turn \|/.exec(shown)?.[1]);
    expect(turns).toBeGreaterThan(4 / 3);
    expect(turns).toBeLessThan(1.4);
  });

  it("tells rods by their thread", () => {
    const shown = hover(rods, "ride-height 30 mm");
    expect(shown).toMatch(/\| front\.left\.push-rod \| -?[\d.]+ mm \| {2}\| [-+][\d.]+ mm \| [-+][\d.]+ turn \|/);
  });

  it("tells what follows on kept seats", () => {
    const lines = "keep-seats\n  ballast pod { mass 20 kg, centre (-400, 500, 50) mm }";
    const shown = hover(setup(car, lines), "keep-seats");
    expect(shown).toMatch(/\| front ride height \| 30 mm \| 2[89]\.\d+ mm \|/);
    expect(shown).toMatch(/\| front left camber \| -1 deg \| -1\.\d+ deg \|/);
    expect(shown).toMatch(/\| cross weight, front right with rear left \| 50 % \| 50 % \|/);
  });
});
