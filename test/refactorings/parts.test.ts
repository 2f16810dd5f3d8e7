/** What an element says of its part goes to a catalogue, and comes back. */
import { describe, expect, it } from "vitest";
import { inlinePart } from "../../server/refactorings/part-inline.js";
import { partToCatalogue } from "../../server/refactorings/part-to-catalogue.js";
import { samples } from "../support/samples.js";
import { cornerSpring, carText } from "../support/written-car.js";
import { commentsOf, cursorAt, cursorIn, faultsOf, outcomeOf } from "./refactored.js";

const crankSamples = Object.entries(samples).filter(([name]) => name.endsWith(".crank"));

const moved = (files: Record<string, string>, name: string, marker: string) =>
  partToCatalogue(cursorAt(files, name, marker)).map((one) => outcomeOf(files, one));
const written = (files: Record<string, string>, name: string, marker: string) =>
  inlinePart(cursorAt(files, name, marker)).map((one) => outcomeOf(files, one));

const coiled = carText({
  elements: `${cornerSpring}
    spring third for heave {
      coil { rate 90 N/mm, free-length 150 mm }  # from the old car
      between left.rocker.third and right.rocker.third
    }`,
});

describe("moving a part to the catalogue", () => {
  it("makes a file beside where none is used, with the line that uses it", () => {
    const files = { "car.crank": `# car.crank: by hand\n${coiled}` };
    const [one] = moved(files, "car.crank", "coil { rate 90");
    expect(one?.title).toBe("Move the coil of third to the catalogue in parts.crank");
    expect(one?.files["parts.crank"]).toBe(
      "# parts.crank: what is on the shelf\ncatalogue {\n  coil third-coil { rate 90 N/mm, free-length 150 mm }\n}\n",
    );
    expect(one?.files["car.crank"]).toContain('use "parts.crank"\n\ncar tried {');
    expect(one?.files["car.crank"]).toContain("fit third-coil  # from the old car\n");
    expect(one && faultsOf(files, one)).toEqual([]);
  });

  it("takes another name where a file of that name is there, though it is not used", () => {
    const files = { "car.crank": coiled, "parts.crank": "catalogue {\n}\n" };
    const [one] = moved(files, "car.crank", "coil { rate 90");
    expect(one?.title).toContain("car-parts.crank");
    expect(one && faultsOf(files, one)).toEqual([]);
  });

  it("takes the blade of a bar that fits no part, and nothing of an element that fits one", () => {
    expect(moved(samples, "quill/quill.crank", "blade { position 3 of 5")).toEqual([]);
    expect(moved(samples, "quill/quill.crank", "fit TB-110")).toEqual([]);
  });

  it("leaves every car what it is, in every sample that says a part by itself, and back again", () => {
    let offered = 0;
    for (const [name, text] of crankSamples) {
      for (const { index } of text.matchAll(
        /^ {4}(?:spring|damper|inerter|bump-stop|anti-roll-bar|gas-spring) .*\{$/gm,
      )) {
        for (const one of partToCatalogue(cursorIn(samples, name, index + 6))) {
          const outcome = outcomeOf(samples, one);
          expect(faultsOf(samples, outcome), `${name} ${index} ${one.title}`).toEqual([]);
          const kept = commentsOf(outcome.files).filter((comment) => !comment.endsWith("what is on the shelf"));
          expect(kept).toEqual(commentsOf(samples).filter((comment) => !comment.endsWith("what is on the shelf")));
          const [back] = written({ ...outcome.files }, name, `fit ${outcome.named ?? ""}`);
          expect(back, `${name} ${index} ${one.title}`).toBeDefined();
          expect(back && faultsOf(samples, back)).toEqual([]);
          offered++;
        }
      }
    }
    expect(offered).toBeGreaterThan(10);
  }, 120_000);
});

describe("writing a part's figures into the element", () => {
  it("leaves out what is for the shelf", () => {
    const [one] = written(samples, "quill/quill.crank", "fit TB-110");
    expect(one?.title).toBe("Write the figures of TB-110 into corner-bar");
    expect(one?.files["quill/quill.crank"]).toContain(
      "    spring corner-bar for corner {\n      torsion-bar { diameter 11 mm, length 360 mm }\n      twists rocker against chassis\n",
    );
  });

  it("leaves every car what it is, wherever a sample fits a part", () => {
    let offered = 0;
    for (const [name, text] of crankSamples) {
      for (const { index } of text.matchAll(/(?<= )fit (?=\S)/g)) {
        for (const one of inlinePart(cursorIn(samples, name, index + 1))) {
          const outcome = outcomeOf(samples, one);
          expect(faultsOf(samples, outcome), `${name} ${index} ${one.title}`).toEqual([]);
          expect(commentsOf(outcome.files)).toEqual(expect.arrayContaining([...commentsOf(samples)]));
          offered++;
        }
      }
    }
    expect(offered).toBeGreaterThan(20);
  }, 120_000);

  it("lays it out in its place, in a text that is not laid out", () => {
    const files = {
      ...samples,
      "quill/quill.crank": (samples["quill/quill.crank"] ?? "").replace("wheelbase 2540", "wheelbase   2540"),
    };
    const [bar] = written(files, "quill/quill.crank", "fit TB-110");
    expect(bar?.files["quill/quill.crank"]).toContain("wheelbase   2540 mm");
    expect(bar?.files["quill/quill.crank"]).toContain(
      "\n      torsion-bar { diameter 11 mm, length 360 mm }\n      twists",
    );
    const [damper] = written(files, "quill/quill.crank", "fit V-24");
    expect(damper?.files["quill/quill.crank"]).toMatch(
      /corner \{\n {6}bump \{ 25 mm\/s: 50 N.*\}\n {6}rebound \{.*\}\n {6}between/,
    );
  });

  it("keeps what the element says over the part", () => {
    const files = {
      ...samples,
      "quill/quill.crank": (samples["quill/quill.crank"] ?? "").replace(
        "fit TB-110\n",
        "fit TB-110  # the soft one\n      torsion-bar { length 350 mm }\n",
      ),
    };
    const [one] = written(files, "quill/quill.crank", "fit TB-110");
    expect(one && faultsOf(files, one)).toEqual([]);
    expect(one?.files["quill/quill.crank"]).toContain("# the soft one\n");
    expect(one?.files["quill/quill.crank"]).toMatch(/torsion-bar \{ diameter 11 mm, length 350 mm \}/);
  });

  it("is not offered where a set-up of another file would become another", () => {
    const catalogue = (more: string): string =>
      `catalogue {\n  valving V-1 { damping 2 N*s/mm${more} }\n  valving V-2 { damping 3 N*s/mm }\n}\n`;
    const files = (more: string) => ({
      "parts.crank": catalogue(more),
      "car.crank": carText({
        before: 'use "parts.crank"\n',
        elements: `${cornerSpring}\n    damper third for heave {\n      fit V-1\n      between left.rocker.third and right.rocker.third\n    }`,
      }),
      "other.crank": 'use "car.crank"\n\nsetup other from tried {\n  front.third.fit V-2\n}\n',
    });
    // Fitting V-2 takes away what V-1 brought, but not what the damper says itself.
    expect(written(files(""), "car.crank", "fit V-1")).toHaveLength(1);
    expect(written(files(", gas-force 40 N"), "car.crank", "fit V-1")).toEqual([]);
  });
});
