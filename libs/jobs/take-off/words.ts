// Why a take-off no longer counts, in words.

import { label } from '#rules';
import { factDefinition, type FactName } from '../contract/fact-dictionary.js';
import type { Cause } from '../contract/cause.js';

const FIELDS: Readonly<Record<string, string>> = {
  'style/profile': 'the panel',
  'style/width': 'the panel width',
  'coating/metal': 'the metal',
  'gauge/thickness_in': 'the base thickness',
  'gauge/grade': 'the grade',
  'gauge/attachment': 'the attachment',
};

/** "the base thickness changed from 0.0236 to 0.0187". */
export function causeWords({ path, from, to }: Pick<Cause, 'path' | 'from' | 'to'>): string {
  const parts = path.split('/');
  const field = FIELDS[parts.slice(-2).join('/')];
  const name = field ?? `the answer to “${factDefinition(parts.at(-1) as FactName).asks}”`;
  return `${name} changed from ${valueWords(from)} to ${valueWords(to)}`;
}

interface ZoneOf {
  readonly zone?: string;
  readonly v?: string;
  readonly spacing?: { readonly v: string };
}

function valueWords(value: unknown): string {
  if (value === null || value === undefined) return 'not known';
  if (typeof value === 'string') return label(value);
  if (typeof value === 'number' || typeof value === 'boolean') return String(value);
  if (Array.isArray(value)) return (value as readonly ZoneOf[]).map(zoneWords).join(', ');
  const { v, u, zones } = value as { v?: string; u?: string; zones?: readonly ZoneOf[] };
  if (v !== undefined) return u === 'per-12' ? `${v} in 12` : `${v} ${u ?? ''}`.trim();
  return zones ? zones.map(zoneWords).join(', ') : 'another';
}

const zoneWords = ({ zone, spacing, v }: ZoneOf): string =>
  `${zone === undefined || zone === 'all' ? '' : `zone ${zone}: `}${spacing?.v ?? v ?? ''} in`;
