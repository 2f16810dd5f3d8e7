/** What is offered in a half-typed line: `|` is the cursor. */
import { describe, expect, it } from "vitest";
import { createWorkspace } from "../../server/snapshot/create.js";
import { completeAt } from "../../server/views/completion/complete.js";

function offeredAt(marked: string): readonly string[] {
  const uri = "file:///a.crank";
  const workspace = createWorkspace({ read: () => ({ missing: "missing" }) });
  workspace.set(uri, marked.replace("|", ""));
  return completeAt(workspace.file(uri), marked.indexOf("|")).map(({ label }) => label);
}

const inAxle = (line: string): readonly string[] => offeredAt(`car lark {\n  axle front {\n    ${line}\n  }\n}\n`);

describe("completion", () => {
  it("offers one more mode behind `and`", () => {
    expect(inAxle("spring third for heave and |")).toEqual(["corner", "heave", "roll"]);
    expect(inAxle("spring third for heave and r|")).toContain("roll");
  });

  it("knows the block of a new line where its closing braces are still to come", () => {
    const open = "car lark {\n  axle front {\n    track 1480 mm\n    |";
    expect(offeredAt(open)).toContain("linkage");
    expect(offeredAt(open)).not.toContain("setup");
    expect(offeredAt("car lark {\n  wheelbase 2540 mm\n  |\n\ncar other {\n}\n")).toContain("axle");
    expect(offeredAt("car lark {\n  wheelbase 2540 mm\n}\n|")).toContain("setup");
  });

  it("offers a whole car first in an empty file, and while its first word is typed", () => {
    expect(offeredAt("|\n")[0]).toBe("Start a car here");
    expect(offeredAt("ca|")[0]).toBe("Start a car here");
    expect(offeredAt("let x = 1 mm\n|")).not.toContain("Start a car here");
  });
});
