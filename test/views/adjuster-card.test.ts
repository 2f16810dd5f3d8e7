/** Hover on a line that sets the length of a rod or a drop link says by how much. */
import { describe, expect, it } from "vitest";
import { createWorkspace } from "../../server/snapshot/create.js";
import { hoverAt } from "../../server/views/hover.js";
import { setupWith, sharedCar } from "../support/shared-car.js";

const folder = "memory:///club/";

function hover(lines: readonly string[], at: string): string {
  const workspace = createWorkspace({
    read: (uri) => {
      const text = sharedCar[uri.slice(folder.length)];
      return text === undefined ? { missing: "missing" } : { text };
    },
  });
  const text = setupWith(...lines);
  workspace.set(`${folder}wet.crank`, text);
  return hoverAt(workspace.file(`${folder}wet.crank`), text.lastIndexOf(at) + 1)?.markdown ?? "";
}

describe("hover on an adjuster", () => {
  it.each([
    [
      "front.push-rod by -1 turn",
      "push-rod",
      "**front.push-rod** · set 1.25 mm shorter than drawn (1 turn of 1.25 mm/turn)",
    ],
    [
      "front.push-rod by +0.05 in",
      "by",
      "**front.push-rod** · set 0.05 in longer than drawn (1.016 turns of 1.25 mm/turn)",
    ],
    [
      "front.right.push-rod by +0.5 turn",
      "push-rod",
      "**front.right.push-rod** · set 0.625 mm longer than drawn (0.5 turns of 1.25 mm/turn)",
    ],
    [
      "front.push-rod.longer 2 mm",
      "longer",
      "**front.push-rod** · set 2 mm longer than drawn (1.6 turns of 1.25 mm/turn)",
    ],
    ["front.bar.drop-link by 1 mm", "drop-link", "**front.bar.drop-link** · set 1 mm longer than drawn"],
  ])("%s: at %s", (line, at, words) => {
    expect(hover([line], at)).toContain(words);
  });

  it("tells the sum of several lines at the last, with what it adds to", () => {
    const card = hover(["front.push-rod by 2 turn", "front.push-rod by -1 turn"], "push-rod");
    expect(card).toContain("set 1.25 mm longer than drawn (1 turn of");
    expect(card).toMatch(/Replaces, oldest first:\n- `.*2 turn` in wet\.crank, line 4/);
  });

  it("tells each side by itself where one line leaves them unlike", () => {
    const card = hover(["front.left.push-rod by 1 turn", "front.push-rod by -1 turn"], "push-rod");
    expect(card).toContain("**front.left.push-rod** · as long as drawn");
    expect(card).toContain("**front.right.push-rod** · set 1.25 mm shorter than drawn");
  });
});
