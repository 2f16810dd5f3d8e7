/** What the editor says of a kerb under the pointer. */
import { describe, expect, it } from "vitest";
import { createWorkspace } from "../../server/snapshot/create.js";
import { hoverAt } from "../../server/views/hover.js";
import { readFileSync } from "node:fs";

const kerb = "  kerb wave { height 10 mm, length 3000 mm, shape versed-sine, speed 60 km/h, after 0.1 s }\n";

function opened(lines: string) {
  const text = `use "quill/quill.crank"\n\nsetup over from quill {\n${lines}}\n`;
  const workspace = createWorkspace({
    read: (uri) => {
      const found = /club\/(.*)$/u.exec(uri)?.[1];
      return found === undefined
        ? { missing: "missing" }
        : { text: readFileSync(new URL(`../../samples/${found}`, import.meta.url), "utf8") };
    },
  });
  workspace.set("file:///club/over.crank", text);
  return { text, file: workspace.file("file:///club/over.crank") };
}

function hover(lines: string, at: string): string {
  const { text, file } = opened(lines);
  return hoverAt(file, text.lastIndexOf(at) + 1)?.markdown ?? "";
}

describe("the hover of a kerb", () => {
  it("tells its figures with the cautions", () => {
    const said = hover(kerb, "kerb wave");
    expect(said).toContain("wave: 10 mm high, 3000 mm long (versed-sine)");
    expect(said).toMatch(/\| front left \| [\d.]+ N \| [\d.]+ to [\d.]+ N \|/u);
    expect(said).toContain("competent person");
    expect(said).toContain("No stop is met.");
    expect(said).not.toContain("| front.third |");
  });

  it("tells which stops are met, for how long and how hard", () => {
    const stop =
      "  axle front {\n    bump-stop end for heave { rate 200 N/mm, gap 1 mm, between left.rocker.third and right.rocker.third }\n  }\n";
    expect(hover(stop + kerb.replace("height 10 mm", "height 30 mm"), "kerb wave")).toMatch(
      /On its stop: front\.end for [\d.]+ ms, at most [\d.]+ N\. Forces/,
    );
  });

  it("tells why there are none", () => {
    expect(hover("  kerb slow { height 10 mm, length 300 mm }\n", "kerb slow")).toContain("has no speed");
  });
});

describe("the case of a kerb", () => {
  const named = (name: string) =>
    opened(`  kerb k { height 10 mm, length 300 mm, speed 60 km/h, case ${name} }\n`)
      .file.findings()
      .filter(({ message }) => message.includes(name));

  it("is looked up where it is written", () => {
    expect(named("hairpin")).toEqual([]);
    expect(named("nowhere")).toHaveLength(1);
  });
});
