import { describe, expect, it } from "vitest";
import { newNonce, panelHtml } from "../../client/panel/panel-html.js";
import { pressed } from "../../client/panel/page/keys.js";
import { plotted, valueAt } from "../../client/panel/page/plot.js";
import { answered, cursorMoved, START, type State } from "../../client/panel/page/state.js";
import { changesInWords, poseInWords, shown, signed, stoppedBy } from "../../client/panel/page/words.js";
import { AT_REST, allowed } from "../../client/panel/page/pose.js";
import { rangesOf } from "../../client/panel/page/scene.js";
import { answerFor, sampleFile } from "../support/panel-page.js";
import { placeOf } from "../editor/places.js";

const PATH = "quill/quill.crank";
const file = sampleFile(PATH);
const good = answerFor(file);
const leaking = answerFor(sampleFile(PATH, (text) => text.replace("(45, 175, 348)", "(45, 175, 356)")));
const broken = answerFor(sampleFile(PATH, (text) => text.replace("axle front {", "axle front {{")));

describe("what the page shows after an answer", () => {
  it("keeps the last good drawing while the text cannot be read, and says so", () => {
    expect(broken.broken).toMatch(/Line \d+/);
    const before = answered(START, good);
    const after = answered(before, broken);
    expect(after.answer).toBe(before.answer);
    expect(after.note).toMatch(/last drawing/);
    expect(answered(after, good).note).toBeUndefined();
  });
  it("shows what there is of a text that was never read in full", () => {
    expect(answered(START, broken).note).toMatch(/may lack/);
  });
  it("shows nothing where a file declares no car", () => {
    const none = answered(START, { uri: "a", cars: [], broken: undefined, car: undefined });
    expect(none.answer?.car).toBeUndefined();
  });
  it("says in words what a change did", () => {
    expect(answered(answered(START, good), leaking).said).toMatch(/front\.roll-damper leaks \d+.*% in heave/);
    expect(changesInWords(leaking.car!, good.car!)).toMatch(/front\.roll-damper leaks/);
    expect(changesInWords(good.car!, good.car!)).toBe("");
  });
  it("draws a pose back that the new car cannot reach", () => {
    const bent: State = { ...answered(START, good), pose: { ...AT_REST, heave: 0.5 } };
    expect(answered(bent, good).pose.heave).toBeCloseTo(0.025, 6);
  });
});

describe("the cursor", () => {
  const at = (pattern: RegExp) => {
    const { line, column } = placeOf(file.text, pattern);
    return { uri: file.uri, line: line - 1, character: column - 1 };
  };
  it("chooses the element, the eye and the axle that it is in", () => {
    const state = answered(START, good);
    expect(cursorMoved(state, at(/damper (roll-damper) for roll/)).chosen).toBe("front.roll-damper");
    expect(cursorMoved(state, at(/eye roll-low \((45)/)).chosen).toBe("front.left.rocker.roll-low");
    expect(cursorMoved(state, at(/axle (rear)/)).axles).toBe("rear");
  });
});

describe("words", () => {
  it("have a real minus, and no sign on nought", () => {
    expect(signed(-1.26, 1)).toBe("\u22121.3");
    expect(signed(-0.01, 1)).toBe("0.0");
    expect(poseInWords(AT_REST, good.car!)).toMatch(/design/);
    expect(poseInWords({ ...AT_REST, heave: -0.0123 }, good.car!)).toBe("Heave minus 12.3 millimetres.");
  });
  it("use the author's unit of length", () => {
    const inches = { ...good.car!, length: { unit: "in", scale: 1 / 0.0254 } };
    expect(shown("heave", 0.0254, inches)).toBe("+1.000 in");
    expect(shown("roll", Math.PI / 180, inches)).toBe("+1.00 deg");
  });
  it("tell which wheel stops a motion", () => {
    const car = good.car!;
    const { high } = allowed("heave", AT_REST, rangesOf(car, car.axles, "front"), { from: -1, to: 1 });
    expect(stoppedBy(high, car)).toMatch(/(front|rear) (left|right) wheel .* bump/);
  });
});

describe("keys", () => {
  const press = (key: string, shiftKey = false): readonly string[] => {
    const done: string[] = [];
    const actions = {
      change: () => done.push("change"),
      move: (motion: string, to: number) => done.push(`${motion} ${to.toFixed(3)}`),
      undo: () => done.push("undo"),
    };
    const event = { key, shiftKey, ctrlKey: key === "z", metaKey: false, altKey: false };
    pressed(event, START, actions as unknown as Parameters<typeof pressed>[2]);
    return done;
  };
  it("move, undo and choose views, and leave the rest alone", () => {
    expect(press("h")).toEqual(["heave 0.002"]);
    expect(press("R", true)).toEqual(["roll -0.002"]);
    expect(press("z")).toEqual(["undo"]);
    expect(press("3")).toEqual(["change"]);
    expect(press("q")).toEqual([]);
  });
});

describe("the frame's page", () => {
  const html = panelHtml({
    script: "https://r/panel.js",
    style: "https://r/panel.css",
    source: "https://r",
    nonce: "N",
  });
  it("lets nothing in but its own script, by its nonce, and its style sheet", () => {
    const policy = /content="([^"]*default-src[^"]*)"/.exec(html)?.[1] ?? "";
    expect(policy.split("; ")).toEqual([
      "default-src 'none'",
      "script-src 'nonce-N'",
      "style-src https://r",
      "img-src data: blob:",
    ]);
    expect(html.match(/<script/g)).toHaveLength(1);
  });
  it("has another nonce each time", () => {
    expect(newNonce()).toMatch(/^[A-Za-z0-9]{32}$/);
    expect(newNonce()).not.toBe(newNonce());
  });
});

describe("a plot", () => {
  const curve = {
    id: "a",
    group: "wheels",
    title: "A",
    x: { name: "x", unit: "mm" },
    y: { name: "y", unit: "" },
    follows: undefined,
    missing: undefined,
    series: [
      {
        label: "a",
        axle: undefined,
        place: undefined,
        points: [
          [0, 1],
          [10, 3],
          [20, null],
        ] as const,
      },
    ],
  };
  it("reads between its points, and nothing in a gap", () => {
    expect(valueAt(curve.series[0]!, 5)).toBe(2);
    expect(valueAt(curve.series[0]!, 15)).toBeUndefined();
    expect(valueAt(curve.series[0]!, 21)).toBeUndefined();
  });
  it("has finite axes, whatever there is to draw", () => {
    for (const series of [
      curve.series,
      [],
      [
        {
          ...curve.series[0]!,
          points: [
            [0, 5],
            [1, 5],
          ] as const,
        },
      ],
    ]) {
      const { x, y, px, py } = plotted({ ...curve, series });
      for (const value of [x.from, x.to, y.from, y.to, px(0), py(0)]) expect(Number.isFinite(value)).toBe(true);
      expect(x.to).toBeGreaterThan(x.from);
    }
  });
});
