/**
 * The page that the panel's frame is given: a root, one script, one style sheet, and a policy that lets nothing else in.
 *
 * Invariant: no connection to anywhere (`default-src 'none'` covers fetch, sockets, frames and fonts); scripts run by a
 * nonce alone. Addresses come from `asWebviewUri`, so that the same page is shown on this machine, a remote one and in a
 * browser.
 */

export interface PageParts {
  /** Of the script and the style sheet, as the frame may read them. */
  readonly script: string;
  readonly style: string;
  /** What the frame's own resources are served from. */
  readonly source: string;
  readonly nonce: string;
}

/** Preact sets styles by the object model, which needs no exception; a blob is the picture that is saved. */
function policy({ source, nonce }: PageParts): string {
  return ["default-src 'none'", `script-src 'nonce-${nonce}'`, `style-src ${source}`, "img-src data: blob:"].join("; ");
}

export function panelHtml(parts: PageParts): string {
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy(parts)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Mechanism</title>
<link rel="stylesheet" href="${parts.style}">
</head>
<body>
<div id="root"></div>
<script nonce="${parts.nonce}" src="${parts.script}"></script>
</body>
</html>
`;
}

const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789";
const NONCE_LENGTH = 32;

/** Guessed by no page: from the platform's own source of randomness, which browsers and Node both have. */
export function newNonce(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(NONCE_LENGTH));
  return [...bytes].map((byte) => LETTERS[byte % LETTERS.length]).join("");
}
