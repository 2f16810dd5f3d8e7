/** A new car checks clean, whatever was answered. */
import { describe, expect, it } from "vitest";
import { format } from "../../../grammar/index.js";
import { runRules } from "../../../server/findings/run.js";
import { type NewCar, questions, usual, whyNoName, yesOrNo } from "../../../server/views/new-car/answers.js";
import { newCarFiles } from "../../../server/views/new-car/new-car.js";
import { contextOf } from "../../support/context.js";

const NAMED = { name: "swift-2", title: 'Swift 2, "the blue one"' };

/** Every combination of answers to these questions. */
function combinations(of: readonly (keyof NewCar)[]): readonly Partial<NewCar>[] {
  const answers = (key: keyof NewCar): readonly unknown[] => {
    const question = questions.find((one) => one.of === key);
    return question === undefined ? [true, false] : question.options.map(({ value }) => value);
  };
  return of.reduce<readonly Partial<NewCar>[]>(
    (all, key) => all.flatMap((one) => answers(key).map((value) => ({ ...one, [key]: value }))),
    [{}],
  );
}

/** Every finding of every file. */
function saidOf(car: NewCar): readonly string[] {
  const files = Object.fromEntries(newCarFiles(car).map(({ name, text }) => [name, text]));
  return Object.keys(files).flatMap((name) =>
    runRules(contextOf(files, name)).map(({ rule, severity, message }) => `${name}: ${severity} ${rule}: ${message}`),
  );
}

const all = combinations(["corner", "frontRod", "rearRod", "springs", "heave", "bars"]);

describe("a new car", () => {
  it("is asked about everything that it has", () => {
    const asked = [...questions.map(({ of }) => of), ...yesOrNo.map(({ of }) => of)];
    expect([...asked].sort()).toEqual(Object.keys(usual).sort());
    expect(questions.map(({ of, options }) => [of, options[0]?.value])).toEqual(
      questions.map(({ of }) => [of, usual[of]]),
    );
  });

  it.each(all.map((answers) => [Object.values(answers).join(" "), answers] as const))(
    "%s checks clean",
    (_, answers) => {
      for (const downforce of [true, false]) expect(saidOf({ ...NAMED, ...usual, ...answers, downforce })).toEqual([]);
    },
  );

  it.each(
    combinations(["corner", "springs", "heave"]).map((answers) => [Object.values(answers).join(" "), answers] as const),
  )("%s in inches checks clean, in inches throughout", (_, answers) => {
    const car = { ...NAMED, ...usual, ...answers, units: "inch" } as const;
    expect(saidOf(car)).toEqual([]);
    for (const { text } of newCarFiles(car)) expect(text.replaceAll(/#.*$/gm, "")).not.toMatch(/\d (mm|N|kg|N\/mm)\b/);
  });

  it("is laid out canonically, and teaches", () => {
    for (const { text } of newCarFiles({ ...NAMED, ...usual })) {
      expect(format(text)).toBe(text);
      expect(text).toMatch(/^# /);
    }
  });

  it("has a name that the language can say", () => {
    for (const good of ["a", "swift-2", "T9"]) expect(whyNoName(good)).toBeUndefined();
    for (const bad of ["", "2-swift", "swift 2", "swift--2", "swift.2", "-a", "ä"])
      expect(whyNoName(bad)).toContain("a name is");
  });
});
