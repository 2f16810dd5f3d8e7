/** Reads an SVG as XML. */
import sax from "sax";

export interface SvgElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
}

/** Every element of the document; throws where it is not well-formed XML. */
export function elementsOf(svg: string): readonly SvgElement[] {
  const parser = sax.parser(true);
  const found: SvgElement[] = [];
  parser.onopentag = ({ name, attributes }) => found.push({ name, attributes: attributes as Record<string, string> });
  parser.write(svg).close();
  return found;
}
