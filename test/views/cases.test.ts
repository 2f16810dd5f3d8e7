/** What the editor shows of load cases: the hover of a case, the shares above a car, and what a height table does not cover. */
import { describe, expect, it } from "vitest";
import { casesPage } from "../../server/views/cases-page.js";
import { hoverAt } from "../../server/views/hover.js";
import { lensesOf } from "../../server/views/lens.js";
import { createWorkspace } from "../../server/snapshot/create.js";
import { quillParts, quillText } from "../support/quill.js";

function viewOf(text: string) {
  const workspace = createWorkspace({
    read: (uri) => (uri.endsWith("parts.crank") ? { text: quillParts["parts.crank"] } : { missing: "missing" }),
  });
  workspace.set("memory:///quill.crank", text);
  return workspace.file("memory:///quill.crank");
}

const quill = viewOf(quillText);

describe("the hover of a case", () => {
  it("is its equilibrium, on its name and inside of it", () => {
    for (const word of ["case hairpin", "lateral 1.5 g"]) {
      const shown = hoverAt(quill, quillText.indexOf(word) + 1)?.markdown ?? "";
      expect(shown).toContain("**hairpin** of quill, in equilibrium");
      expect(shown).toMatch(/^\| load transfer \| 4\d\.\d+ % \| 5\d\.\d+ % \|$/m);
      expect(shown).toMatch(/roll 1\.\d+ deg \(0\.\d+ deg\/g\), pitch/);
      expect(shown).toMatch(/\| front left \| \d+(\.\d+)? N \|/);
    }
  });

  it("says why where there is none", () => {
    const text = quillText.replace("speed 195 km/h", "speed 600 km/h");
    expect(hoverAt(viewOf(text), text.indexOf("case top-speed") + 6)?.markdown).toContain(
      "no figures, since the car has no equilibrium",
    );
  });
});

describe("the line above a car", () => {
  it("tells the three shares in the turn that is expected something of, and what is met", () => {
    const [car] = lensesOf(quill);
    expect(car?.title).toMatch(
      /front at hairpin: load transfer 4\d\.\d %, roll stiffness 4\d\.\d %, downforce 4\d\.\d % · \d+ of \d+ expectations met$/,
    );
  });
});

describe("the page of the cases", () => {
  it("names the cases that leave the height table", () => {
    const rows = "front { 31 mm: 0.9 m^2, 60 mm: 0.8 m^2 }, rear { 31 mm: 1.2 m^2, 60 mm: 1.2 m^2 }";
    const text = quillText.replace(
      /downforce-front[\s\S]*?height-slopes.*\n/,
      `height-table {\n  rear-height 20 mm { ${rows} }\n  rear-height 80 mm { ${rows} }\n}\n`,
    );
    const [car] = viewOf(text).cars;
    if (car === undefined) throw new Error("no car");
    const section = casesPage(car).sections.find(({ title }) => title.startsWith("Beyond the height-table"));
    expect(section?.rows.map(([name]) => name)).toContain("top-speed");
  });
});
