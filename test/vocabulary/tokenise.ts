/** Runs the committed TextMate grammar as an editor would: text in, scopes of each piece out. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import oniguruma from "vscode-oniguruma";
import textmate from "vscode-textmate";

export interface Piece {
  readonly start: number;
  readonly end: number;
  readonly text: string;
  /** The innermost scope, without the language's suffix; "" for bare text. */
  readonly scope: string;
}

const wasm = createRequire(import.meta.url).resolve("vscode-oniguruma/release/onig.wasm");
const grammarFile = new URL("../../grammar/highlighting/bellcrank.tmLanguage.json", import.meta.url);

export async function tokeniser(): Promise<(text: string) => Piece[]> {
  await oniguruma.loadWASM(readFileSync(wasm));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: () => Promise.resolve(textmate.parseRawGrammar(readFileSync(grammarFile, "utf8"), "grammar.json")),
  });
  const grammar = await registry.loadGrammar("source.crank");
  if (grammar === null) throw new Error("the grammar does not load");
  return (text) => {
    const pieces: Piece[] = [];
    let stack = textmate.INITIAL;
    let offset = 0;
    for (const line of text.split("\n")) {
      const { tokens, ruleStack } = grammar.tokenizeLine(line, stack);
      stack = ruleStack;
      for (const token of tokens) {
        const scope = token.scopes.length > 1 ? (token.scopes.at(-1) ?? "") : "";
        const end = Math.min(token.endIndex, line.length);
        const piece = { start: offset + token.startIndex, end: offset + end, text: line.slice(token.startIndex, end) };
        if (end > token.startIndex) pieces.push({ ...piece, scope: scope.replace(/\.crank$/, "") });
      }
      offset += line.length + 1;
    }
    return pieces;
  };
}
