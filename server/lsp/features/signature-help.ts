/** Signature help: how the line that is being typed goes on. Blanks ask by themselves only where a line has several parts. */
import { MarkupKind, SignatureHelpTriggerKind, type SignatureInformation } from "vscode-languageserver";
import { type SignatureHelp, signatureAt, type Way } from "../../views/signature.js";
import type { Feature } from "../feature.js";

export const signatureHelp: Feature = {
  capabilities: { signatureHelpProvider: { triggerCharacters: [" "], retriggerCharacters: [" "] } },
  attach(connection, session) {
    connection.onSignatureHelp(({ textDocument, position, context }) => {
      const file = session.file(textDocument.uri);
      const found = signatureAt(file, file.parsed.lines.offset(position));
      const asked = context === undefined || context.triggerKind === SignatureHelpTriggerKind.Invoked;
      if (found === undefined || (!asked && found.ways.every(({ parts }) => parts.length < 2))) return null;
      return {
        signatures: found.ways.map((way) => signatureOf(found, way)),
        activeSignature: 0,
        activeParameter: found.ways[0]?.due ?? 0,
      };
    });
  },
};

function signatureOf({ help }: SignatureHelp, { label, parts, due }: Way): SignatureInformation {
  const markdown = (value: string) => ({ kind: MarkupKind.Markdown, value });
  return {
    label,
    documentation: markdown(help),
    activeParameter: due,
    parameters: parts.map((part) => ({
      label: [part.from, part.to],
      ...(part.help === "" ? {} : { documentation: markdown(part.help) }),
    })),
  };
}
