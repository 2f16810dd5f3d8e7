import { describe, expect, it } from "vitest";
import { rules } from "../../server/findings/registry.js";
import { runRules } from "../../server/findings/run.js";
import { contextOf, isFormatted } from "../support/context.js";
import { brokenSamples } from "../support/shared-car.js";

const ids = rules.map(({ meta }) => meta.id);
const names = Object.keys(brokenSamples).filter((name) => name.endsWith(".crank"));
/** Files that samples build on are named after no rule: they have no mistake of their own. */
const helpers = names.filter((name) => !ids.includes(name.replace(/\.crank$/, "")));

const found = (name: string) => runRules(contextOf(brokenSamples, name));

describe("samples/broken", () => {
  it.each(ids)("%s has a sample that shows this mistake and no other", (id) => {
    expect(names).toContain(`${id}.crank`);
    expect([...new Set(found(`${id}.crank`).map(({ rule }) => rule))]).toEqual([id]);
  });

  it.each(helpers)("%s is without a finding, in canonical layout", (name) => {
    expect(found(name)).toEqual([]);
    expect(isFormatted(brokenSamples[name] ?? "")).toBe(true);
  });
});
