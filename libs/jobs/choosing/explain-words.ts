// The fixed sentences of an explanation. Text is made here once, from what was found, and kept in
// the record as it is.

import type { SufficientReason, WhatWould } from '../contract/evaluation.js';
import { keysOf, spacingKey, type ChangeSet } from './change-sets.js';
import { optionWords } from './options.js';
import type { Kind, Target } from './spacings.js';
import type { ZoneChange } from './zone-changes.js';

export function changeSetWords(option: string, set: ChangeSet, target: Target): WhatWould {
  const { frame, spacings } = set;
  const verb = target === 'passes' ? 'passes' : 'does not pass';
  const makes = frame.changes
    .filter(({ key }) => key !== 'grade')
    .map(({ what, to }) => `${what} ${to}`);
  const phrases = [...makes, ...grouped(spacings).map((each) => spacingPhrase(set, each, target))];
  const alone = makes.length === 0 && spacings.length === 1 ? spacings[0] : undefined;
  const step = target === 'passes' ? 1 : -1;
  const edge =
    alone && alone.to + step !== alone.from
      ? ` (${alone.to + step} in ${target === 'passes' ? 'does not' : 'passes'})`
      : '';
  return {
    option,
    becomes: target,
    changes: [
      ...frame.changes.map(({ what, from, to }) => ({ what, from, to })),
      ...spacings.map((each) => ({
        what: `${noun(set, each.kind)} spacing, zone ${each.zone}`,
        from: inches(each.from),
        to: reach(each, target),
      })),
    ],
    words: `${optionWords(frame.option)} ${verb} with ${listed(phrases)}${edge}.`,
    site_fact: false,
  };
}

/** Why an outcome stands whatever else is chosen: the choices that already settle it. */
export function reasonWords(
  option: string,
  what: string,
  target: Target,
  keys: readonly string[],
  sets: readonly ChangeSet[],
): SufficientReason {
  const holding = (key: string): ChangeSet => {
    const found = sets.find((each) => keysOf(each).includes(key));
    if (!found) throw new Error(`no change set holds ${key}`);
    return found;
  };
  const makes = keys.flatMap((key) =>
    holding(key).frame.changes.filter((each) => each.key === key),
  );
  const spacings = keys.flatMap((key) =>
    holding(key).spacings.filter((each) => spacingKey(each) === key),
  );
  const [any] = sets;
  const phrases = [
    ...makes.map((each) => `${each.what} ${each.from}`),
    ...(any
      ? grouped(spacings.map((each) => ({ ...each, to: each.from, beyond: false }))).map((each) =>
          spacingPhrase(any, each, 'fails'),
        )
      : []),
  ];
  const stands = target === 'passes' ? 'does not pass' : 'passes';
  const settled = phrases.length === 0 ? '' : ` with ${listed(phrases)}`;
  return {
    option,
    because: [
      ...makes.map((each) => ({ what: each.what, value: each.from })),
      ...spacings.map((each) => ({
        what: `${noun(holding(spacingKey(each)), each.kind)} spacing, zone ${each.zone}`,
        value: inches(each.from),
      })),
    ],
    words: `${what} ${stands}${settled}, whichever else of the considered choices is made.`,
  };
}

const inches = (value: number): string => (Number.isFinite(value) ? `${value} in` : 'none');
const reach = ({ to, beyond }: ZoneChange, target: Target): string =>
  `${inches(to)}${beyond ? (target === 'passes' ? ' or closer' : ' or wider') : ''}`;

function noun({ frame }: ChangeSet, kind: Kind): string {
  if (kind !== 'spacing') return kind === 'rows' ? 'screw row' : 'support';
  const { catalogue, attachment } = frame.question;
  return catalogue.fasteners.find(({ id }) => id === attachment.fastener)?.kind ?? 'fastener';
}

/** Zones that ask for the same are named together. */
function grouped(spacings: readonly ZoneChange[]): readonly (readonly ZoneChange[])[] {
  const groups = new Map<string, ZoneChange[]>();
  for (const each of spacings) {
    const key = `${each.kind} ${each.to} ${each.beyond}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()];
}

function spacingPhrase(set: ChangeSet, group: readonly ZoneChange[], target: Target): string {
  const [first] = group;
  if (!first) throw new Error('an empty group of spacings');
  const zones = group.map(({ zone }) => zone);
  const where = zones.length === 1 ? `zone ${zones[0]}` : `zones ${listed(zones)}`;
  const added = first.kind === 'supports' && target === 'passes' ? ' (added framing)' : '';
  return `${noun(set, first.kind)}s at ${reach(first, target)} in ${where}${added}`;
}

/** "a", "a and b", "a, b and c". */
export function listed(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
