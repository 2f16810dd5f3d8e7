/** What an editor needs to know about typing in the language: brackets, comments, words, indentation. */
export function languageConfiguration(): object {
  const pairs = [
    ["{", "}"],
    ["(", ")"],
  ];
  return {
    comments: { lineComment: "#" },
    brackets: pairs,
    autoClosingPairs: [
      ...pairs.map(([open, close]) => ({ open, close, notIn: ["string", "comment"] })),
      { open: '"', close: '"', notIn: ["string", "comment"] },
    ],
    surroundingPairs: [...pairs, ['"', '"']],
    colorizedBracketPairs: pairs,
    // Names hold hyphens, so that a double click takes `roll-damper` whole; a number keeps its sign and point.
    wordPattern: { pattern: "[+-]?\\d+(?:\\.\\d+)?|[\\p{L}_][\\p{L}\\p{M}\\p{Nd}_-]*", flags: "u" },
    indentationRules: {
      increaseIndentPattern: '^[^#"]*\\{[^}#"]*(?:#.*)?$',
      decreaseIndentPattern: "^\\s*\\}",
    },
    onEnterRules: [
      {
        beforeText: { pattern: "^\\s*##(?!#)\\s*\\S" },
        action: { indent: "none", appendText: "## " },
      },
    ],
  };
}
