/**
 * The workflow of samples/review: what it asks for, and each of its `run:` steps in a shell, on a real repository, with a
 * stand-in for the hosted service: its variables, its files and its command `gh`. Nothing reaches a network.
 */
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { parse } from "yaml";
import { sarifProblems } from "../cli/sarif.js";
import { onPath, openReviewed } from "./on-path.js";
import type { Ran, Repo } from "./repository.js";

interface Step {
  readonly name?: string;
  readonly uses?: string;
  readonly run?: string;
  readonly if?: string;
  readonly env?: Readonly<Record<string, string>>;
}
interface Job {
  readonly permissions: Readonly<Record<string, string>>;
  readonly env: Readonly<Record<string, string>>;
  readonly steps: readonly Step[];
  readonly "timeout-minutes": number;
}
interface Workflow {
  readonly on: Readonly<Record<string, unknown>>;
  readonly permissions: unknown;
  readonly env: Readonly<Record<string, string>>;
  readonly jobs: Readonly<Record<string, Job>>;
}

const text = readFileSync("samples/review/.github/workflows/set-ups.yml", "utf8");
const workflow = parse(text) as Workflow;
const [job] = Object.values(workflow.jobs);
const steps = job?.steps ?? [];

describe("the workflow", () => {
  it("asks for no more rights than its steps use, and gives a fork's code none of its own", () => {
    expect(workflow.permissions).toEqual({});
    expect(job?.permissions).toEqual({ contents: "read", "pull-requests": "write", "security-events": "write" });
    expect(Object.keys(workflow.on)).toEqual(["pull_request", "push"]);
    expect(text).not.toMatch(/secrets\./);
    expect(job?.["timeout-minutes"]).toBeLessThanOrEqual(15);
  });

  it("names every action by its full version", () => {
    const used = steps.flatMap(({ uses }) => uses ?? []);
    expect(used.length).toBeGreaterThan(2);
    for (const action of used) expect(action).toMatch(/^[\w-]+\/[\w/-]+@v\d+\.\d+\.\d+$/);
  });

  it("puts nothing that others write into a script: it comes by variables", () => {
    for (const { run = "" } of steps) expect(run).not.toContain("${{");
  });

  it("leaves out, on a fork, what a fork may not do", () => {
    const writing = steps.filter(({ run = "", uses = "" }) => run.includes("gh api") || uses.includes("upload-sarif"));
    expect(writing.map(({ if: when }) => when)).toEqual([
      "github.event_name == 'pull_request' && env.IS_OWN == 'true'",
      "github.event_name == 'push' || env.IS_OWN == 'true'",
    ]);
  });
});

/** Keeps the comments of one pull request in a file, and says what it was asked. */
const standIn = (folder: string): string => `
echo "$@" >> "${folder}/asked"
body=""
for word in "$@"; do case $word in body=@*) body=\${word#body=@};; esac; done
case " $* " in
  *" POST "*) cp "$body" "${folder}/comment" ;;
  *" PATCH "*) cp "$body" "${folder}/comment"; echo patched >> "${folder}/patched" ;;
  *) if [ -f "${folder}/comment" ]; then echo 4711; fi ;;
esac`;

describe("its steps", () => {
  let repo: Repo;
  let service: string;
  beforeAll(() => {
    repo = openReviewed("quill");
    service = join(repo.folder, ".git", "service é");
    mkdirSync(service);
    onPath(repo.bin, "gh", standIn(service));
    execFileSync("npm", ["pack", "--silent", "--pack-destination", service], { stdio: "pipe" });
    repo.commit("Bring the car");
    // What `actions/checkout` leaves: the base as a remote branch, the change checked out.
    repo.git("update-ref", "refs/remotes/origin/main", "HEAD");
    repo.git("switch", "--quiet", "--create", "change");
    repo.write("quill/wet.crank", repo.read("quill/wet.crank").replace("front.third.rate 45", "front.third.rate 52"));
    repo.commit("Stiffen the front in heave");
  }, 60_000);
  afterAll(() => repo.remove());

  const run = (name: string): Ran => {
    const step = steps.find((one) => one.name === name);
    expect(step?.run).toBeDefined();
    return repo.run("bash", ["--noprofile", "--norc", "-eo", "pipefail", "-c", step?.run ?? ""], {
      env: {
        CI: "true",
        GITHUB_ACTIONS: "true",
        GITHUB_REPOSITORY: "club/cars",
        GITHUB_STEP_SUMMARY: join(service, "summary.md"),
        GH_TOKEN: "none",
        PULL_REQUEST: "7",
        BASE_REF: "main",
        BELLCRANK_PACKAGE: join(service, "bellcrank-0.1.0.tgz"),
        npm_config_prefix: join(service, "global"),
        npm_config_offline: "true",
        npm_config_cache: join(service, "cache"),
        npm_config_update_notifier: "false",
      },
    });
  };

  it("install the package without a network, and its command runs", () => {
    const { code, err } = run("Install");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    const installed = join(service, "global", "bin", "bellcrank");
    expect(repo.run(installed, ["--version"])).toMatchObject({ code: 0, out: "0.1.0\n" });
    expect(repo.run(installed, ["check", "quill"]).code).toBe(0);
    expect(resolve(installed)).toContain(repo.folder);
  }, 60_000);

  it("tell what changed in the step summary and as annotations", () => {
    const { code, out } = run("Compare");
    expect(code).toBe(0);
    const summary = readFileSync(join(service, "summary.md"), "utf8");
    expect(summary).toMatch(/^<!-- bellcrank compare -->\n/);
    expect(summary).toMatch(/front\.third\.rate/);
    expect(out).toMatch(/^::(notice|warning|error) file=quill\/wet\.crank,line=\d+/m);
  });

  it("write one comment and keep it up to date", () => {
    expect(run("Comment").code).toBe(0);
    const comment = () => readFileSync(join(service, "comment"), "utf8");
    expect(comment()).toBe(readFileSync(join(repo.folder, "reports/comparison.md"), "utf8"));
    expect(existsSync(join(service, "patched"))).toBe(false);
    writeFileSync(join(repo.folder, "reports/comparison.md"), "<!-- bellcrank compare -->\nnewer\n");
    expect(run("Comment").code).toBe(0);
    expect(comment()).toContain("newer");
    expect(readFileSync(join(service, "patched"), "utf8")).toBe("patched\n");
    const asked = readFileSync(join(service, "asked"), "utf8");
    expect(asked).toContain("repos/club/cars/issues/7/comments");
    expect(asked).toContain('startswith("<!-- bellcrank compare -->")');
  });

  it("write findings as SARIF for the upload, and fail on none of them", () => {
    expect(run("Findings").code).toBe(0);
    expect(sarifProblems(readFileSync(join(repo.folder, "reports/findings.sarif"), "utf8"))).toEqual([]);
  });

  it("pass a sound change, and fail on another layout, on an error, but not on one that is known", () => {
    expect(run("Check")).toMatchObject({ code: 0 });
    const sound = repo.read("quill/wet.crank");
    repo.write("quill/wet.crank", sound.replace("rate 52", "rate    52"));
    expect(run("Check").code).toBe(1);
    repo.write("quill/wet.crank", sound.replace("front.third.rate", "front.thrid.rate"));
    const { code, out } = run("Check");
    expect(code).toBe(1);
    expect(out).toContain("::error file=quill/wet.crank,line=6");
    repo.bellcrank("check", "--baseline", "known-findings.json", "--write-baseline");
    expect(run("Check").code).toBe(0);
    expect(run("Findings").code).toBe(0);
  });
});
