/**
 * The page of each rule: the doc comment at the head of its file, put together into `PAGES.md`
 * (committed; a test holds it fresh, and `vitest -u` writes it anew). Examples in a page are fenced as `crank wrong` and `crank right`.
 *
 * Invariant: text in, text out; reading the rule files is the test's and the build's business.
 */
import manifest from "../../package.json" with { type: "json" };

/** Where the pages are in the repository and in the packaged extension. */
export const pagesPath = "server/findings/PAGES.md";

export interface RulePage {
  readonly id: string;
  readonly title: string;
  /** Markdown, without the heading. */
  readonly body: string;
}

export interface Example {
  readonly verdict: "wrong" | "right";
  readonly text: string;
}

/** The page in a rule file's source: its first doc comment. */
export function pageIn(id: string, title: string, source: string): RulePage | undefined {
  const comment = /^\s*\/\*\*\r?\n([\s\S]*?)\n\s*\*\//.exec(source)?.[1];
  if (comment === undefined) return undefined;
  const body = comment.replace(/^[ \t]*\* ?/gm, "").trim();
  return { id, title, body };
}

/** The examples in a page, in order. */
export function examplesIn(page: RulePage): readonly Example[] {
  return [...page.body.matchAll(/^```crank (wrong|right)\n([\s\S]*?)^```$/gm)].map((match) => ({
    verdict: match[1] === "wrong" ? "wrong" : "right",
    text: match[2] ?? "",
  }));
}

/** The whole of `PAGES.md`. */
export function renderPages(pages: readonly RulePage[]): string {
  const list = pages.map((page) => `- [${page.id}](#${page.id}): ${page.title}`).join("\n");
  const sections = pages.map(section).join("\n");
  return `# What the checks say\n\n${introduction}\n\n${list}\n\n${sections}`;
}

const introduction = [
  "One section for each check: what it means, why it matters, an example that is wrong and one that is right.",
  "The examples are run by the tests; the files that they use stand in `samples/broken`.",
  "Generated from the head of each file under `server/findings/rules`; edit it there.",
].join("\n");

function section(page: RulePage): string {
  const body = page.body
    .replace(/^```crank wrong$/gm, "Wrong:\n\n```crank")
    .replace(/^```crank right$/gm, "Right:\n\n```crank");
  return `## ${page.id}\n\n**${page.title}**\n\n${body}\n`;
}

/** The page's place relative to the repository, for an editor command that opens the bundled file. */
export function pageOf(id: string): string {
  return `${pagesPath}#${id}`;
}

/** The page on the project's home page; undefined as long as the package names none. */
export function ruleUrl(id: string): string | undefined {
  const { homepage } = manifest as { readonly homepage?: string };
  return homepage === undefined ? undefined : new URL(pageOf(id), withSlash(homepage)).href;
}

function withSlash(url: string): string {
  return url.endsWith("/") ? url : `${url}/`;
}
