/** The hover of camber and toe counts what sets them. */
import { describe, expect, it } from "vitest";
import { createWorkspace } from "../../server/snapshot/create.js";
import { hoverAt } from "../../server/views/hover.js";
import { carText } from "../support/written-car.js";

const car = carText({})
  .replace("camber -1 deg", "camber -1 deg { shim 0.2 deg per 1 mm }")
  .replace("outer (112, 712, 190) mm", "outer (112, 712, 190) mm, thread 1.5 mm/turn");

function hover(lines: string, at: string): string {
  const text = `${car}\nsetup trial from tried {\n  ${lines}\n}\n`;
  const workspace = createWorkspace({ read: () => ({ missing: "missing" }) });
  workspace.set("file:///car.crank", text);
  return hoverAt(workspace.file("file:///car.crank"), text.lastIndexOf(at) + 1)?.markdown ?? "";
}

describe("the hover of an angle", () => {
  it("counts shims from the drawn to the wanted camber", () => {
    const shown = hover("front.camber -1.5 deg", "front.camber");
    expect(shown).toContain("**front.camber** · at rest -1.5 deg");
    expect(shown).toContain("-0.5 deg from the drawn -1 deg: 2.5 shims of 1 mm taken out");
    expect(hover("front.camber -0.8 deg", "front.camber")).toContain("1 shim of 1 mm added");
  });

  it("counts turns of the track rod for toe, by the linkage, and says what they do to camber", () => {
    // About 0.1 m of arm: 0.3 degrees of toe-in are a rod half a millimetre shorter.
    const shown = hover("front.left.toe 0.5 deg", "front.left.toe");
    expect(shown).toMatch(
      /\+0\.3 deg from the drawn 0\.2 deg: track rod 0\.5\d* mm shorter \(0\.3\d* turns\), which changes camber by/,
    );
    expect(shown).toContain("**front.left.toe**");
  });

  it("says so where the angle is as drawn", () => {
    expect(hover("front.left.toe 0.5 deg", "camber -1 deg")).toContain("as drawn");
  });
});
