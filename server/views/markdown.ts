/** Figures in Markdown, where the star of a unit would otherwise be read as emphasis. */

/** A unit's star stands between two letters, figures or brackets; emphasis never does. */
const UNIT_STAR = /(?<=[\p{L}\d)])\*(?=[\p{L}(])/gu;
/** Code is shown as it is, stars and all. */
const CODE = /(```[\s\S]*?```|`[^`\n]*`)/;

/** "17.6 N*m*s/deg" as "17.6 N\*m\*s/deg", outside of code. */
export function withUnitStars(markdown: string): string {
  const pieces = markdown.split(CODE);
  return pieces.map((piece) => (piece.startsWith("`") ? piece : piece.replace(UNIT_STAR, "\\*"))).join("");
}
