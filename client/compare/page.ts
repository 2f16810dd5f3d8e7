/**
 * The page that a comparison's frame is given: the server's body in the colours of the theme, a script of a few lines by
 * nonce, and a policy that lets nothing else in.
 *
 * Invariant: nothing is fetched; what the body holds cannot run, since scripts and styles go by the nonce alone.
 */

export interface ComparePage {
  readonly body: string;
  readonly style: string;
}

const policy = (nonce: string): string =>
  ["default-src 'none'", `script-src 'nonce-${nonce}'`, `style-src 'nonce-${nonce}'`].join("; ");

/** @param state what brings the view back after a reload of the window */
export function comparePage({ body, style }: ComparePage, state: unknown): string {
  const nonce = crypto.randomUUID().replaceAll("-", "");
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy(nonce)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Comparison</title>
<style nonce="${nonce}">${style}${themed}</style>
</head>
<body>
<div id="comparison" aria-live="polite">${body}</div>
<script nonce="${nonce}">${script(state)}</script>
</body>
</html>
`;
}

/** The page's own names for the theme's colours. Where a theme has no grounds to tell apart, edges do. */
const themed = `
:root { --ink: var(--vscode-foreground); --quiet: var(--vscode-descriptionForeground);
  --line: var(--vscode-panel-border, var(--vscode-contrastBorder)); --ground: var(--vscode-editor-background);
  --was: var(--vscode-diffEditor-removedLineBackground, transparent);
  --is: var(--vscode-diffEditor-insertedLineBackground, transparent); }
body { color: var(--ink); background: var(--ground); font-family: var(--vscode-font-family);
  font-size: var(--vscode-font-size); line-height: 1.45; padding: 1rem 1.25rem 2rem; }
a.place { color: var(--vscode-textLink-foreground); cursor: pointer; }
a.place:hover { text-decoration: underline; }
:focus-visible { outline: 1px solid var(--vscode-focusBorder); outline-offset: 1px; }
.vscode-high-contrast td.was { border-left: 2px dashed var(--vscode-contrastBorder); }
.vscode-high-contrast td.is { border-left: 2px solid var(--vscode-contrastActiveBorder); }
`;

/** New bodies come as messages: what is unfolded stays so, and the page does not jump. */
const script = (state: unknown): string => `
const editor = acquireVsCodeApi();
editor.setState(${inScript(state)});
const page = document.getElementById("comparison");
const placeIn = (event) => event.target instanceof Element ? event.target.closest("a.place") : null;
const open = (place) => {
  const { uri, line, side } = place.dataset;
  editor.postMessage({ uri, line: Number(line), side });
};
document.addEventListener("click", (event) => { const place = placeIn(event); if (place) open(place); });
document.addEventListener("keydown", (event) => {
  const place = event.key === "Enter" ? placeIn(event) : null;
  if (place) open(place);
});
const titleOf = (details) => details.querySelector("summary").textContent.replace(/ \\(\\d+\\)$/, "");
window.addEventListener("message", ({ data }) => {
  const opened = new Set([...page.querySelectorAll("details[open]")].map(titleOf));
  page.innerHTML = data.body;
  for (const details of page.querySelectorAll("details")) details.open = opened.has(titleOf(details));
});
`;

/** Inside a script, `<` would end it. */
const inScript = (value: unknown): string => JSON.stringify(value).replaceAll("<", "\\u003c");
