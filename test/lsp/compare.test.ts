/** The comparison over the wire, as the editor asks for it: another set-up, the last commit, a branch. */
import { spawnSync } from "node:child_process";
import { readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import type { Connection } from "vscode-languageserver";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { compare as feature } from "../../server/lsp/features/compare.js";
import { Session } from "../../server/lsp/session.js";
import { createWorkspace } from "../../server/snapshot/create.js";
import type {
  CommittedTextAnswer,
  CommittedTextMethod,
  CompareAnswer,
  CompareChoices,
  CompareChoicesMethod,
  CompareMethod,
  CompareParams,
} from "../../server/lsp/protocol-compare.js";
import { type Club, startClub } from "./club.js";

const COMPARE: CompareMethod = "bellcrank/compare";
const CHOICES: CompareChoicesMethod = "bellcrank/compareChoices";
const COMMITTED: CommittedTextMethod = "bellcrank/committedText";

describe("where no git can be run, as in a browser", () => {
  it("set-ups are compared, and revisions refused with the reason", async () => {
    const texts = new Map(
      ["quill", "parts", "wet", "dry"].map((name) => [
        `file:///club/${name}.crank`,
        readFileSync(`samples/quill/${name}.crank`, "utf8"),
      ]),
    );
    const read = (uri: string) => ({ text: texts.get(uri) ?? "" });
    const session = new Session(createWorkspace({ read }), () => [...texts.keys()]);
    const handlers = new Map<string, (params: unknown) => unknown>();
    const connection = {
      onRequest: (method: string, handler: (params: unknown) => unknown) => handlers.set(method, handler),
    };
    feature.attach(connection as unknown as Connection, session);
    const ask = (method: string, params: unknown) => handlers.get(method)?.(params);
    const uri = "file:///club/wet.crank";
    const none = { kind: "none", why: expect.stringMatching(/it runs in a browser\.$/) };
    expect(await ask(CHOICES, { uri })).toMatchObject({ name: "quarrow-wet", revisions: none });
    expect(await ask(COMPARE, { uri, with: { kind: "revision", revision: "HEAD" } })).toMatchObject(none);
    expect(await ask(COMMITTED, { uri, revision: "HEAD" })).toEqual({ why: none.why });
    const other = { kind: "setup", uri: "file:///club/dry.crank", name: "quarrow-dry" };
    expect(await ask(COMPARE, { uri, with: other })).toMatchObject({ kind: "page", name: "quarrow-wet" });
  });
});

describe("comparisons over the wire", () => {
  let club: Club;
  const git = (...args: string[]): void => {
    const identity = ["-c", "user.name=Ada Fitter", "-c", "user.email=ada@club.example"];
    const { status, stderr } = spawnSync("git", [...identity, ...args], { cwd: club.folder, encoding: "utf8" });
    if (status !== 0) throw new Error(stderr);
  };
  const compare = (params: CompareParams): Promise<CompareAnswer> => club.wire.request<CompareAnswer>(COMPARE, params);
  const bodyOf = (answer: CompareAnswer): string => (answer.kind === "page" ? answer.body : answer.why);
  beforeAll(async () => {
    club = await startClub();
  });
  afterAll(async () => {
    await club.close();
  });

  it("say that there is no repository, and compare set-ups all the same", async () => {
    const choices = await club.wire.request<CompareChoices>(CHOICES, { uri: club.uri("wet.crank") });
    expect(choices.name).toBe("quarrow-wet");
    expect(choices.setups.map(({ name, isBase }) => [name, isBase])).toEqual([
      ["quill", true],
      ["quarrow-dry", false],
    ]);
    expect(choices.revisions).toMatchObject({ kind: "none", why: expect.stringMatching(/is in no git repository\.$/) });
    const none = await compare({ uri: club.uri("wet.crank"), with: { kind: "revision", revision: "HEAD" } });
    expect(none).toMatchObject({ kind: "none", why: expect.stringMatching(/is in no git repository\.$/) });
    const page = await compare({
      uri: club.uri("wet.crank"),
      with: { kind: "setup", uri: club.uri("dry.crank"), name: "quarrow-dry" },
    });
    expect(page).toMatchObject({ kind: "page", name: "quarrow-wet" });
    expect(bodyOf(page)).toMatch(
      /<td>front\.third\.rate<\/td><td class="was">[^<]+<\/td><td class="is">45 N\/mm<\/td>/,
    );
    expect(bodyOf(page)).toContain(`data-uri="${club.uri("wet.crank")}" data-line="6" data-side="now"`);
  });

  it("follow what is typed against the last commit, and show what was there", async () => {
    git("init", "--quiet", "--initial-branch=main", ".");
    git("add", "--all");
    git("commit", "--quiet", "--message=Bring the car");
    git("branch", "wet-work");
    const text = await club.open("wet.crank");
    const asked: CompareParams = { uri: club.uri("wet.crank"), with: { kind: "revision", revision: "HEAD" } };
    expect(await compare(asked)).toMatchObject({ kind: "page", headline: "Nothing differs." });
    await club.wire.change(club.uri("wet.crank"), text.replace("rate 45 N/mm", "rate 50 N/mm"));
    const page = await compare(asked);
    expect(bodyOf(page)).toMatch(
      /<td class="was">45 N\/mm<\/td><td class="is">50 N\/mm<\/td><td>\+5&nbsp;N\/mm, \+11\.1&nbsp;%<\/td>/,
    );
    // What is committed meanwhile is seen where git is asked anew, not while only text is typed.
    club.write("wet.crank", text.replace("rate 45 N/mm", "rate 48 N/mm"));
    git("commit", "--quiet", "--all", "--message=Settle on 48");
    expect(bodyOf(await compare({ ...asked, again: true }))).toContain('<td class="was">45 N/mm</td>');
    expect(bodyOf(await compare(asked))).toContain('<td class="was">48 N/mm</td>');
    git("reset", "--quiet", "--hard", "wet-work");
    expect(page).toMatchObject({ uses: expect.arrayContaining([club.uri("quill.crank"), club.uri("parts.crank")]) });
    expect(await compare({ ...asked, with: { kind: "revision", revision: "wet-work" } })).toMatchObject({
      kind: "page",
    });
    const committed = await club.wire.request<CommittedTextAnswer>(COMMITTED, {
      uri: club.uri("wet.crank"),
      revision: "HEAD",
    });
    expect(committed).toEqual({ text });
    const choices = await club.wire.request<CompareChoices>(CHOICES, { uri: club.uri("wet.crank") });
    expect(choices.revisions).toEqual({
      kind: "git",
      branches: expect.arrayContaining(["main", "wet-work"]),
      tags: [],
    });
  });

  it("say in a sentence what cannot be compared", async () => {
    const uri = club.uri("wet.crank");
    const why = async (params: Omit<CompareParams, "uri"> & { uri?: string }): Promise<string> =>
      bodyOf(await compare({ uri, ...params }));
    expect(await why({ with: { kind: "revision", revision: "nowhere" } })).toMatch(
      /^There is no revision "nowhere" in .*\.$/,
    );
    expect(await why({ uri: club.uri("parts.crank"), with: { kind: "revision", revision: "HEAD" } })).toBe(
      "parts.crank declares no car and no set-up.",
    );
    club.write("new.crank", 'use "quill.crank"\nsetup new from quill { front.third.rate 45 N/mm }\n');
    expect(await why({ uri: club.uri("new.crank"), with: { kind: "revision", revision: "HEAD" } })).toMatch(
      /^New\.crank is not in HEAD \([0-9a-f]{8}\)\.$/i,
    );
    expect(await why({ uri: "untitled:Untitled-1", with: { kind: "revision", revision: "HEAD" } })).toMatch(
      /declares no car/,
    );
    rmSync(join(club.folder, "new.crank"));
  });
});
