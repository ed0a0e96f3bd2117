// Gauge numbers as rules compare and print them: a smaller number is a thicker sheet, and the
// decimal base-metal thickness always stands beside it. Aluminum and copper have no gauge.

import type { OptionFacts } from './facts.js';
import { recorded, text } from './figures.js';
import type { Figure } from './rule.js';

export const gaugeNumber = (option: OptionFacts): number | undefined =>
  option.gauge === undefined ? undefined : Number(option.gauge);

export const thickness = (option: OptionFacts): Figure =>
  recorded('base thickness', option.thickness_in, 'in');

/** "24 gauge (0.0239 in)", or "0.032 in" where there is no gauge. */
export const optionText = (option: OptionFacts): string =>
  option.gauge === undefined
    ? text(thickness(option))
    : `${option.gauge} gauge (${text(thickness(option))})`;

/** A setting such as "24, 22" as its gauges. */
export const gaugesIn = (setting: string): readonly string[] =>
  setting.split(',').map((each) => each.trim());
