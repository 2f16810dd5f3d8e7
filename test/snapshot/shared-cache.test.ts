/** What is held somewhere is shared, however long ago it was made; the last few are there without being held. */
import { describe, expect, it } from "vitest";
import { SharedCache } from "../../server/snapshot/shared-cache.js";

describe("values kept while somebody holds them", () => {
  it("makes nothing twice that is still held, in whatever order it is asked for", () => {
    const cache = new SharedCache<string, { readonly key: string }>(2);
    const made: string[] = [];
    const ask = (key: string) =>
      cache.get(key, () => {
        made.push(key);
        return { key };
      });
    const keys = Array.from({ length: 60 }, (_, index) => `axle ${index}`);
    const held = keys.map(ask);
    const again = keys.map(ask);
    expect(made).toEqual(keys);
    for (const [index, value] of again.entries()) expect(value).toBe(held[index]);
  });

  it("gives each key the value that was made for it", () => {
    const cache = new SharedCache<string, { readonly key: string }>(1);
    for (const key of ["a", "b", "a", "c", "b"]) expect(cache.get(key, () => ({ key })).key).toBe(key);
  });
});
