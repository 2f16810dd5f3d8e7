/** Comma-separated values as RFC 4180 has them, with the line ends of the rest of the output. */
export function csv(rows: readonly (readonly (string | number)[])[]): string {
  return rows.map((row) => `${row.map(cell).join(",")}\n`).join("");
}

function cell(value: string | number): string {
  const text = String(value);
  return /[",\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
