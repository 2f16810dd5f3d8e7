/** Measured curves from CSV files, as loggers, spreadsheets and people write them; what is wrong is named by its line. */
import { describe, expect, it } from "vitest";
import { Folder, root } from "./resolved.js";

const car = `car linnet {
  axle front {
    spring third for heave {
      curve from csv "third.csv"
      ratio 1
    }
  }
}
`;

function read(csv: string | undefined, text = car) {
  const files = { "car.crank": text, ...(csv === undefined ? {} : { "third.csv": csv }) };
  const { cars, problems, readsText } = new Folder(files).resolve("car.crank");
  const third = cars[0]?.axles.front?.elements.find(({ name }) => name === "third");
  const rows = third?.block.statements.find(({ word }) => word === "curve")?.block?.rows ?? [];
  const points = rows.map(({ key, value }) =>
    [key, value].map((one) => (one.kind === "number" ? Number(one.value.toPrecision(12)) : Number.NaN)),
  );
  const told = problems.filter(({ kind }) => kind === "csv" || kind === "file-not-found");
  return { points, told, readsText };
}

const curve = [
  [0, 0],
  [0.01, 900],
  [0.02, 2400],
];

describe("a measured curve", () => {
  it.each([
    ["commas", "travel [mm],force [N]\n0,0\n10,900\n20,2400\n"],
    ["blanks around the cells", "travel [mm] , force [N]\n 0 , 0\n10, 900\n20 ,2400"],
    ["semicolons and decimal commas", "travel [mm];force [N]\n0,0;0,0\n10,0;900\n20,00;2400,0\n"],
    ["tabs", "travel [mm]\tforce [N]\n0\t0\n10\t900\n20\t2400\n"],
    ["a byte order mark and Windows' line ends", "\ufefftravel [mm],force [N]\r\n0,0\r\n10,900\r\n20,2400\r\n"],
    ["old line ends", "travel [mm],force [N]\r0,0\r10,900\r20,2400"],
    ["quoted cells", '"travel [mm]","force [N]"\n"0","0"\n"10","900"\n"20","2400"\n'],
    ["a separator in quotes", '"travel, at the wheel [mm]","force, static [N]"\n0,0\n10,900\n20,2400\n'],
    ["quotes in quotes", '"the ""third"" [mm]",force [N]\n0,0\n10,900\n20,2400\n'],
    ["other units", "travel [cm];force [kN]\n0;0\n1;0,9\n2;2,4\n"],
    ["units in round brackets, or bare", "travel (mm),force N\n0,0\n10,900\n20,2400\n"],
    ["comments and empty lines", "# measured in April\n\ntravel [mm],force [N]\n# cold\n0,0\n\n10,900\n20,2400\n"],
    ["columns beyond the second", "travel [mm],force [N],note\n0,0,\n10,900,slow\n20,2400,slow\n"],
    ["separators left behind", "travel [mm],force [N],,\n0,0,,\n10,900,\n20,2400,,\n"],
    ["exponents and signs", "travel [mm],force [N]\n-0,0\n+1e1,9E2\n2.0e+1,2400.\n"],
  ])("is read with %s", (_, csv) => {
    const { points, told } = read(csv);
    expect(told).toEqual([]);
    expect(points).toEqual(curve);
  });

  it.each([
    ["an empty file", "", 0, "it is empty"],
    ["only comments", "# nothing\n\n", 0, "it is empty"],
    ["no header", "0,0\n10,900\n", 1, "its header has to name two columns with their units"],
    ["a header without units", "travel,force\n0,0\n10,900\n", 1, "its header has to name two columns"],
    ["a header of one column", "travel [mm]\n0\n10\n", 1, "its header has to name two columns"],
    ["a unit that nobody knows", "travel [mm],force [Nn]\n0,0\n10,900\n", 1, "its header has to name two columns"],
    [
      "units of another kind",
      "# cold\ntravel [mm],force [mm]\n0,0\n10,900\n",
      2,
      "in mm and mm, but mm against N or deg against N*m is due",
    ],
    ["one row", "travel [mm],force [N]\n0,0\n", 0, "fewer than two rows"],
    ["a word for a number", "travel [mm],force [N]\n0,0\n\nten,900\n", 4, "does not begin with two numbers"],
    ["a cell that is missing", "travel [mm],force [N]\n0,0\n10\n20,2400\n", 3, "does not begin with two numbers"],
    ["a number beyond all numbers", "travel [mm],force [N]\n0,0\n10,1e999\n", 3, "does not begin with two numbers"],
    ["a number too large for its unit", "travel [mm],force [kN]\n0,0\n10,1e306\n", 3, "too large for their units"],
    ["a step back", "travel [mm],force [N]\n0,0\n10,900\n10,950\n", 4, "does not rise from the row above"],
    ["decimal commas among commas", "travel [mm],force [N]\n0,0\n10,5,900,5\n", 3, "4 columns, and the header 2"],
    ["points that part thousands", "travel [mm];force [N]\n0;0\n10;1.234,5\n", 3, "does not begin with two numbers"],
  ])("with %s is told, and there is no curve", (_, csv, line, detail) => {
    const { points, told } = read(csv);
    expect(points).toEqual([]);
    expect(told).toHaveLength(1);
    expect(told[0]).toMatchObject({ kind: "csv", path: "third.csv", line });
    expect(told[0]?.kind === "csv" && told[0].detail).toContain(detail);
  });

  it("tells each bad row at the line that names the file, twenty at most", () => {
    const rows = Array.from({ length: 500 }, () => "x,y").join("\n");
    const { told } = read(`travel [mm],force [N]\n${rows}\n`);
    expect(told).toHaveLength(20);
    expect(new Set(told.map(({ start, end }) => car.slice(start, end)))).toEqual(new Set(['"third.csv"']));
    expect(told.map((one) => one.kind === "csv" && one.line)).toEqual(Array.from({ length: 20 }, (_, i) => i + 2));
  });

  it("that is missing, or outside of the workspace, is told with the reason", () => {
    expect(read(undefined).told).toMatchObject([{ kind: "file-not-found", path: "third.csv", reason: "missing" }]);
    const outside = read(undefined, car.replace("third.csv", "../third.csv"));
    expect(outside.told).toMatchObject([{ kind: "file-not-found", reason: "outside" }]);
    const absolute = read(undefined, car.replace("third.csv", "/etc/third.csv"));
    expect(absolute.told).toMatchObject([{ kind: "file-not-found", reason: "not-a-path" }]);
  });

  it("is noted as a text that the file rests on, whether it is there or not", () => {
    expect(read("travel [mm],force [N]\n0,0\n10,900\n").readsText).toEqual([`${root}third.csv`]);
    expect(read(undefined).readsText).toEqual([`${root}third.csv`]);
  });

  it("of a million cells in one line, or of as many lines, is answered", () => {
    expect(read(`travel [mm],force [N]\n0,0\n${"1,".repeat(500_000)}1\n`).told).toHaveLength(1);
    expect(read(`${'"'.repeat(100_001)},\n`).told).toHaveLength(1);
    const many = Array.from({ length: 50_000 }, (_, i) => `${i},${2 * i}`).join("\n");
    expect(read(`travel [mm],force [N]\n${many}\n`).points).toHaveLength(50_000);
  });
});
