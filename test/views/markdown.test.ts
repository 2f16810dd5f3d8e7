import { describe, expect, it } from "vitest";
import { withUnitStars } from "../../server/views/markdown.js";

describe("a unit's star in Markdown", () => {
  it("is shown as a star", () => {
    expect(withUnitStars("17.6 N*m*s/deg")).toBe("17.6 N\\*m\\*s/deg");
    expect(withUnitStars("60 kg*m^2")).toBe("60 kg\\*m^2");
  });

  it("leaves emphasis as it is", () => {
    const text = "**front.bar** is *at design* 5 N/mm\n\n* one\n* two";
    expect(withUnitStars(text)).toBe(text);
  });

  it("leaves code as it is", () => {
    expect(withUnitStars("`rate N*m/deg` 3 N*m\n\n```\nN*m\n```")).toBe("`rate N*m/deg` 3 N\\*m\n\n```\nN*m\n```");
  });
});
