// What is typed into the form of a draft, and the draft it makes: numbers and dates as people write
// them, every fault beside its field.

import type { DraftedEdits, Edit, Severity } from '#jobs/contract';
import type { FieldError, FieldErrors } from '../parts/fields.js';
import { parseDay } from '../parts/words.js';
import type { Draft, KnownRule } from './reading.js';

export type Kind = 'change' | 'leave-out';
export interface Change {
  readonly rule: string;
  readonly kind: Kind;
  readonly version: string;
  readonly severity: string;
  /** As typed; those not touched are not there. */
  readonly settings: Readonly<Record<string, string>>;
  readonly source: string;
}
export interface Entry {
  readonly from: string;
  readonly summary: string;
  readonly changes: readonly Change[];
}
export const NO_CHANGE: Change = {
  rule: '',
  kind: 'change',
  version: '',
  severity: '',
  settings: {},
  source: '',
};
export const EMPTY: Entry = { from: '', summary: '', changes: [NO_CHANGE] };

export const entryOf = (draft: Draft): Entry => ({
  from: draft.in_force_from,
  summary: draft.summary,
  changes: draft.edits.map((edit) => ({
    rule: edit.rule,
    kind: edit.leave_out ? 'leave-out' : 'change',
    version: edit.version === undefined ? '' : String(edit.version),
    severity: edit.severity ?? '',
    settings: Object.fromEntries(
      Object.entries(edit.settings ?? {}).map(([name, value]) => [name, String(value)]),
    ),
    source: edit.source,
  })),
});

export type Made =
  | { readonly ok: true; readonly body: DraftedEdits }
  | { readonly ok: false; readonly errors: FieldErrors };

export function draftOf(entry: Entry, known: readonly KnownRule[]): Made {
  const from = parseDay(entry.from);
  const edits = entry.changes.map((change, i) => editOf(change, i, known));
  const errors: FieldError[] = [
    ...(from ? [] : [{ field: 'from', message: 'Enter the day like 14 Feb 2026' }]),
    ...(entry.summary.trim()
      ? []
      : [{ field: 'summary', message: 'Say in a sentence what changes' }]),
    ...edits.flatMap((each) => each.errors),
  ];
  if (errors.length > 0 || !from) return { ok: false, errors };
  const summary = entry.summary.trim();
  return { ok: true, body: { in_force_from: from, summary, edits: edits.map(({ edit }) => edit) } };
}

interface EditMade {
  readonly edit: Edit;
  readonly errors: FieldErrors;
}

function editOf(change: Change, i: number, known: readonly KnownRule[]): EditMade {
  const { rule, kind, version, severity, source } = change;
  const own = known.find((each) => each.rule === rule);
  const settings = Object.entries(change.settings).map(([name, text]) => ({
    name,
    value: settingOf(text, own?.settings[name]),
  }));
  const errors = [
    ...(rule ? [] : [{ field: `edit-${i}-rule`, message: 'Choose the rule' }]),
    ...(source.trim()
      ? []
      : [{ field: `edit-${i}-source`, message: 'Say what the change rests on' }]),
    ...(kind === 'leave-out' ? [] : settings)
      .filter(({ value }) => value === undefined)
      .map(({ name }) => ({ field: settingField(i, name), message: 'Enter a number like 1.75' })),
  ];
  const base = { rule, leave_out: kind === 'leave-out', source: source.trim() };
  if (kind === 'leave-out') return { edit: base, errors };
  const given = settings.flatMap(({ name, value }) => (value === undefined ? [] : [[name, value]]));
  return {
    edit: {
      ...base,
      ...(version ? { version: Number(version) } : {}),
      ...(severity ? { severity: severity as Severity } : {}),
      ...(given.length > 0 ? { settings: Object.fromEntries(given) as Edit['settings'] } : {}),
    },
    errors,
  };
}

function settingOf(
  text: string,
  own: string | number | boolean | undefined,
): string | number | boolean | undefined {
  if (typeof own === 'boolean') return text === 'true';
  if (typeof own !== 'number') return text.trim();
  const plain = text.trim().replace('−', '-');
  return /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : undefined;
}

export const settingField = (i: number, name: string): string => `edit-${i}-setting-${name}`;

/** The field that a pointer into the draft belongs to. */
export function fieldOf(pointer: string): string {
  const [, first = '', i, part, name] = pointer.split('/');
  if (first === 'in_force_from') return 'from';
  if (first !== 'edits') return first;
  if (i === undefined) return 'edit-0-rule';
  if (part === 'settings' && name) return settingField(Number(i), name);
  return part === 'source' ? `edit-${i}-source` : `edit-${i}-rule`;
}
