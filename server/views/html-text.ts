/** Words that go into a page of HTML, in text and in attributes. */

const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

export const htmlText = (words: string): string => words.replaceAll(/[&<>"']/g, (sign) => entities[sign] ?? sign);
