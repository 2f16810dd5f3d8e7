/**
 * Paths in a text against the file that they stand in. URIs are kept as the host spells them:
 * only what is appended is encoded, so that one file has one name whoever points at it.
 *
 * Invariant: pure text; whether a file exists or may be read is the host's to say.
 */
export type Target = { readonly uri: string } | { readonly bad: "not-a-path" | "outside" };

/** Everything but RFC 3986's unreserved characters is percent-encoded, as editors spell URIs. */
const encode = (segment: string): string =>
  encodeURIComponent(segment.replace(/\p{Surrogate}/gu, "\ufffd")).replace(
    /[!'()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`,
  );

/** `path` as written in `from`, relative and with forward slashes; "outside" where it climbs past the root. */
export function relativeTo(from: string, path: string): Target {
  if (!isRelative(path)) return { bad: "not-a-path" };
  const root = /^[a-z][a-z0-9+.-]*:(?:\/\/[^/]*)?/i.exec(from)?.[0] ?? "";
  const folders = from.slice(root.length).split("/").slice(0, -1);
  const absolute = folders[0] === "";
  if (absolute) folders.shift();
  for (const part of path.split("/")) {
    if (part === "" || part === ".") continue;
    if (part !== "..") folders.push(encode(part));
    else if (folders.pop() === undefined) return { bad: "outside" };
  }
  return { uri: root + (absolute ? "/" : "") + folders.join("/") };
}

function isRelative(path: string): boolean {
  const plain = path.trim() !== "" && !path.endsWith("/") && !/[\u0000-\u001f\\]/.test(path);
  return plain && !path.startsWith("/") && !/^[a-z][a-z0-9+.-]*:/i.test(path);
}
