/** One workflow command of a hosted CI, its values escaped as that reads them. */

export function workflowCommand(
  level: "notice" | "warning" | "error",
  properties: Readonly<Record<string, string | number>>,
  message: string,
): string {
  const given = Object.entries(properties).map(([name, value]) => `${name}=${property(String(value))}`);
  return `::${level} ${given.join(",")}::${data(message)}\n`;
}

const data = (text: string): string => text.replaceAll("%", "%25").replaceAll("\r", "%0D").replaceAll("\n", "%0A");
const property = (text: string): string => data(text).replaceAll(":", "%3A").replaceAll(",", "%2C");
