/** Left and right over the wire: what is typed as one, and the action that makes a line the same. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { CodeAction, LinkedEditingRanges, WorkspaceEdit } from "vscode-languageserver/node";
import { at, type Club, edited, rangeAt, startClub } from "./club.js";

const text = `use "quill.crank"

setup lopsided from quill {
  front.left.rocker.side (-45, 208, 464) mm
  front.right.rocker.side (-45, -208, 464) mm
  front.left.wheel.camber -2.1 deg
  front.right.wheel.camber -2.3 deg
}
`;

describe("left and right over the wire", () => {
  let club: Club;
  let uri: string;
  beforeAll(async () => {
    club = await startClub();
    uri = club.uri("lopsided.crank");
    club.write("lopsided.crank", text);
    await club.open("lopsided.crank");
  });
  afterAll(async () => {
    expect(await club.close()).toBe(0);
  });

  const linked = async (marker: string): Promise<LinkedEditingRanges | null> =>
    club.wire.request("textDocument/linkedEditingRange", { textDocument: { uri }, position: at(text, marker) });

  async function actions(marker: string): Promise<readonly CodeAction[]> {
    const range = { start: at(text, marker), end: at(text, marker) };
    const context = { diagnostics: [], only: ["refactor.rewrite"] };
    return club.wire.request("textDocument/codeAction", { textDocument: { uri }, range, context });
  }

  const applied = ({ changes }: WorkspaceEdit): string => edited(text, changes?.[uri] ?? []);

  it("links the same number of both lines, with what may be typed there", async () => {
    const answer = await linked("208, 464) mm\n  front.right");
    expect(answer?.ranges).toEqual([rangeAt(text, "side (-45, 208", "208"), rangeAt(text, "(-45, -208", "208")]);
    expect("208.5").toMatch(new RegExp(`^${answer?.wordPattern ?? ""}$`));
  });

  it("links nothing where the sides differ", async () => {
    expect(await linked("2.1 deg")).toBeNull();
  });

  it("offers to say it once, or to make the other side's line the same", async () => {
    const once = (await actions("208, 464) mm\n  front.right")).find(({ title }) => title.startsWith("Say it once"));
    expect(applied(once?.edit ?? {})).toContain("{\n  front.rocker.side (-45, 208, 464) mm\n  front.left.wheel");
    const same = (await actions("2.3 deg")).find(({ title }) => title.startsWith("Make the left side's"));
    expect(same?.title).toBe("Make the left side's own line the same: -2.3 deg");
    expect(applied(same?.edit ?? {})).toBe(text.replace("-2.1", "-2.3"));
  });
});
