/** The comment of a pull request: never too long for the hosts, whatever differs, and nobody's text is markup in it. */
import { describe, expect, it } from "vitest";
import { compare } from "../../../server/views/comparison/compare.js";
import { reviewMarkdown } from "../../../server/views/comparison/markdown.js";
import { type Review, type ReviewedCar, reviewOfTwo } from "../../../server/views/comparison/review.js";
import { carIn } from "./versions.js";

const many = Array.from({ length: 900 }, (_, i) => i);

const car = (mass: number, note: string, clearance: number): string => `car heron "Heron | <b>bold</b> @everyone" {
  ## ${note}
  mass ${mass} kg
  ${many.map((i) => `clearance-point p${i} { point (${i}, 0, ${clearance}) mm }`).join("\n  ")}
}
`;

const compared = (old: string, now: string): ReviewedCar => {
  const [before, after] = [carIn(old), carIn(now)];
  const found = compare({ ...before, label: "old" }, { ...after, label: "new" });
  const [only] = reviewOfTwo(found, "heron.crank").cars;
  if (only === undefined) throw new Error("no car");
  return only;
};

const bytes = (text: string): number => Buffer.byteLength(text, "utf8");

/** What GitHub's interface takes as the body of a comment: https://docs.github.com, "Body is too long (maximum is 65536 characters)". */
const LIMIT = 65_536;

describe("a huge comparison", () => {
  const huge = compared(car(500, "as weighed", 20), car(501, "as weighed", 21));
  const review = (cars: readonly ReviewedCar[]): Review => ({
    old: "a",
    now: "b",
    headline: "Much differs.",
    differs: true,
    cars,
  });

  it("of one car is cut to what the hosts take, its head kept", () => {
    expect(huge.comparison?.changes.length).toBeGreaterThan(900);
    const text = reviewMarkdown(review([huge]));
    expect(bytes(text)).toBeLessThan(LIMIT);
    expect(text).toMatch(/^<!-- bellcrank compare -->\n\n\*\*Much differs\.\*\*/);
    expect(text).toMatch(/and \d+ more/);
    expect(text).toContain("competent person");
  });

  it("of hundreds of cars tells the first in full and the rest in a line each, as far as there is room", () => {
    const small = compared(car(500, "x", 20), car(502, "x", 20));
    for (const count of [2, 40, 400, 4000]) {
      const cars = many
        .concat(many, many, many, many)
        .slice(0, count)
        .map((i) => ({ ...small, name: `setup-${i}`, path: `season/${i}.crank` }));
      const text = reviewMarkdown(review(cars));
      expect(bytes(text)).toBeLessThan(LIMIT);
      expect(text).toContain("### setup-0");
      if (count === 4000) expect(text).toMatch(/\d+ more differ; `bellcrank compare` tells all of them/);
      else expect(text).toContain(`setup-${count - 1}`);
    }
  });
});

describe("what authors write", () => {
  it("is shown as text", () => {
    const { comparison, ...rest } = compared(
      car(500, "as | drawn", 20).split("\n  clearance").at(0) + "\n}",
      car(500, "see <img src=x> [here](http://evil.example) @team `x`", 20).split("\n  clearance").at(0) + "\n}",
    );
    const text = reviewMarkdown({
      old: "a|b",
      now: "<c>",
      headline: "x",
      differs: true,
      cars: [{ ...rest, comparison }],
    });
    expect(text).toContain("as \\| drawn");
    expect(text).toContain("\\<img src=x\\> \\[here\\](http://evil.example) @\u200Bteam \\`x\\`");
    expect(text).toContain("Old: a\\|b. New: \\<c\\>.");
  });
});
