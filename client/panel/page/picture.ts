/**
 * The drawing in view as a picture of its own: SVG with every colour written out, since a file knows no theme, and PNG of it at
 * twice its size.
 */
import type { PictureFormat } from "../messages.js";

/** What looks are made of in this page. */
const WRITTEN = [
  "fill",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linecap",
  "stroke-linejoin",
  "opacity",
  "font-size",
  "font-family",
  "font-weight",
  "text-anchor",
  "letter-spacing",
] as const;

const SVG = "http://www.w3.org/2000/svg";
const PNG_SCALE = 2;
/** For taking hold of, not for looking at. */
const UNSEEN = ".hit, title, .slide-plane";

function written(from: Element, to: Element): void {
  const style = getComputedStyle(from);
  for (const name of WRITTEN) to.setAttribute(name, style.getPropertyValue(name));
  for (const name of ["class", "style", "tabindex", "role", "aria-label", "aria-roledescription"])
    to.removeAttribute(name);
  [...from.children].forEach((child, i) => {
    const twin = to.children[i];
    if (twin !== undefined) written(child, twin);
  });
}

/** Several drawings below each other. */
export function svgOf(
  drawings: readonly SVGSVGElement[],
  title: string,
  ground: string,
): { readonly text: string; readonly width: number; readonly height: number } {
  const sizes = drawings.map((drawing) => ({
    width: drawing.width.baseVal.value,
    height: drawing.height.baseVal.value,
  }));
  const width = Math.max(...sizes.map((size) => size.width), 1);
  const height = Math.max(
    sizes.reduce((all, size) => all + size.height, 0),
    1,
  );
  const svg = document.createElementNS(SVG, "svg");
  for (const [name, value] of Object.entries({ width, height, viewBox: `0 0 ${width} ${height}` }))
    svg.setAttribute(name, String(value));
  const named = document.createElementNS(SVG, "title");
  named.textContent = title;
  const paper = document.createElementNS(SVG, "rect");
  for (const [name, value] of Object.entries({ width, height, fill: ground })) paper.setAttribute(name, String(value));
  svg.append(named, paper);
  let y = 0;
  drawings.forEach((drawing, i) => {
    const twin = drawing.cloneNode(true) as SVGSVGElement;
    written(drawing, twin);
    for (const unseen of twin.querySelectorAll(UNSEEN)) unseen.remove();
    const group = document.createElementNS(SVG, "g");
    group.setAttribute("transform", `translate(0 ${y})`);
    group.append(...twin.childNodes);
    svg.append(group);
    y += sizes[i]?.height ?? 0;
  });
  return { text: new XMLSerializer().serializeToString(svg), width, height };
}

/** As the message takes it. */
export async function pictureOf(
  drawings: readonly SVGSVGElement[],
  title: string,
  ground: string,
  format: PictureFormat,
): Promise<string> {
  const { text, width, height } = svgOf(drawings, title, ground);
  const svg = base64(text);
  if (format === "svg") return svg;
  const image = new Image();
  image.src = `data:image/svg+xml;base64,${svg}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [width * PNG_SCALE, height * PNG_SCALE];
  canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL("image/png").replace(/^data:[^,]*,/, "");
}

function base64(text: string): string {
  let bytes = "";
  for (const byte of new TextEncoder().encode(text)) bytes += String.fromCharCode(byte);
  return btoa(bytes);
}
