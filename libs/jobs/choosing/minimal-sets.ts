// Families of sets: the smallest of them, and the smallest sets that meet every one of a family.

/** Drops every set that holds another; of two with the same keys the first stays. */
export function minimalOnly<T>(
  sets: readonly T[],
  keysOf: (set: T) => readonly string[],
): readonly T[] {
  const keyed = sets.map((set, at) => ({ set, at, keys: new Set(keysOf(set)) }));
  const holds = (a: ReadonlySet<string>, b: ReadonlySet<string>): boolean =>
    [...b].every((key) => a.has(key));
  return keyed
    .filter(
      ({ keys, at }) =>
        !keyed.some(
          (other) =>
            other.at !== at &&
            holds(keys, other.keys) &&
            (other.keys.size < keys.size || other.at < at),
        ),
    )
    .map(({ set }) => set);
}

/**
 * All minimal sets that meet every set of a family, smallest first; undefined where there would be
 * more than `most` on the way. What keeps an outcome and what changes it meet in this way (duality
 * of sufficient reasons and change sets).
 */
export function hittingSets(
  family: readonly (readonly string[])[],
  most: number,
): readonly (readonly string[])[] | undefined {
  let found: readonly (readonly string[])[] = [[]];
  for (const set of family) {
    const hit = found.filter((each) => set.some((key) => each.includes(key)));
    const longer = found
      .filter((each) => !hit.includes(each))
      .flatMap((each) => set.map((key) => [...each, key].sort()));
    found = minimalOnly([...hit, ...longer], (each) => each);
    if (found.length > most) return undefined;
  }
  return [...found].sort((a, b) => a.length - b.length || (a.join() < b.join() ? -1 : 1));
}
