// What is typed for facts, checked before it is sent, and the command it becomes. A unit typed with
// the number must be the field's own: another one is refused, never converted.

import { factDefinition, factValueFault } from '#jobs/contract';
import type { CommandInput, FactName, FactValue } from '#jobs/contract';
import type { FieldErrors } from '../parts/fields.js';
import { parseDay, unit as unitText } from '../parts/words.js';
import type { FactSlot } from './by-stage.js';

export interface FactsTyped {
  /** By path; a path left out is not recorded. */
  readonly values: Readonly<Record<string, string>>;
  readonly how: string;
  readonly source: string;
  readonly reason: string;
  readonly since: string;
  readonly sinceTime: string;
}

export const NOTHING_TYPED: FactsTyped = {
  values: {},
  how: '',
  source: '',
  reason: '',
  since: '',
  sinceTime: '',
};

/** The typed text as the fact's value; undefined where it cannot be one. */
export function typedValue(name: FactName, text: string): FactValue | undefined {
  const definition = factDefinition(name);
  const given = text.trim();
  if (definition.kind === 'flag')
    return given === 'yes' ? true : given === 'no' ? false : undefined;
  if (definition.kind === 'amount') {
    const v = decimal(given, definition.unit);
    return v === undefined ? undefined : { v, u: definition.unit };
  }
  if (definition.kind === 'spacings') {
    const lines = given
      .split('\n')
      .map((line) => line.trim())
      .filter(Boolean);
    const read = lines.map((line) => spacing(line, definition.unit));
    return read.every((each) => each !== undefined) ? read : undefined;
  }
  if (definition.kind === 'day') return parseDay(given);
  if (definition.kind === 'choices') return listedValue(listed(given));
  return given;
}

/** Of several choices, that there is none: an answer too. */
export const NONE = 'none';
export const listed = (text: string): readonly string[] => text.split('\n').filter(Boolean);
const listedValue = (given: readonly string[]): readonly string[] | undefined =>
  given.includes(NONE) ? (given.length === 1 ? [] : undefined) : given;

/** "24", "24 in" where the unit is in; anything else is no number of this field. */
function decimal(text: string, unit: string): string | undefined {
  const found = /^([-−]?\d+(?:\.\d+)?)\s*(.*)$/.exec(text.replaceAll(',', ''));
  if (found === null) return undefined;
  const [, digits = '', typed = ''] = found;
  if (typed !== '' && typed !== unit && typed !== unitText(unit)) return undefined;
  return digits.replace('−', '-').replace(/^(-?)0+(?=\d)/, '$1');
}

/** "24" or "24 eave", the zone after the number. */
function spacing(line: string, unit: string): { v: string; zone?: string } | undefined {
  const found = /^(\d+(?:\.\d+)?)\s*(.*)$/.exec(line);
  if (found === null) return undefined;
  const [, v = '', rest = ''] = found;
  const zone = rest.replace(new RegExp(`^${unit}\\b\\s*`), '').trim();
  if (/^(ft|mm|cm|m)\b/i.test(zone)) return undefined;
  return zone ? { v, zone } : { v };
}

export function factFaults(slots: readonly FactSlot[], typed: FactsTyped): FieldErrors {
  const given = slots.filter(({ path }) => (typed.values[path] ?? '').trim() !== '');
  return [
    ...(given.length === 0
      ? [{ field: slots[0] ? fieldOf(slots[0]) : '', message: 'Enter at least one fact' }]
      : []),
    ...given.flatMap((slot) => {
      const fault = valueFault(slot.name, typed.values[slot.path] ?? '');
      return fault ? [{ field: fieldOf(slot), message: fault }] : [];
    }),
    ...(typed.how ? [] : [{ field: 'how-0', message: 'Say how this is known' }]),
    ...(typed.how && typed.how !== 'assumed' && !typed.source.trim()
      ? [
          {
            field: 'source',
            message: 'Name the person, the letter, the map or the tape it comes from',
          },
        ]
      : []),
  ];
}

function valueFault(name: FactName, text: string): string | undefined {
  const definition = factDefinition(name);
  const value = typedValue(name, text);
  if (value === undefined && definition.kind === 'amount') {
    return `${definition.asks}: enter a number in ${unitText(definition.unit) || 'plain digits'}, like 24.5; other units are not converted`;
  }
  if (value === undefined && definition.kind === 'day')
    return `${definition.asks}: enter the date like 14 Feb 2026`;
  if (value === undefined && definition.kind === 'choices')
    return `${definition.asks}: choose none, or which`;
  if (value === undefined)
    return `${definition.asks}: enter one number in inches a line, like “24” or “24 eave”`;
  const fault = factValueFault(name, value);
  return fault === undefined ? undefined : `${definition.asks}: ${fault}`;
}

export const controlOf = (path: string): string => `fact-${path.replaceAll('/', '-')}`;

/** The field of a fact, or the first control of its group. */
export const fieldOf = ({ path, name }: Pick<FactSlot, 'path' | 'name'>): string =>
  factDefinition(name).kind === 'choices' ? `${controlOf(path)}-0` : controlOf(path);

export function factCommand(
  slots: readonly FactSlot[],
  typed: FactsTyped,
  effectiveAt: string | undefined,
): Extract<CommandInput, { type: 'record-facts' }> {
  const source = typed.source.trim();
  const facts = slots.flatMap(({ name, path, on }) => {
    const value = typedValue(name, typed.values[path] ?? '');
    if ((typed.values[path] ?? '').trim() === '' || value === undefined) return [];
    return [
      {
        on,
        fact: name,
        value: value as { v: string; u: string },
        how: typed.how as 'told',
        ...(source ? { source } : {}),
      },
    ];
  });
  const reason = typed.reason.trim();
  return {
    type: 'record-facts',
    facts,
    ...(reason ? { reason } : {}),
    ...(effectiveAt ? { effectiveAt } : {}),
  };
}
