// The fields of an engineer's license, as recorded.

import type { License } from '#jobs/contract';
import { DateField, TextField, type FieldErrors } from './fields.js';
import { parseDay } from './words.js';

export interface LicenseTyped {
  readonly engineer: string;
  readonly license: string;
  readonly state: string;
  readonly until: string;
}

export const NO_LICENSE: LicenseTyped = { engineer: '', license: '', state: '', until: '' };

export const licenseFaults = ({ engineer, license, state, until }: LicenseTyped): FieldErrors => [
  ...(engineer.trim() ? [] : [{ field: 'engineer', message: 'Enter the name on the license' }]),
  ...(license.trim() ? [] : [{ field: 'license', message: 'Enter the license number' }]),
  ...(/^[A-Za-z]{2}$/.test(state.trim())
    ? []
    : [{ field: 'state', message: 'Enter the state or territory in two letters' }]),
  ...(parseDay(until)
    ? []
    : [{ field: 'until', message: 'Enter when the license expires, like 14 Feb 2028' }]),
];

export const licenseOf = ({ engineer, license, state, until }: LicenseTyped): License => ({
  name: engineer.trim(),
  number: license.trim(),
  jurisdiction: state.trim().toUpperCase(),
  expires: parseDay(until) ?? '',
});

const FIELD: Readonly<Record<string, string>> = {
  name: 'engineer',
  number: 'license',
  jurisdiction: 'state',
  expires: 'until',
};
export const licensePlace = (pointer: string): string | undefined => {
  const [, first, second = ''] = pointer.split('/');
  return first === 'license' ? (FIELD[second] ?? 'license') : undefined;
};

export function LicenseFields({
  typed,
  set,
  errors,
}: {
  readonly typed: LicenseTyped;
  readonly set: (change: Partial<LicenseTyped>) => void;
  readonly errors: FieldErrors;
}) {
  return (
    <fieldset className="stack">
      <legend>License, as recorded</legend>
      <TextField
        id="engineer"
        label="Name on the license"
        autoComplete="name"
        errors={errors}
        value={typed.engineer}
        onChange={(engineer) => set({ engineer })}
      />
      <TextField
        id="license"
        label="License number"
        errors={errors}
        value={typed.license}
        onChange={(license) => set({ license })}
      />
      <TextField
        id="state"
        label="State or territory"
        hint="Two letters"
        errors={errors}
        value={typed.state}
        onChange={(state) => set({ state })}
      />
      <DateField
        id="until"
        label="Expires"
        errors={errors}
        value={typed.until}
        onChange={(until) => set({ until })}
      />
    </fieldset>
  );
}
