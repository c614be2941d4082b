/**
 * A map that only grows, cheap to add to without touching the one it grew from: a large lower layer shared by all,
 * and a small upper one that is copied. The upper is laid down when it has grown.
 */
export type Layers<K, V> = { readonly lower: ReadonlyMap<K, V>; readonly upper: ReadonlyMap<K, V> };

/** Copying this many is about as quick as one look at the clock. */
const LAID_DOWN_AT = 256;

export const noLayers = <K, V>(): Layers<K, V> => ({ lower: new Map(), upper: new Map() });

export const look = <K, V>(layers: Layers<K, V>, key: K): V | undefined => layers.upper.get(key) ?? layers.lower.get(key);

export const withMore = <K, V>(layers: Layers<K, V>, more: readonly (readonly [K, V])[]): Layers<K, V> => {
  if (layers.upper.size + more.length <= LAID_DOWN_AT) return { lower: layers.lower, upper: new Map([...layers.upper, ...more]) };
  const lower = new Map(layers.lower);
  for (const [k, v] of layers.upper) lower.set(k, v);
  for (const [k, v] of more) lower.set(k, v);
  return { lower, upper: new Map() };
};

export function* valuesOf<K, V>(layers: Layers<K, V>): Generator<V> {
  yield* layers.lower.values();
  yield* layers.upper.values();
}

export const sizeOf = <K, V>(layers: Layers<K, V>): number => layers.lower.size + layers.upper.size;
