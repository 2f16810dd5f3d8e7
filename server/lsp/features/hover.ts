/**
 * Hover: the figures of the element, axle or expectation under the pointer, what the word means, and, for a client that takes them,
 * links to where the value comes from.
 */
import { MarkupKind, type Position } from "vscode-languageserver";
import type { FileView } from "../../snapshot/workspace.js";
import { hoverAt } from "../../views/hover.js";
import { hoverLinks } from "../../views/origins/hover-links.js";
import { rangeOf } from "../convert.js";
import type { Feature } from "../feature.js";
import type { ValueLinkArguments } from "../protocol-provenance.js";
import type { Session } from "../session.js";

const WHERE_FROM = "bellcrank.whereFrom";
const CHANGERS = "bellcrank.showChangers";

export const hover: Feature = {
  capabilities: { hoverProvider: true },
  attach(connection, session) {
    connection.onHover(({ textDocument, position }) => {
      const file = session.file(textDocument.uri);
      const found = hoverAt(file, file.parsed.lines.offset(position), session.showsPlots);
      if (found === undefined) return null;
      // At the top: a long card is scrolled to its end by nobody.
      const value = [...linksAt(session, file, position), found.markdown].join("\n\n---\n\n");
      return { contents: { kind: MarkupKind.Markdown, value }, range: rangeOf(file.parsed.lines, found.span) };
    });
  },
};

function linksAt(session: Session, file: FileView, position: Position): readonly string[] {
  if (!session.commands.has(WHERE_FROM) || !session.commands.has(CHANGERS)) return [];
  const asked: ValueLinkArguments = [{ uri: file.uri, position }];
  const link = (title: string, command: string): string =>
    `[${title}](command:${command}?${encodeURIComponent(JSON.stringify(asked))})`;
  const { hasChain, mayBeChanged } = hoverLinks(file, file.parsed.lines.offset(position), (uri) => session.file(uri));
  const links = [
    ...(hasChain ? [link("Where this comes from", WHERE_FROM)] : []),
    ...(mayBeChanged ? [link("Set-ups that change it", CHANGERS)] : []),
  ];
  return links.length === 0 ? [] : [links.join(" · ")];
}
