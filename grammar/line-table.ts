/**
 * Offsets to lines and columns and back. In: the text. Lines end at `\n`, `\r\n` or a lone `\r`,
 * as the language server protocol has it; columns count UTF-16 code units.
 *
 * Invariant: `offset(position(n)) === n` for every offset of the text that is not between the
 * `\r` and the `\n` of one line end. Places outside the text are moved to its nearest edge.
 */
import type { Position } from "./span.js";

export class LineTable {
  private starts: readonly number[] | undefined;

  constructor(private readonly text: string) {}

  get lineCount(): number {
    return this.lineStarts().length;
  }

  position(offset: number): Position {
    const starts = this.lineStarts();
    const inside = Math.min(Math.max(offset, 0), this.text.length);
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] as number) <= inside) low = middle;
      else high = middle - 1;
    }
    return { line: low, character: Math.min(inside, this.lineEnd(low)) - (starts[low] as number) };
  }

  offset({ line, character }: Position): number {
    if (line < 0) return 0;
    const start = this.lineStarts()[line];
    if (start === undefined) return this.text.length;
    return Math.min(start + Math.max(character, 0), this.lineEnd(line));
  }

  /** Where the line starts; the end of the text for lines beyond the last. */
  lineStart(line: number): number {
    return this.offset({ line, character: 0 });
  }

  /** Where the line ends, its line break not included. */
  lineEnd(line: number): number {
    const next = this.lineStarts()[line + 1];
    if (next === undefined) return this.text.length;
    return this.text.charCodeAt(next - 2) === 13 && this.text.charCodeAt(next - 1) === 10 ? next - 2 : next - 1;
  }

  /** Made when first asked for: many a parse is only asked for its tree. */
  private lineStarts(): readonly number[] {
    this.starts ??= findLineStarts(this.text);
    return this.starts;
  }
}

function findLineStarts(text: string): number[] {
  const starts = [0];
  const onlyNewlines = !text.includes("\r");
  for (let at = 0; at < text.length; at++) {
    if (onlyNewlines) {
      at = text.indexOf("\n", at);
      if (at < 0) break;
      starts.push(at + 1);
    } else {
      const code = text.charCodeAt(at);
      if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) starts.push(at + 1);
    }
  }
  return starts;
}
