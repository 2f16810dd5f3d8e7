/**
 * Values kept on content for as long as anybody holds them: those who ask for the same key share one. The last few are
 * held here as well, for who comes back to a number (undo, the next of two tries).
 *
 * A cache of fixed size is wrong at both ends: a thousand open set-ups on sixty different axles turn it over without a
 * hit, and somebody who types has it full of numbers that nobody will ask for again.
 *
 * Invariant: what is found under a key was made for that key, so that it cannot matter when the collector runs.
 */
import { BoundedCache } from "./bounded-cache.js";

export class SharedCache<Key, Value extends object> {
  readonly #shared = new Map<Key, WeakRef<Value>>();
  readonly #recent: BoundedCache<Key, Value>;
  /** A key is as long as all numbers of an axle: it goes with its value, unless that was made again meanwhile. */
  readonly #gone = new FinalizationRegistry<Key>((key) => {
    if (this.#shared.get(key)?.deref() === undefined) this.#shared.delete(key);
  });

  /** @param recent how many are kept that nobody else holds */
  constructor(recent: number) {
    this.#recent = new BoundedCache(recent);
  }

  get(key: Key, make: () => Value): Value {
    return this.#recent.get(key, () => this.#shared.get(key)?.deref() ?? this.#made(key, make()));
  }

  #made(key: Key, value: Value): Value {
    this.#shared.set(key, new WeakRef(value));
    this.#gone.register(value, key);
    return value;
  }
}
