/**
 * Writing SVG: elements with their attributes, as text in ASCII alone, so that it goes into an address without more ado.
 *
 * Invariant: what is written is well-formed XML, whatever the names in a car are.
 */

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** Control characters have no place in XML at all. */
// oxlint-disable-next-line no-control-regex -- these are what is looked for
const NOT_XML =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Most of what is written. */
const PLAIN = /^[^&<>"\x00-\x1f\x7f-\uffff]*$/;

export const escaped = (text: string): string => (PLAIN.test(text) ? text : rewritten(text));

const rewritten = (text: string): string =>
  text
    .replace(NOT_XML, "")
    .replace(/[&<>"]/g, (sign) => ENTITIES[sign] ?? sign)
    .replace(/[^\x20-\x7e]/gu, (sign) => `&#${sign.codePointAt(0)};`);

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** A tenth of a pixel is as fine as a drawing needs. */
export const pixel = (value: number): number => Math.round(value * 10) / 10;

/** @param inside already SVG */
export function tag(name: string, attributes: Attributes, ...inside: readonly string[]): string {
  let open = `<${name}`;
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== undefined) open += ` ${key}="${typeof value === "number" ? pixel(value) : escaped(value)}"`;
  }
  return inside.length === 0 ? `${open}/>` : `${open}>${inside.join("")}</${name}>`;
}

/** An image's address that holds all of it. */
export const dataAddress = (svg: string): string => `data:image/svg+xml;base64,${btoa(svg)}`;
