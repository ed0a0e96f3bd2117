// The options of a choosing: every base thickness and grade that the catalogue edition offers for the
// profile and metal, whether or not the chosen coating is made in it.

import { amount, inches, panelWeight, sheetWeightOf, type Psf } from '#engineering';
import type { Availability, Metal } from '#rules';
import type { MadeRow } from '../contract/catalogue.js';
import type { Question } from './question.js';

export interface Option {
  readonly id: string;
  readonly gauge: string | null;
  readonly metal: Metal;
  readonly thickness_in: number;
  readonly thickness: string;
  readonly grade: string;
  readonly availability: Availability;
  /** The row of the chosen combination, where it is made. */
  readonly row: MadeRow | null;
  readonly weight: Psf;
  /** Price and upcharge, in dollars per square. */
  readonly price: number | null;
}

/** Thickest first, so that the list reads as the gauges do. */
export function optionsOf(question: Question): readonly Option[] {
  const { catalogue, profile, width, facts } = question;
  const offered = catalogue.made.filter(
    (row) => row.profile === profile.id && row.width.v === width && row.metal === facts.metal,
  );
  const byId = new Map<string, MadeRow[]>();
  for (const row of offered) {
    const id = `${row.metal}-${row.thickness.v}-${slug(row.grade)}`;
    byId.set(id, [...(byId.get(id) ?? []), row]);
  }
  return [...byId]
    .map(([id, rows]) => option(id, rows, question))
    .sort((a, b) => b.thickness_in - a.thickness_in || a.id.localeCompare(b.id));
}

const slug = (grade: string): string => grade.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-');

function option(id: string, rows: readonly MadeRow[], question: Question): Option {
  const { facts, profile, width } = question;
  const first = rows[0];
  if (!first) throw new Error(`no row for ${id}`);
  const row =
    rows.find(
      (each) =>
        each.metallic_coating === facts.metallic_coating &&
        each.paint_system === facts.paint_system &&
        each.color_groups.some((group) => group === facts.color_group),
    ) ?? null;
  const flat = sheetWeightOf(first.metal, inches(Number(first.thickness.v)));
  const developed = profile.developed_width?.v;
  return {
    id,
    gauge: first.gauge ?? null,
    metal: first.metal,
    thickness_in: Number(first.thickness.v),
    thickness: first.thickness.v,
    grade: first.grade,
    availability: row?.status ?? 'not-made',
    row,
    weight: developed ? panelWeight(flat, inches(Number(developed)), inches(Number(width))) : flat,
    price: row ? Number(row.price.v) + Number(row.upcharge?.v ?? 0) : null,
  };
}

/** "24 gauge (0.0236 in, grade 50)", or "0.032 in aluminum". */
export function optionWords(
  option: Pick<Option, 'gauge' | 'thickness' | 'grade' | 'metal'>,
): string {
  return option.gauge === null
    ? `${option.thickness} in ${option.metal} (${option.grade})`
    : `${option.gauge} gauge (${option.thickness} in, ${option.grade})`;
}

export const priceAmount = (price: number | null) =>
  price === null ? null : amount(price, 2, 'usd/square');
