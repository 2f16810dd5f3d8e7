/**
 * Who may import whom. The tree reads as the data flow (text → syntax → model → linkage and elements →
 * analyses → findings and views → editor, command line), and an import only ever points upstream.
 *
 * Invariant: what is not listed here is forbidden. That some of these imports may bring in types only is
 * the linter's to check (`no-restricted-imports` in .oxlintrc.json): the parser used here cannot tell.
 */

/**
 * Each room: the folders of ours and the packages that it may import, itself always included, and why no more. `without` are folders in
 * it that are rooms of their own.
 */
const rooms = [
  {
    room: "grammar",
    packages: ["chevrotain"],
    why: "Text in, syntax tree out: the grammar knows nothing of cars beyond its words.",
  },
  { room: "server/maths", packages: ["ml-matrix"], why: "Mathematics knows nothing of cars, units or text." },
  { room: "server/quantities", ours: ["grammar/vocabulary"], why: "A unit needs only the table of dimensions." },
  {
    room: "server/model",
    ours: ["grammar", "server/quantities"],
    why: "The resolved car says what is written; where things are and what they do is computed further on.",
  },
  {
    room: "server/linkage",
    ours: ["server/maths", "server/quantities"],
    why: "Linkage never sees text or the resolved car: plain geometry in, positions and derivatives out.",
  },
  {
    room: "server/elements",
    ours: ["server/linkage", "server/maths", "server/quantities"],
    but: [["server/elements/kinds\\.ts", "server/model"]],
    why: "An element is physics: only kinds.ts names the model's types, so that both speak of the same kinds.",
  },
  {
    room: "server/assemble",
    ours: ["grammar", "server/quantities", "server/maths", "server/model", "server/linkage", "server/elements"],
    why: "The one place where the resolved car becomes linkage and elements.",
  },
  {
    room: "server/analyses",
    ours: ["server/elements", "server/linkage", "server/maths", "server/quantities"],
    why: "An analysis works on the mechanism, never on the text or the resolved car.",
  },
  {
    room: "server/findings",
    ours: [
      "grammar",
      "server/quantities",
      "server/maths",
      "server/model",
      "server/linkage",
      "server/elements",
      "server/assemble",
      "server/analyses",
    ],
    why: "A rule may look at everything upstream, and at nothing that shows findings.",
  },
  {
    room: "server/views",
    ours: [
      "grammar",
      "server/quantities",
      "server/maths",
      "server/model",
      "server/linkage",
      "server/elements",
      "server/assemble",
      "server/analyses",
      "server/findings/finding\\.ts",
      "server/findings/context\\.ts",
      "server/snapshot/workspace\\.ts",
    ],
    packages: ["d3-array", "d3-shape", "diff"],
    why: "A view turns what is known into what is shown: it may see a finding, but runs no rule.",
  },
  {
    room: "server/refactorings",
    ours: [
      "grammar",
      "server/model",
      "server/findings/context\\.ts",
      "server/findings/edits\\.ts",
      "server/findings/finding\\.ts",
      "server/findings/insertion\\.ts",
      "server/findings/sided-line\\.ts",
      "server/findings/tree\\.ts",
      "server/views",
      "server/snapshot/workspace\\.ts",
    ],
    why: "A refactoring changes text and proves by the resolved cars that nothing else has changed; it needs no figure and no rule.",
  },
  {
    room: "server/snapshot",
    ours: [
      "grammar",
      "server/quantities",
      "server/maths",
      "server/model",
      "server/linkage",
      "server/elements",
      "server/assemble",
      "server/analyses",
      "server/findings",
      "server/views",
    ],
    why: "The facade stands above all of the engine and below its faces.",
  },
  {
    room: "server/host",
    ours: ["server/snapshot/workspace\\.ts"],
    packages: ["vscode-uri"],
    core: true,
    why: "Reads files for the faces; it knows only what the facade asks of its host.",
  },
  {
    room: "server/lsp",
    ours: [
      "grammar/index\\.ts",
      "server/host",
      "server/snapshot",
      "server/views",
      "server/refactorings",
      "server/findings/finding\\.ts",
    ],
    packages: ["vscode-languageserver", "vscode-languageserver-textdocument", "vscode-uri"],
    core: true,
    why: "The editor's face asks the facade, so that all faces say the same numbers.",
  },
  {
    room: "server/cli",
    ours: [
      "grammar/index\\.ts",
      "server/quantities/index\\.ts",
      "server/model/car\\.ts",
      "server/analyses/results\\.ts",
      "server/host",
      "server/snapshot",
      "server/views",
      "server/findings/finding\\.ts",
      "server/findings/context\\.ts",
    ],
    packages: [
      "@inquirer/prompts",
      "commander",
      "cli-progress",
      "cli-table3",
      "csv-parse",
      "picocolors",
      "simple-ascii-chart",
      "vscode-uri",
      "workerpool",
    ],
    core: true,
    why:
      "The command line asks the facade, so that all faces say the same numbers, and never the other face: of what the " +
      "facade hands out it knows the types, and units for what is typed as an argument.",
  },
  {
    room: "client",
    without: ["client/panel/page"],
    ours: ["server/lsp/protocol[-a-z]*\\.ts"],
    packages: ["vscode", "vscode-languageclient"],
    core: true,
    why: "The client only connects: it knows the server by the types of their messages.",
  },
  {
    room: "client/panel/page",
    ours: ["client/panel/messages\\.ts", "server/lsp/protocol[-a-z]*\\.ts"],
    packages: ["preact", "d3-array", "d3-polygon", "d3-shape"],
    why: "The panel's page is a browser's world: it knows the extension and the server by the types of their messages.",
  },
];

