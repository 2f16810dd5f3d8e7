/** What the drop links of a T-shaped bar reach: told as a linkage's links are. */
import { describe, expect, it } from "vitest";
import type { ReachFigures } from "../../../../server/analyses/results.js";
import type { RuleContext } from "../../../../server/findings/context.js";
import { runRules } from "../../../../server/findings/run.js";
import { figuresOf } from "../../../support/axle-car.js";
import { afterFix } from "../../../support/check-fixes.js";
import { sampleContext } from "../../../support/samples.js";

const DRAWN = "tee { foot (-160, 0, 300) mm, head (0, 0, 300) mm, end (0, 150, 300) mm }";
const teeWith = (tee: string): RuleContext => sampleContext("systems/tee-bar.crank", [DRAWN, `tee { ${tee} }`]);
const told = (context: RuleContext): readonly string[] =>
  runRules(context).map(({ rule, severity }) => `${severity} ${rule}`);
const reachOf = ({ cars }: RuleContext): readonly ReachFigures[] => cars[0]?.analysis.axles.front?.reach ?? [];
const linkOf = ({ toggles }: ReachFigures) => toggles.find(({ link }) => link === "drop-link");

/** A cross arm that is bent up, so that its links run nearly towards the stem. */
const BINDS = "foot (-160, 0, 300) mm, head (0, 0, 300) mm, end (0, 60, 390) mm";

describe("the drop links of a T-shaped bar", () => {
  it("are far from a toggle where they are square to both arms, alike on both sides", () => {
    const reach = reachOf(sampleContext("systems/tee-bar.crank"));
    expect(reach.map(({ binds }) => binds)).toEqual([[], []]);
    const [left, right] = reach.map(linkOf);
    expect(left).toMatchObject({ element: "front.tee" });
    // Both arms are level and the links upright at design: a right angle, less what 25 mm of travel turns them.
    expect(left?.angle).toBeGreaterThan(1.4);
    expect(right).toEqual(left);
  });

  it("are told where they do not reach, with the bar, and the fix leaves travel at which every figure is there", () => {
    const context = teeWith(BINDS);
    expect(told(context)).toContain("error unreachable-travel");
    const message = runRules(context).find(({ rule }) => rule === "unreachable-travel")?.message;
    expect(message).toMatch(/its drop link of tee binds at -8\.42 mm and is to go to 25 mm, but .* binds at 7\.65 mm/);
    expect(figuresOf(context, "front.tee").travel).toMatchObject({ kind: "absent" });
    const after = afterFix(context, "unreachable-travel").context;
    expect(told(after)).not.toContain("error unreachable-travel");
    expect(figuresOf(after, "front.tee").travel).not.toHaveProperty("kind");
    expect(figuresOf(after, "front.left.side").travel).not.toHaveProperty("kind");
  });

  it("are told near a toggle", () => {
    const context = teeWith("foot (-15, 0, 300) mm, head (0, 0, 300) mm, end (0, 150, 300) mm");
    expect(told(context)).toContain("information near-toggle");
  });

  it("have no lever that anything could be joined to, and that is said", () => {
    const damper =
      "damper late for roll {\n      damping 1 N*s/mm\n      between tee.lever.end and chassis (0, 150, 380) mm\n    }";
    const context = sampleContext("systems/tee-bar.crank", [
      "    anti-roll-bar tee",
      `    ${damper}\n    anti-roll-bar tee`,
    ]);
    const [finding] = runRules(context);
    expect(finding?.rule).toBe("unbuildable");
    expect(finding?.message).toContain("tee is a T-shaped bar, and its cross arm takes its drop links only");
  });
});
