// What if the site were another: the wind or snow at which an option's outcome turns, one quantity
// at a time. A fact of the site is never a choice, and a what-if never says that a design is
// acceptable.

import type { WhatWould } from '../contract/evaluation.js';
import type { Cells } from './cells.js';
import { isWall, zonesOf } from './demand.js';
import { judge } from './evaluate.js';
import { optionsOf, optionWords, type Option } from './options.js';
import type { Question } from './question.js';
import type { Target } from './spacings.js';

interface Quantity {
  readonly what: string;
  readonly unit: string;
  /** Display steps to one unit: 10 shows tenths. */
  readonly steps: number;
  readonly now: number;
  readonly most: number;
  readonly at: (text: string) => Question;
}

export function whatIfs(
  cells: Cells,
  question: Question,
  option: Option,
  target: Target,
): readonly WhatWould[] {
  return quantitiesOf(question).flatMap((quantity) => {
    if (!cells.spend(0)) return [];
    const turned = breakpoint(
      quantity,
      (text) => {
        const asked = quantity.at(text);
        const zones = zonesOf(asked);
        cells.spend(zones.length);
        return (
          judge(asked, option, optionsOf(asked), zones, cells.check).admissible ===
          (target === 'passes')
        );
      },
      target,
    );
    return turned === undefined ? [] : [wordsOf(option, quantity, turned, target)];
  });
}

function quantitiesOf(question: Question): readonly Quantity[] {
  const { wind, snow } = question;
  const level = `${wind.basis === 'ASD' ? 'ASD' : 'strength'} level`;
  const withZones = (zones: Question['wind']['zones']): Question => ({
    ...question,
    wind: { ...wind, zones },
  });
  const uplifts = wind.zones.map(({ zone, outward_psf }): Quantity => ({
    what: `an uplift in zone ${zone} (${level}) of`,
    unit: 'psf',
    steps: 10,
    now: Math.abs(Number(outward_psf)),
    most: Math.abs(Number(outward_psf)) * 4 + 50,
    at: (text) =>
      withZones(
        wind.zones.map((each) =>
          each.zone === zone ? { ...each, outward_psf: `-${text}` } : each,
        ),
      ),
  }));
  const scaled = (psf: string, percent: string): string =>
    String((Number(psf) * Number(percent)) / 100);
  const all: Quantity = {
    what: 'wind pressures in every zone of',
    unit: '% of those recorded',
    steps: 1,
    now: 100,
    most: 500,
    at: (text) =>
      withZones(
        wind.zones.map((each) => ({
          ...each,
          inward_psf: scaled(each.inward_psf, text),
          outward_psf: scaled(each.outward_psf, text),
        })),
      ),
  };
  const onRoof: Quantity = {
    what: 'a roof snow load of',
    unit: 'psf',
    steps: 10,
    now: Number(snow.roof_psf),
    most: Number(snow.roof_psf) * 4 + 50,
    at: (text) => ({ ...question, snow: { ...snow, roof_psf: text } }),
  };
  return [
    ...uplifts,
    ...(wind.zones.length > 0 ? [all] : []),
    ...(isWall(question) || snow.method === 'not-applicable' ? [] : [onRoof]),
  ];
}

interface Turned {
  readonly at: string;
  /** The last value that leaves the outcome as it is. */
  readonly still: string;
}

/**
 * Rounded outward to the display step: the printed value turns the outcome, one step less does not.
 */
function breakpoint(
  { now, most, steps }: Quantity,
  turns: (text: string) => boolean,
  target: Target,
): Turned | undefined {
  const up = target === 'fails';
  const text = (count: number): string => (count / steps).toFixed(steps === 1 ? 0 : 1);
  const toward = up ? 1 : -1;
  let still = up ? Math.floor(now * steps + 1e-9) : Math.ceil(now * steps - 1e-9);
  let turned = up ? Math.ceil(most * steps) : 0;
  if ((turned - still) * toward <= 0 || !turns(text(turned))) return undefined;
  while (Math.abs(turned - still) > 1) {
    const middle = Math.trunc((turned + still) / 2);
    if (turns(text(middle))) turned = middle;
    else still = middle;
  }
  const onGrid = (still / steps - now) * toward >= 0;
  return { at: text(turned), still: onGrid ? text(still) : String(now) };
}

function wordsOf(
  option: Option,
  { what, unit, now }: Quantity,
  { at, still }: Turned,
  target: Target,
): WhatWould {
  const recorded = unit === 'psf' ? `; ${now} psf is recorded` : '';
  const said =
    target === 'passes'
      ? `would pass at ${what} ${at} ${unit} or less, and not at ${still} ${unit}`
      : `would pass up to ${what} ${still} ${unit}, and not at ${at} ${unit}`;
  return {
    option: option.id,
    becomes: target,
    changes: [
      {
        what: what.replace(/ of$/, '').replace(/^an? /, ''),
        from: `${now} ${unit}`,
        to: `${at} ${unit}`,
      },
    ],
    words: `What if: ${optionWords(option)} ${said}${recorded}.`,
    site_fact: true,
  };
}
