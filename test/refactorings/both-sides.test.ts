/** Left and right with a line each: typed as one where they mirror each other, made alike or one on request. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyEdits } from "../../server/findings/edits.js";
import { bothSides, linkedPlaces } from "../../server/refactorings/both-sides.js";
import { axle, setup } from "../support/axle-car.js";
import { isFormatted } from "../support/context.js";
import { brokenSamples } from "../support/shared-car.js";
import { samples } from "../support/samples.js";
import { commentsOf, cursorAt, cursorIn } from "./refactored.js";

const filesWith = (text: string, car: string = axle) => ({ ...brokenSamples, "axle.crank": car, "trial.crank": text });

/** The text with the one action that is offered at the place. */
function after(text: string, marker: string, part = marker): { title: string; text: string } {
  const [offered, more] = bothSides(cursorAt(filesWith(text), "trial.crank", marker, part));
  if (offered === undefined || more !== undefined) throw new Error("not one action is offered");
  return { title: offered.title, text: applyEdits(text, offered.edits) };
}

const titles = (text: string, marker: string, part = marker): readonly string[] =>
  bothSides(cursorAt(filesWith(text), "trial.crank", marker, part)).map(({ title }) => title);

/** The linked places as they stand in the text, each with what is before it on its line. */
function linked(text: string, marker: string, part = marker): readonly string[] {
  const { file, offset } = cursorAt(filesWith(text), "trial.crank", marker, part);
  return linkedPlaces(file, offset).map(({ start, end }) => {
    const line = text.slice(text.lastIndexOf("\n", start) + 1, start).trimStart();
    return `${line}[${text.slice(start, end)}]`;
  });
}

describe("lines of their own on both sides that differ", () => {
  it.each([
    [
      ["front.left.side.damping 2.9 N*s/mm", "front.right.side.damping 2.4 N*s/mm"],
      "2.9",
      "Make the right side's own line the same: 2.9 N*s/mm",
      ["front.left.side.damping 2.9 N*s/mm", "front.right.side.damping 2.9 N*s/mm"],
    ],
    [
      ["front.left.rocker.side (-45, 208, 464) mm", "front.right.rocker.side (-45, -208, 463.5) mm"],
      "-208",
      "Make the left side's own line the same: (-45, 208, 463.5) mm",
      ["front.left.rocker.side (-45, 208, 463.5) mm", "front.right.rocker.side (-45, -208, 463.5) mm"],
    ],
    [
      ["front.left.wheel.camber -2.1 deg", "front { right { wheel { camber -2.3 deg } } }"],
      "-2.3",
      "Make the left side's own line the same: -2.3 deg",
      ["front.left.wheel.camber -2.3 deg", "front { right { wheel { camber -2.3 deg } } }"],
    ],
  ])("are made the same: %j", (lines, place, title, then) => {
    expect(after(setup(...lines), place)).toEqual({ title, text: setup(...then) });
  });

  it("are made the same in a car too", () => {
    const lines = ["left { wheel { camber -2.1 deg } }", "right { wheel { camber -2.4 deg } }"];
    const car = axle.replace(
      "    spring corner-bar",
      `${lines.map((line) => `    ${line}\n`).join("")}    spring corner-bar`,
    );
    const [offered] = bothSides(cursorAt(filesWith("", car), "axle.crank", "-2.4"));
    expect(applyEdits(car, offered?.edits ?? [])).toBe(car.replace("-2.1 deg", "-2.4 deg"));
  });

  it("are left alone where a point is worked out from names", () => {
    const text = setup(
      "let low = 464 mm",
      "front.left.rocker.side (-45, 208, 463) mm",
      "front.right.rocker.side (-45 mm, 0 mm - low, low)",
    );
    expect(titles(text, "0 mm - low")).toEqual([]);
  });
});