const ANY_OF_OURS = "^(grammar|server|client|test|samples)/";

function atStart(path) {
  return path.endsWith("\\.ts") ? `^${path}$` : `^${path}/`;
}

function oursOnly({ room, without = [], ours = [], but = [], why }) {
  const allowed = [room, ...ours].map(atStart);
  const exceptions = but.map(([from, to]) => ({
    name: `${room} → ours, ${from}`,
    severity: "error",
    comment: why,
    from: { path: atStart(from) },
    to: { path: ANY_OF_OURS, pathNot: [...allowed, atStart(to)] },
  }));
  const general = {
    name: `${room} → ours`,
    severity: "error",
    comment: why,
    from: { path: atStart(room), pathNot: [...without, ...but.map(([from]) => from)].map(atStart) },
    to: { path: ANY_OF_OURS, pathNot: allowed },
  };
  return [general, ...exceptions];
}

function packagesOnly({ room, without = [], packages = [], why }) {
  return {
    name: `${room} → packages`,
    severity: "error",
    comment: `${why} A package is listed beside the room that needs it.`,
    from: { path: atStart(room), pathNot: without.map(atStart) },
    to: { path: "(^|/)node_modules/", pathNot: packages.map((name) => `(^|/)node_modules/(@types/)?${name}/`) },
  };
}

function noMachine({ room }) {
  return {
    name: `${room} → machine`,
    severity: "error",
    comment: "File system, process and clock belong to the faces: the engine also runs in a browser worker.",
    from: { path: atStart(room) },
    to: { dependencyTypes: ["core"] },
  };
}

/** Two files of one room that must not know each other. */
function strangers(name, folder, exempt, why) {
  return {
    name,
    severity: "error",
    comment: why,
    from: { path: `^${folder}/(?<self>.+)\\.ts$`, pathNot: exempt },
    to: { path: `^${folder}/`, pathNot: exempt },
  };
}

const between = [
  strangers(
    "no rule imports another",
    "server/findings/rules",
    [],
    "One file a finding, its fix inside: a step that two rules share is a file outside of rules/.",
  ),
  strangers(
    "no feature imports another",
    "server/lsp/features",
    ["^server/lsp/features/index\\.ts$"],
    "Features of the server share the session, never each other's state.",
  ),
  strangers(
    "no command imports another",
    "(server/cli|client)/commands",
    [],
    "One command a file; what two commands share stands beside the folder.",
  ),
];

const everywhere = [
  {
    name: "nothing imports tests or samples",
    severity: "error",
    comment: "What ships does not rest on what checks it.",
    from: { pathNot: "^test/" },
    to: { path: "^(test|samples)/" },
  },
  {
    name: "no circles",
    severity: "error",
    comment: "Two files that import each other are one file, or hide a third.",
    from: {},
    to: { circular: true },
  },
  {
    name: "every import is found",
    severity: "error",
    comment: "An import that resolves to nothing is a mistake, or a package that is not listed.",
    from: {},
    to: { couldNotResolve: true },
  },
];

/** @type {import("dependency-cruiser").IConfiguration} */
export default {
  forbidden: [
    ...rooms.flatMap((room) => [...oursOnly(room), packagesOnly(room), ...(room.core ? [] : [noMachine(room)])]),
    ...between,
    ...everywhere,
  ],
  options: {
    // TypeScript 7 has no programming interface; this parser reads type imports too.
    parser: "swc",
    doNotFollow: { path: "node_modules" },
    // Nor does that parser know the page's markup; what those files import is the linter's to check.
    exclude: { path: ["^dist/", "^\\.cache/", "\\.tsx$"] },
    enhancedResolveOptions: { exportsFields: ["exports"], conditionNames: ["types", "node", "import", "default"] },
  },
};
