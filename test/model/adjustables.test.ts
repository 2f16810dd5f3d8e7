import { describe, expect, it } from "vitest";
import { adjustablesOf } from "../../server/model/adjustables.js";
import { quill, quillText } from "../support/quill.js";

const pathsOf = (text: string) => adjustablesOf(quill(text)).map(({ property }) => property.path);

describe("what can be adjusted", () => {
  it("is every adjuster, part and plain rate of the car, each once", () => {
    const paths = pathsOf(quillText);
    expect(paths).toEqual(
      expect.arrayContaining([
        "front.ride-height",
        "front.push-rod.longer",
        "front.corner-bar.fit",
        "front.side.fit",
        "front.third.rate",
        "front.third.preload",
        "front.bar.fit",
        "front.bar.blade.position",
        "rear.pull-rod.longer",
        "rear.bar.link-spring.rate",
      ]),
    );
    expect(new Set(paths).size).toBe(paths.length);
    // Without a step, camber is aligned and not adjusted; a bar's diameter comes with the bar.
    expect(paths).not.toContain("front.camber");
    expect(paths.filter((path) => path.includes("diameter"))).toEqual([]);
  });

  it("counts camber where its step is known", () => {
    expect(pathsOf(quillText.replace("camber -2 deg", "camber -2 deg { step 0.1 deg }"))).toContain("front.camber");
  });

  it("takes the sides apart where they are set differently", () => {
    const paths = pathsOf(quillText.replace("  axle rear {", "  front.left.side.fit V-18\n  axle rear {"));
    expect(paths).toContain("front.left.side.fit");
    expect(paths).toContain("front.right.side.fit");
    expect(paths).not.toContain("front.side.fit");
  });

  it("knows what each is for", () => {
    const third = adjustablesOf(quill()).find(({ property }) => property.path === "front.third.rate");
    expect(third).toMatchObject({ for: ["heave"], axle: "front" });
  });
});
