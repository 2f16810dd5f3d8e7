/** A file with more findings than anybody reads: the weightiest are published, and the rest is counted. */
import { describe, expect, it } from "vitest";
import { diagnosticsOf, MOST } from "../../server/lsp/diagnostics.js";
import { normalUri, Session } from "../../server/lsp/session.js";
import { createWorkspace } from "../../server/snapshot/create.js";

const uri = normalUri("memory:///club/many.crank");

function publish(text: string) {
  const workspace = createWorkspace({ read: () => ({ missing: "missing" }) });
  workspace.set(uri, text);
  const session = new Session(workspace, () => []);
  const file = session.file(uri);
  return { findings: file.findings(), diagnostics: diagnosticsOf(session, file) };
}

const lines = (line: string, count: number): string => `${line}\n`.repeat(count);

describe("published findings", () => {
  it("are all of them up to the most that is shown", () => {
    const { findings, diagnostics } = publish(lines("blurb 3 kg", MOST));
    expect(findings).toHaveLength(MOST);
    expect(diagnostics).toHaveLength(MOST);
  });

  it.each([
    ["words that nobody knows", lines("blurb 3 kg", 10_000)],
    ["closing braces", lines("}{ ] ) = =", 10_000)],
    ["signs that mean nothing", lines("§§ ¤¤ ~~", 10_000)],
    ["set-up lines that miss", `car a {\n}\nsetup b from a {\n${lines("  front.thrid.rate 95 N", 10_000)}}\n`],
  ])("of 10,000 lines of nonsense are no more than that, and the rest is counted: %s", (_, text) => {
    const { findings, diagnostics } = publish(text);
    expect(findings.length).toBeGreaterThanOrEqual(10_000);
    expect(diagnostics).toHaveLength(MOST + 1);
    expect(diagnostics.at(-1)?.message).toContain(`and ${findings.length - MOST} more are not`);
  });

  it("of 10,000 blocks in each other that nobody closes are as many as may stand in each other", () => {
    const { diagnostics } = publish(`car a {\n${lines("  axle front {", 10_000)}`);
    expect(diagnostics.map(({ code }) => code)).toContain("beyond-limits");
    expect(diagnostics.length).toBeLessThan(MOST);
  });

  it("are the errors first, wherever they stand", () => {
    const parts = `catalogue {\n${Array.from({ length: MOST + 5 }, (_, i) => `  torsion-bar T${i} { diameter 900 mm, length 290 mm }\n`).join("")}}\n`;
    const { findings, diagnostics } = publish(`${parts}blurb 3 kg\n`);
    expect(findings.filter(({ severity }) => severity !== "error").length).toBeGreaterThan(MOST);
    expect(findings.at(-1)?.severity).toBe("error");
    expect(diagnostics[0]).toMatchObject({ severity: 1, code: "unknown-word" });
    expect(diagnostics.at(-1)?.range.start).toEqual({ line: 0, character: 0 });
  });
});