describe("lines of their own on both sides that mirror each other", () => {
  const same = setup("front.left.side.damping 2.9 N*s/mm", "mass 545 kg", "front.right.side.damping 2.9 N*s/mm");

  it("are said once, and the car stays what it is", () => {
    expect(after(same, "front.right")).toEqual({
      title: "Say it once, for both sides: front.side.damping",
      text: setup("mass 545 kg", "front.side.damping 2.9 N*s/mm"),
    });
    const points = setup("front.left.rocker.side (-45, 208, 464) mm", "front.right.rocker.side (-45, -208, 464) mm");
    const once = after(points, "-208").text;
    expect(once).toBe(setup("front.rocker.side (-45, 208, 464) mm"));
    expect(isFormatted(once)).toBe(true);
  });

  it("stay two where a comment or a note would be lost", () => {
    expect(titles(same.replace("2.9 N*s/mm\n  mass", "2.9 N*s/mm  # as on Sunday\n  mass"), "front.right")).toEqual([]);
    expect(titles(same.replace("  front.left", "  ## as on Sunday\n  front.left"), "front.right")).toEqual([]);
  });

  it("stay two where the line is not the set-up's own, or one side has more", () => {
    expect(
      titles(
        setup(
          "front.left { side { damping 2.9 N*s/mm }, wheel { camber -2 deg } }",
          "front.right.side.damping 2.9 N*s/mm",
        ),
        "2.9",
      ),
    ).toEqual([]);
    expect(titles(setup("front.left.side.damping 2.9 N*s/mm"), "2.9")).toEqual([]);
    expect(titles(setup("front.side.damping 2.9 N*s/mm"), "2.9")).toEqual([]);
  });

  it("are typed as one: a number, a name, a coordinate without its sign", () => {
    expect(linked(same, "2.9")).toEqual(["front.left.side.damping [2.9]", "front.right.side.damping [2.9]"]);
    const points = setup("front.left.rocker.side (-45, 208, 464) mm", "front.right.rocker.side (-45, -208, 464) mm");
    expect(linked(points, "-208", "208")).toEqual([
      "front.right.rocker.side (-45, -[208]",
      "front.left.rocker.side (-45, [208]",
    ]);
    const parts = setup("front.left.corner-bar.fit TB-110", "front.right.corner-bar.fit TB-110");
    expect(linked(parts, "TB-110")).toEqual([
      "front.left.corner-bar.fit [TB-110]",
      "front.right.corner-bar.fit [TB-110]",
    ]);
  });

  it("are not, where they differ, or where the cursor is in no value", () => {
    expect(linked(same.replace("2.9", "2.8"), "2.8")).toEqual([]);
    expect(linked(same, "damping")).toEqual([]);
    expect(linked(setup("front.left.side.damping 2.9 N*s/mm"), "2.9")).toEqual([]);
  });
});

it("nothing throws or loses a comment, wherever the cursor is and wherever the text ends", () => {
  const text = `${setup(
    "## softer here",
    "front.left.rocker.side (-45, 208, 464) mm  # measured",
    "front { right { rocker { eye side (-45, -208, 464) mm }, wheel { camber -2.2 deg } } }",
    "front.left.wheel.camber -2.2 deg",
    "front.left.bar.lever { pivot (70, 222, 296) mm, axis (0, 1, 0), end (0, 222, 296) mm }",
    "front.right.bar.lever { pivot (70, -222, 296) mm, axis (0, 1, 0), end (0, -222, 296) mm }",
    "front.left.side.damping 2.9 N*s/mm",
    "front.right.side.damping",
    "remove front.left.side",
  )}# the end\n`;
  fc.assert(
    fc.property(fc.nat(text.length), fc.nat(text.length), (end, offset) => {
      const cut = text.slice(0, end);
      const on = cursorIn(filesWith(cut), "trial.crank", Math.min(offset, end));
      linkedPlaces(on.file, on.offset);
      for (const { edits } of bothSides(on)) {
        const now = applyEdits(cut, edits);
        expect(commentsOf({ now })).toEqual(commentsOf({ cut }));
      }
    }),
    { numRuns: 300 },
  );
});

it("offers nothing in a sample without lines of their own on both sides", () => {
  const name = "quill/quill.crank";
  const text = samples[name] ?? "";
  for (let offset = 0; offset < text.length; offset += 37)
    expect(bothSides(cursorIn(samples, name, offset))).toEqual([]);
});
