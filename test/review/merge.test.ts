/** The merge driver of samples/review in real merges and rebases. */
import { rmSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openReviewed } from "./on-path.js";
import type { Repo } from "./repository.js";

describe("the merge driver", () => {
  let repo: Repo;
  beforeEach(() => {
    repo = openReviewed("quill");
    repo.write("quill/nass & kühl.crank", repo.read("quill/wet.crank").replace("quarrow-wet", "quarrow-cold"));
    repo.commit("Bring the car");
  });
  afterEach(() => repo.remove());

  const wet = "quill/wet.crank";
  const edit = (name: string, from: string, to: string): void => {
    expect(repo.read(name)).toContain(from);
    repo.write(name, repo.read(name).replace(from, to));
  };
  /** One commit on a branch of its own, one on main. */
  const diverge = (ours: () => void, theirs: () => void): void => {
    repo.git("switch", "--quiet", "--create", "theirs");
    theirs();
    repo.commit("Theirs");
    repo.git("switch", "--quiet", "main");
    ours();
    repo.commit("Ours");
  };
  const merge = () => repo.run("git", ["merge", "--no-edit", "theirs"]);

  it("merges neighbouring lines that git's own merge would not", () => {
    diverge(
      () => edit(wet, "front.third.rate 45", "front.third.rate 47"),
      () => edit(wet, "front.corner-bar.fit TB-105", "front.corner-bar.fit TB-110"),
    );
    const { code, err } = merge();
    expect(code).toBe(0);
    expect(err).toContain("taken over from theirs: setup quarrow-wet > front.corner-bar.fit");
    expect(repo.read(wet)).toContain("front.third.rate 47 N/mm\n  front.corner-bar.fit TB-110\n");
    expect(repo.git("status", "--porcelain")).toBe("");
    expect(repo.bellcrank("check", "quill").code).toBe(0);
  });

  it("merges two changes of one line, and paths with blanks, signs and umlauts", () => {
    const name = "quill/nass & kühl.crank";
    diverge(
      () => edit(name, "speed 62 km/h", "speed 60 km/h"),
      () => edit(name, "lateral 1.05 g", "lateral 1.1 g"),
    );
    expect(merge().code).toBe(0);
    expect(repo.read(name)).toContain("case hairpin { speed 60 km/h, lateral 1.1 g }");
  });

  it("stops at one property changed twice, and shows what both do to the car", () => {
    diverge(
      () => edit(wet, "front.third.rate 45", "front.third.rate 50"),
      () => edit(wet, "front.third.rate 45", "front.third.rate 41"),
    );
    const { code, err } = merge();
    expect(code).toBe(1);
    expect(err).toContain(`${wet}: setup quarrow-wet > front.third.rate is changed on both sides`);
    expect(repo.read(wet)).toMatch(
      /\n<<<<<<< ours: .*[Ff]ront heave rate.*\n {2}front\.third\.rate 50 N\/mm\n=======\n {2}front\.third\.rate 41 N\/mm\n>>>>>>> theirs: .*[Ff]ront heave rate.*\n/,
    );
    expect(repo.git("status", "--porcelain")).toContain(`UU ${wet}`);
    // Settled by hand, it goes on as any merge does.
    repo.write(wet, repo.read(wet).replace(/<<<<<<<.*\n(.*\n)=======\n.*\n>>>>>>>.*\n/, "$1"));
    repo.git("add", "--all");
    repo.git("commit", "--quiet", "--no-edit");
    expect(repo.bellcrank("format", "--check", "quill").code).toBe(0);
    expect(repo.read(wet)).toContain("front.third.rate 50 N/mm");
  });

  it("shows what a part does to the cars that it is fitted to", () => {
    const name = "quill/parts.crank";
    const bar = /torsion-bar TB-110 \{ diameter ([\d.]+) mm/;
    const diameter = bar.exec(repo.read(name))?.[1] ?? "";
    const to = (mm: string) => () => edit(name, `TB-110 { diameter ${diameter} mm`, `TB-110 { diameter ${mm} mm`);
    diverge(to("11.4"), to("10.6"));
    const { code, err } = merge();
    expect(code).toBe(1);
    expect(err).toMatch(/ours {4}diameter 11\.4 mm: quarrow-dry: Front roll stiffness \+/);
    expect(repo.read(name)).toMatch(/<<<<<<< ours: .+\n.*11\.4 mm.*\n=======\n.*10\.6 mm.*\n>>>>>>> theirs: .+\n/);
  });

  it("keeps a line that one took out and the other changed", () => {
    diverge(
      () => edit(wet, "  front.side.fit V-18\n", ""),
      () => edit(wet, "front.side.fit V-18", "front.side.fit V-16"),
    );
    expect(merge().code).toBe(1);
    expect(repo.read(wet)).toMatch(/<<<<<<< ours \(taken out\).*\n=======\n {2}front\.side\.fit V-16\n>>>>>>> theirs/);
  });

  it("replays a branch in a rebase", () => {
    diverge(
      () => edit(wet, "front.third.rate 45", "front.third.rate 47"),
      () => {
        edit(wet, "front.corner-bar.fit TB-105", "front.corner-bar.fit TB-110");
        repo.commit("Theirs, first");
        edit(wet, "rear.bar.blade.position 1", "rear.bar.blade.position 2");
      },
    );
    repo.git("switch", "--quiet", "theirs");
    repo.git("rebase", "--quiet", "main");
    for (const part of ["rate 47", "TB-110", "rear.bar.blade.position 2"]) expect(repo.read(wet)).toContain(part);
    expect(repo.git("log", "--format=%s").trim().split("\n")).toEqual([
      "Theirs",
      "Theirs, first",
      "Ours",
      "Bring the car",
    ]);
  });

  it("stops a merge of what does not go together: one renames an eye, the other fixes a damper to it", () => {
    const name = "quill/quill.crank";
    const extra =
      "damper extra for heave {\n      fit V-22\n      between left.rocker.third and right.rocker.third\n    }\n    ";
    diverge(
      () => {
        const text = repo.read(name);
        const front = text.slice(0, text.indexOf("axle rear"));
        const renamed = front.replaceAll("rocker.third", "rocker.middle").replace("eye third", "eye middle");
        expect(renamed).not.toBe(front);
        repo.write(name, renamed + text.slice(front.length));
      },
      () => edit(name, "damper side for corner {", `${extra}damper side for corner {`),
    );
    const { code, err } = merge();
    expect(code).toBe(1);
    expect(err).toMatch(/quill\/quill\.crank:\d+: error that neither version has by itself: .*third/);
    expect(repo.read(name)).toContain("eye middle");
    expect(repo.read(name)).toContain("damper extra");
    expect(repo.read(name)).not.toContain("<<<<<<<");
  });

  it("leaves a version that cannot be read to git's own merge", () => {
    diverge(
      () => edit(wet, "remove rear.roll-damper", "remove rear.roll-damper ((("),
      () => edit(wet, "# wet.crank: rain", "# wet.crank: much rain"),
    );
    const { code, err } = merge();
    expect(code).toBe(0);
    expect(err).toContain("our version cannot be read whole, so it is merged by lines");
    expect(repo.read(wet)).toContain("much rain");
    expect(repo.read(wet)).toContain("(((");
  });

  it("and so with a conflict of lines", () => {
    diverge(
      () => edit(wet, "front.third.rate 45", "front.third.rate 45 ((("),
      () => edit(wet, "front.third.rate 45", "front.third.rate 41"),
    );
    expect(merge().code).toBe(1);
    expect(repo.read(wet)).toMatch(/<<<<<<< ours\n[^]*\(\(\([^]*=======\n[^]*rate 41[^]*>>>>>>> theirs/);
  });

  it("leaves all of it to git where the command is not installed", () => {
    diverge(
      () => edit(wet, "front.third.rate 45", "front.third.rate 47"),
      () => edit(wet, "# wet.crank: rain", "# wet.crank: much rain"),
    );
    rmSync(join(repo.bin, "bellcrank"));
    expect(merge()).toMatchObject({ code: 0 });
    expect(repo.read(wet)).toContain("much rain");
    expect(repo.read(wet)).toContain("rate 47");
    expect(repo.git("log", "-p", "--format=%s", "-1", "theirs")).toContain("+# wet.crank: much rain");
  });

  it("says what it cannot do, and ends with 2", () => {
    expect(repo.bellcrank("merge", "nowhere", wet, wet)).toMatchObject({
      code: 2,
      err: "bellcrank: nowhere: cannot be read (ENOENT)\n",
    });
    expect(repo.bellcrank("merge", wet, wet, wet, wet, "--marker-size", "many")).toMatchObject({ code: 2 });
    const noise = Buffer.from([0xff, 0xfe, 0x00, 0x80]);
    for (const name of ["o", "a", "b"]) repo.write(name, Buffer.concat([noise, Buffer.from(name)]));
    const { code, err } = repo.bellcrank("merge", "o", "a", "b");
    expect(code).toBe(2);
    expect(err).toContain("not all versions are UTF-8 text");
    expect(err).toMatch(/cannot merge binary/i);
  });
});

describe("the diff driver", () => {
  it("shows no difference of layout, and names the block of a hunk", () => {
    const repo = openReviewed("quill");
    repo.commit("Bring the car");
    const text = repo.read("quill/quill.crank");
    repo.write("quill/quill.crank", text.replace(/\n {2}/g, "\n      ").replaceAll(" mm\n", "   mm\n"));
    expect(repo.git("diff")).toBe("");
    repo.write("quill/wet.crank", repo.read("quill/wet.crank").replace("front.third.rate 45", "front.third.rate   46"));
    const diff = repo.git("diff", "--unified=1");
    expect(diff).toContain("-  front.third.rate 45 N/mm\n+  front.third.rate 46 N/mm\n");
    expect(diff).toMatch(/@@ setup quarrow-wet from quill/);
    // What is no text is shown as far as git can, and the rest with it.
    repo.write("quill/dry.crank", Buffer.from("# tr\xfcb\nsetup dry from quill {\n}\n", "latin1"));
    expect(repo.git("diff", "--unified=0")).toContain("+  front.third.rate 46 N/mm\n");
    repo.remove();
  });
});
