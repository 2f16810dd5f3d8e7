/**
 * The licences of the packages whose code is in the bundles, as their authors ask: each with its version and its text.
 *
 * In: the files that went into the bundles. Out: one text, in the order of the packages' names.
 * Invariant: a package without a licence stops the build.
 */
import { readdirSync, readFileSync } from "node:fs";

/** `node_modules/@scope/name`, the innermost one. */
const packageFolder = /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/;

/** @param {readonly string[]} inputs @returns {string} */
export function noticesOf(inputs) {
  const folders = new Set(inputs.flatMap((path) => packageFolder.exec(path.replaceAll("\\", "/"))?.[0] ?? []));
  const notices = [...folders].map(noticeOf).sort((a, b) => (a.head < b.head ? -1 : a.head > b.head ? 1 : 0));
  const distinct = notices.filter(({ head }, i) => head !== notices[i - 1]?.head);
  const line = "-".repeat(80);
  const head =
    "Bellcrank contains code of the following packages. Each is used under its own licence, which follows its name.";
  return `${head}\n\n${distinct.map(({ head: name, text }) => `${line}\n${name}\n${line}\n\n${text}\n`).join("\n")}`;
}

/** @param {string} folder */
function noticeOf(folder) {
  const { name, version, license } = JSON.parse(readFileSync(`${folder}/package.json`, "utf8"));
  if (typeof license !== "string") throw new Error(`${name} says no licence: it cannot be bundled`);
  // Apache's licence asks for a NOTICE to go with it, where there is one.
  const files = readdirSync(folder)
    .sort()
    .filter((one) => /^(licen[cs]e|notice)/i.test(one));
  const texts = files.map((file) => readFileSync(`${folder}/${file}`, "utf8").replace(/\r\n?/g, "\n").trim());
  const text = texts.length === 0 ? `${license}; the package brings no text of it.` : texts.join("\n\n");
  return { head: `${name} ${version} (${license})`, text };
}
