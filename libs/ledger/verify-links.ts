// Joins a verified range to what stands before it in the log: the first entry of each stream in the range
// must follow that stream's version before. The log itself is asked, so that no stream is remembered.

import type { Store } from './store.js';
import { earliest } from './verify-range.js';
import type { ChainLink, RangeReport } from './verify-range.js';

/** The range, with a fault where one of its streams does not go on as recorded. */
export async function verifyLinks(
  store: Pick<Store, 'readLinks'>,
  log: string,
  range: RangeReport,
): Promise<RangeReport> {
  const wanted = range.firsts.flatMap(({ stream, version }) => [
    { stream, version },
    ...(version > 1 ? [{ stream, version: version - 1 }] : []),
  ]);
  if (wanted.length === 0) return range;
  const before = new Map<string, string>();
  for (const link of await store.readLinks(log, wanted, range.start)) {
    before.set(`${link.version} ${link.stream}`, link.leaf);
  }
  for (const link of range.firsts) {
    const says = broken(link, before);
    if (says === undefined) continue;
    return { ...range, fault: earliest([range.fault, { pos: link.pos, says }]) };
  }
  return range;
}

function broken(
  { stream, version, prev }: ChainLink,
  before: ReadonlyMap<string, string>,
): string | undefined {
  if (before.has(`${version} ${stream}`))
    return `version ${version} of ${stream} is there before it`;
  if (version === 1) return undefined;
  const leaf = before.get(`${version - 1} ${stream}`);
  if (leaf === undefined) return `version ${version - 1} of ${stream} is not there before it`;
  return leaf === prev ? undefined : `it does not follow version ${version - 1} as recorded`;
}
