// The declared rule by which admissible options are ranked, printed with every evaluation.

import type { Finding, Priority, ZoneFacts } from '#rules';
import type { ZoneResult } from '../contract/evaluation.js';
import type { Option } from './options.js';

export interface Ranked {
  readonly option: Option;
  readonly findings: readonly Finding[];
}

export interface Judged extends Ranked {
  readonly zones: readonly ZoneResult[];
  readonly zoneFacts: readonly ZoneFacts[];
  readonly admissible: boolean;
}

export const RANKING =
  "Fewest cautions first, then fewest failed recommendations; then the owner's priorities in their order " +
  '(value: lower price; quick delivery: in stock, then shorter lead time; low weight: lighter; others are carried by the recommendations); ' +
  'ties by stock, lead time, price and weight.';

type Key = (each: Ranked) => number;

const cautions: Key = ({ findings }) => failing(findings, 'caution');
const notes: Key = ({ findings }) => failing(findings, 'note');
const notStock: Key = ({ option }) => (option.availability === 'stock' ? 0 : 1);
const lead: Key = ({ option }) => option.row?.lead_days ?? 999;
const price: Key = ({ option }) => option.price ?? Number.MAX_SAFE_INTEGER;
const weight: Key = ({ option }) => option.weight;

const BY_PRIORITY: Readonly<Record<Priority, readonly Key[]>> = {
  value: [price],
  'quick-delivery': [notStock, lead],
  'low-weight': [weight],
  'long-life': [],
  'best-appearance': [],
  'dent-resistance': [],
};

function failing(findings: readonly Finding[], severity: Finding['severity']): number {
  return findings.filter((each) => each.outcome === 'fail' && each.severity === severity).length;
}

/** Best first. The same options always come in the same order. */
export function rank(
  options: readonly Ranked[],
  priorities: readonly Priority[],
): readonly Ranked[] {
  const keys = [
    cautions,
    notes,
    ...priorities.flatMap((each) => BY_PRIORITY[each]),
    notStock,
    lead,
    price,
    weight,
  ];
  return [...options].sort((a, b) => {
    for (const key of keys) {
      const difference = key(a) - key(b);
      if (difference !== 0) return difference;
    }
    return a.option.id.localeCompare(b.option.id);
  });
}

/** What the better of two options does better, in words; the first key of the rule that differs. */
export function advantage(better: Ranked, worse: Ranked): string {
  if (cautions(better) !== cautions(worse))
    return `has ${counted(cautions(better), 'caution')} against ${cautions(worse)}`;
  if (notes(better) !== notes(worse))
    return `meets more of the recommendations (${notes(better)} failed against ${notes(worse)})`;
  const [a, b] = [better.option, worse.option];
  if (notStock(better) !== notStock(worse)) return 'is in stock';
  if (a.price !== null && b.price !== null && a.price < b.price)
    return `costs ${(b.price - a.price).toFixed(2)} dollars a square less`;
  if (lead(better) !== lead(worse))
    return `is here ${Math.abs(lead(worse) - lead(better))} days sooner`;
  if (a.weight < b.weight) return 'is lighter';
  return 'comes first in the declared ranking';
}

const counted = (n: number, what: string): string =>
  `${n === 0 ? 'no' : n} ${what}${n === 1 ? '' : 's'}`;
