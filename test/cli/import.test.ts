import { readFileSync } from "node:fs";
import { join } from "node:path";
import sax from "sax";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { format, parse } from "../../grammar/index.js";
import { openWorkshop, type Workshop } from "./run-cli.js";

/** A made-up damper, N over mm/s: a knee in bump, none in rebound. */
const bump = (v: number): number => (v < 60 ? 6 * v : 360 + 1.5 * (v - 60));
const rebound = (v: number): number => 7 * v;
const law = (v: number): number => (v >= 0 ? bump(v) : -rebound(-v));

describe("bellcrank import", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
  });
  afterAll(() => shop.remove());

  const read = (name: string): string => readFileSync(join(shop.folder, name), "utf8");
  const made = (content: string | Buffer, ...more: readonly string[]) => {
    shop.write("bench ü.csv", content);
    return shop.run("import", "bench ü.csv", ...more);
  };
  /** `word { 50 mm/s: 320 N, … }` of a text as pairs. */
  const rows = (text: string, word: string): readonly (readonly [number, number])[] => {
    const block = new RegExp(`\\b${word} \\{([^}]*)\\}`).exec(text)?.[1] ?? "";
    return [...block.matchAll(/(-?[\d.]+) [^:\s]+: (-?[\d.]+) /g)].map(([, x, y]) => [Number(x), Number(y)]);
  };
  const speeds = Array.from({ length: 41 }, (_, i) => (i - 20) * 10);
  const table = (force: (v: number) => number): string =>
    ["velocity [mm/s], force [N]", ...speeds.map((v) => `${v}, ${force(v).toFixed(3)}`)].join("\n");

  it("finds a damper's knee with few points, as text that is laid out and checks clean", () => {
    const fine = made(table(law), "--name", "D-1", "--tolerance", "1%");
    expect(fine.code).toBe(0);
    expect(rows(fine.out, "rebound")).toEqual([[200, 1400]]);
    const points = rows(fine.out, "bump");
    expect(points.length).toBeLessThan(8);
    expect(points.at(-1)).toEqual([200, 570]);
    for (const [v, f] of points) expect(Math.abs(f - bump(v))).toBeLessThanOrEqual(0.01 * 1400);
    expect(fine.err).toMatch(/# bump: \d points for 20 measured, residual .* N at most \(tolerance 14 N\)/);
    expect(format(fine.out)).toBe(fine.out);
    shop.write("shelf/shelf.crank", fine.out);
    expect(shop.run("check", "shelf", "--fail-on", "warning")).toMatchObject({
      code: 0,
      out: "no findings in 1 file\n",
    });
  });

  it("takes the middle of a loop, and the gas off it", () => {
    // A sine of 25 mm: friction of 15 N and gas of 80 N; the damping lags, so that both branches differ.
    const samples = Array.from({ length: 720 }, (_, i) => {
      const angle = (i * Math.PI) / 360;
      const v = 200 * Math.cos(angle);
      const lag = 0.06 * law(200) * Math.sin(angle);
      return `${(25 * Math.sin(angle)).toFixed(4)}\t${v.toFixed(4)}\t${(law(v) + 80 + Math.sign(v) * 15 - lag).toFixed(4)}`;
    });
    const { code, out, err } = made(["Displacement (mm)\tVelocity (mm/s)\tForce (N)", ...samples].join("\r\n"));
    expect(code).toBe(0);
    const gas = Number(/gas-force ([\d.]+) N/.exec(out)?.[1]);
    expect(Math.abs(gas - 80)).toBeLessThan(12);
    for (const [v, f] of rows(out, "bump").filter(([speed]) => speed > 20))
      expect(Math.abs(f - bump(v) - 15)).toBeLessThan(35);
    for (const [v, f] of rows(out, "rebound").filter(([speed]) => speed > 20))
      expect(Math.abs(f - rebound(v) - 15)).toBeLessThan(50);
    expect(err).toContain("entered as the force of its gas");
    expect(err).toContain("a loop, friction or noise");
  });

  it.each([
    ["commas", "velocity [mm/s],force [N]\n-100,-700\n100,420\n200,570\n"],
    ["semicolons and decimal commas", "velocity [mm/s];force [N]\n-100,0;-700,0\n100,0;4,2e2\n200;570\n"],
    [
      "tabs, a byte-order mark and Windows line ends",
      "\ufeffvelocity [mm/s]\tforce [N]\r\n-100\t-700\r\n100\t420\r\n200\t570\r\n",
    ],
    [
      "comments, quotes, empty lines and cells",
      '# bench 3\n\n"velocity [mm/s]",force [N],\n-100,-700,\n# hot\n"100",420,\n200,570,,\n',
    ],
    ["units in a line of their own", "velocity,force\nmm/s,N\n-100,-700\n100,420\n200,570\n"],
    [
      "units behind a low line, and columns that are not asked for",
      "t_s,Velocity_mm/s,Force_N\n0,-100,-700\n1,100,420\n2,200,570\n",
    ],
    ["the sign of force turned", "velocity [mm/s], force [N]\n-100, 700\n100, -420\n200, -570\n"],
    ["true minus signs", "velocity [mm/s],force [N]\n\u2212100,\u2212700\n100,420\n200,570\n"],
    ["a column for each direction", "speed (mm/s),bump (N),rebound (N)\n100,420,700\n200,570,1400\n"],
  ])("reads %s", (_what, content) => {
    const { code, out } = made(content, "--tolerance", "0.1%");
    expect(code).toBe(0);
    expect(rows(out, "bump")).toEqual([
      [100, 420],
      [200, 570],
    ]);
    expect(rows(out, "rebound").at(-1)?.[1]).toBeGreaterThanOrEqual(700);
  });

  it("takes rows of one speed by their mean and says so", () => {
    const { out, err } = made("velocity [mm/s],force [N]\n-100,-700\n100,410\n100,430\n200,570\n", "--tolerance", "2%");
    expect(rows(out, "bump")[0]).toEqual([100, 420]);
    expect(err).toContain("2 rows share their value with another");
  });

  it("takes a closed and an open column as a valving with a clicker, and others as one valving each", () => {
    const closed = "v [mm/s],0 clicks [N],18 clicks [N]\n-100,-700,-200\n-200,-1200,-300\n100,420,100\n200,570,150\n";
    const { out, err } = made(closed, "--name", "V-1", "--clicks", "6");
    expect(out).toMatch(/bump \{\n\s+clicks 6 of 18\n\s+closed \{ .* \}\n\s+open \{ .* \}/);
    expect(err).not.toContain("--clicks says");
    expect(made(closed, "--clicks", "20").err).toContain("--clicks 20: the table goes to 18");
    const three = made(
      "v [mm/s],3 clicks [N],6 clicks [N],9 clicks [N]\n-100,-700,-500,-200\n100,420,300,100\n",
      "--name",
      "V",
    );
    expect(three.out.match(/valving V-[\w-]+ \{/g)).toEqual([
      "valving V-3-clicks {",
      "valving V-6-clicks {",
      "valving V-9-clicks {",
    ]);
    for (const text of [out, three.out]) {
      shop.write("clicker/clicker.crank", text);
      expect(shop.run("check", "clicker", "--fail-on", "warning").code).toBe(0);
    }
    const into = made(
      "v [mm/s],3 clicks [N],6 clicks [N]\n-100,-700,-500\n100,420,300\n",
      "--into",
      "tern/parts.crank",
      "--element",
      "D-glued",
    );
    expect(into).toMatchObject({ code: 2, err: expect.stringContaining("choose one with --column") });
  });

  it("makes a rate of a straight spring, in the units of the bench, and a curve of another", () => {
    const straight = made("deflection [in], load [lbf]\n0, 0.4\n0.5, 60\n1, 120.3\n1.5, 179.8\n");
    expect(straight.out).toMatch(/^rate 119\.\d lbf\/in\n$/);
    expect(straight.err).toMatch(/a straight line of .* passes all 4 points/);
    const stop = shop.run("import", "tern/stop.csv", "--tolerance", "1%");
    expect(rows(stop.out, "curve")[0]).toEqual([0, 0]);
    expect(rows(stop.out, "curve").at(-1)).toEqual([0.3, 190]);
  });

  it("writes a damper into a part and a ratio into an element; what comes of it checks clean", () => {
    const damper = shop.run("import", "tern/damper.csv", "--into", "tern/parts.crank", "--element", "D-glued");
    expect(damper).toMatchObject({ code: 0, out: "wrote D-glued into tern/parts.crank\n" });
    expect(read("tern/parts.crank")).toMatch(
      /valving D-glued \{\n\s+bump \{ [^}]* \}\n\s+rebound \{ [^}]* \}\n\s+gas-force 9 lbf/,
    );
    const before = read("tern/tern.crank");
    const ratio = shop.run(
      "import",
      "tern/rear-ratio.csv",
      "--into",
      "tern/tern.crank",
      "--element",
      "rear.coil",
      "--tolerance",
      "0.5%",
    );
    expect(ratio.code).toBe(0);
    const after = read("tern/tern.crank");
    expect(after).toContain("ratio { -1.25 in: -1.101 in, ");
    // One statement changed, and nothing else.
    expect(after.replace(/ {6}ratio \{.*\}/, '      ratio curve from csv "rear-ratio.csv"')).toBe(before);
    expect(shop.run("check", "tern")).toMatchObject({ code: 0, out: "no findings in 5 files\n" });
    expect(parse(after).problems).toEqual([]);
  });

  it("writes into a set-up as overrides, and once more in their place", () => {
    const written = (...more: readonly string[]) =>
      shop.run("import", "tern/damper.csv", "--into", "quill/dry.crank", "--element", "front.side", ...more);
    const before = read("quill/dry.crank");
    expect(written()).toMatchObject({ code: 0, out: "wrote front.side into quill/dry.crank\n" });
    const first = read("quill/dry.crank");
    expect(first.replace(/ {2}front\.side\.(bump|rebound) .*\n/g, "")).toBe(before);
    expect(written("--tolerance", "0.1%").code).toBe(0);
    expect(read("quill/dry.crank").match(/front\.side\.bump/g)).toHaveLength(1);
    expect(read("quill/dry.crank")).not.toBe(first);
    expect(written("--setup", "nobody").err).toContain('no one set-up "nobody"');
    expect(shop.run("import", "tern/damper.csv", "--into", "quill/dry.crank", "--element", "front.sied").code).toBe(2);
    shop.write("quill/dry.crank", before);
  });

  it("comes back out of the car as it was measured, within the tolerance", () => {
    const before = read("quill/dry.crank");
    const into = ["--into", "quill/dry.crank", "--element", "front.side", "--tolerance", "1%"];
    expect(shop.run("import", "tern/damper.csv", ...into).code).toBe(0);
    const { out } = shop.run("curves", "quill/dry.crank", "--element", "front.side", "--format", "json");
    shop.write("quill/dry.crank", before);
    const drawn = JSON.parse(out).curves[0] as { x: { unit: string }; y: { unit: string }; points: [number, number][] };
    expect([drawn.x.unit, drawn.y.unit]).toEqual(["mm/s", "N"]);
    // Exact: an inch is 25.4 mm, a pound of force 4.4482216152605 N.
    const [inch, pound] = [25.4, 4.4482216152605];
    const forceAt = (speed: number): number => {
      const next = Math.max(
        1,
        drawn.points.findIndex(([x]) => x >= speed),
      );
      const [[x0, y0], [x1, y1]] = [drawn.points[next - 1] ?? [0, 0], drawn.points[next] ?? [0, 0]];
      return y0 + ((y1 - y0) * (speed - x0)) / (x1 - x0);
    };
    const measured = read("tern/damper.csv")
      .split("\n")
      .flatMap((line) => /^(-?\d+), (-?\d+)$/.exec(line)?.slice(1).map(Number) ?? []);
    expect(measured).toHaveLength(18);
    // One per cent of the largest, and what a straight line between the points of the drawing leaves.
    for (let i = 0; i < measured.length; i += 2)
      expect(Math.abs(forceAt((measured[i] ?? 0) * inch) / pound - (measured[i + 1] ?? 0))).toBeLessThan(0.66 + 0.2);
  });

  it("makes a ratio of a rocker's angle, and plots where it is asked to", () => {
    const { out, err } = made("wheel travel [mm];rocker [deg]\n-20;-8,1\n0;0\n20;8,3\n", "--mode", "heave", "--plot");
    expect(out).toMatch(/^ratio heave \{ -20 mm: -8\.1 deg, .*20 mm: 8\.3 deg \}\n$/);
    expect(err).toContain("deflection, deg over travel, mm");
    expect(err).toContain("┤");
    expect(err).toContain("the mean ratio is 0.41 deg/mm, over -20 mm to 20 mm");
  });

  it("leaves a file alone that it cannot write into, or that would be wrong then", () => {
    const before = read("quill/quill.crank");
    const where = ["--into", "quill/quill.crank", "--element"];
    expect(shop.run("import", "tern/damper.csv", ...where, "front.nothing").err).toContain(
      "--element front.nothing: quill/quill.crank has no element or part of that name with a block",
    );
    // A damper's lines in a spring.
    const wrong = shop.run("import", "tern/damper.csv", ...where, "front.third");
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain("nothing is written, since it would be wrong");
    expect(read("quill/quill.crank")).toBe(before);
    expect(shop.run("import", "tern/damper.csv", "--into", "quill/quill.crank").err).toContain("go together");
  });

  it("draws measured points and curve", () => {
    const { code } = shop.run("import", "tern/damper.csv", "--svg", "fit ü.svg");
    expect(code).toBe(0);
    const svg = read("fit ü.svg");
    const names: string[] = [];
    const parser = sax.parser(true);
    parser.onopentag = ({ name }) => names.push(name);
    parser.write(svg).close();
    expect(names).toContain("path");
    expect(svg).not.toMatch(/NaN|Infinity/);
    expect(svg).toContain("measured");
    expect(shop.run("import", "tern/damper.csv", "--svg", "no/such/fit.svg")).toMatchObject({ code: 2 });
  });

  it("tells bad rows by their lines, and leaves them out where it may", () => {
    const content = "# c\nvelocity [mm/s],force [N]\n-100,-700\n100,n/a\n100,420\n200,570,9,9\n300,\n200,570\n";
    const { code, err } = made(content);
    expect(code).toBe(2);
    expect(err).toBe(
      'bellcrank: bench ü.csv: line 4: "n/a" is no number (force); line 6: 4 columns, and the header has 2; line 7: "" is no number (force); --skip-bad leaves such rows out\n',
    );
    const skipped = made(content, "--skip-bad");
    expect(skipped.code).toBe(0);
    expect(skipped.err).toContain('left out: line 4: "n/a" is no number (force)');
  });

  it.each([
    ["", "it holds no rows"],
    ["velocity [mm/s],force [N]\n", "it has fewer than two rows of numbers"],
    ["1,2\n3,4\n", "line 1: there is no header; say what the columns are with --units"],
    ["velocity,force\n1,2\n3,4\n", "two columns with units are needed"],
    ["a [mm],b [mm/s]\n1,2\n3,4\n", "its columns are in mm and mm/s"],
    ["velocity [mm/s],force [N]\n-100,0\n100,0\n-50,0\n50,0\n", "no force that rises with speed"],
    [Buffer.from([0xff, 0xfe, 0x00]), "is not UTF-8 text"],
  ])("says what is wrong with %j and ends with 2", (content, words) => {
    const { code, err } = made(content);
    expect(code).toBe(2);
    expect(err).toContain(words);
    expect(err.split("\n")).toHaveLength(2);
  });

  it("says what is wrong with the command line", () => {
    expect(shop.run("import", "nowhere.csv").err).toBe("bellcrank: nowhere.csv: there is no such file\n");
    expect(shop.run("import", "tern").err).toContain("is a folder");
    for (const more of [
      ["--tolerance", "-1%"],
      ["--tolerance", "5 apples"],
      ["--units", "mm/s,apples"],
      ["--separator", "::"],
      ["--name", "1 2"],
      ["--clicks", "x"],
    ])
      expect(shop.run("import", "tern/damper.csv", ...more)).toMatchObject({ code: 2, out: "" });
    expect(made("1,2\n-3,-4\n5,6\n", "--units", "mm/s,N").code).toBe(0);
  });
});
