// What is typed to open a job, what is missing in it, and the command it becomes.

import type { CommandInput, SurfaceKind } from '#jobs/contract';
import type { FieldErrors } from '../parts/fields.js';
import { parseDay } from '../parts/words.js';

export interface NewSurface {
  readonly name: string;
  readonly kind: SurfaceKind;
}
export interface NewBuilding {
  readonly name: string;
  readonly surfaces: readonly NewSurface[];
}
export interface NewJob {
  readonly number: string;
  readonly name: string;
  readonly due: string;
  readonly customer: string;
  readonly phone: string;
  readonly owner: string;
  readonly site: string;
  readonly jurisdiction: string;
  readonly priorities: readonly string[];
  readonly buildings: readonly NewBuilding[];
}

export const EMPTY_JOB: NewJob = {
  number: '',
  name: '',
  due: '',
  customer: '',
  phone: '',
  owner: '',
  site: '',
  jurisdiction: '',
  priorities: [],
  buildings: [{ name: '', surfaces: [{ name: '', kind: 'roof' }] }],
};

export function newJobFaults(job: NewJob): FieldErrors {
  const need = (field: 'name' | 'customer' | 'site', message: string) =>
    job[field].trim() ? [] : [{ field, message }];
  return [
    ...need('name', 'Enter a name for the job'),
    ...(job.number && !/^[A-Z0-9][A-Z0-9-]{1,19}$/.test(job.number.trim())
      ? [{ field: 'number', message: 'Enter a number like 2026-0142, or leave it empty' }]
      : []),
    ...(job.due.trim() && !parseDay(job.due)
      ? [{ field: 'due', message: 'Enter the date like 14 Feb 2026, or leave it empty' }]
      : []),
    ...need('customer', 'Enter the name of the customer'),
    ...need('site', 'Enter the address of the site'),
    ...(job.jurisdiction.trim() && !/^[A-Za-z]{2}$/.test(job.jurisdiction.trim())
      ? [{ field: 'jurisdiction', message: 'Enter two letters, like OH' }]
      : []),
    ...job.buildings.flatMap((building, b) => [
      ...(building.name.trim()
        ? []
        : [{ field: `b${b}-name`, message: `Enter a name for building ${b + 1}` }]),
      ...building.surfaces.flatMap((surface, s) =>
        surface.name.trim()
          ? []
          : [
              {
                field: `b${b}s${s}-name`,
                message: `Enter a name for surface ${s + 1} of building ${b + 1}`,
              },
            ],
      ),
    ]),
  ];
}

type OpenJob = Extract<CommandInput, { type: 'open-job' }>;
type Refs = {
  readonly customer: OpenJob['site'];
  readonly site: OpenJob['site'];
  readonly owner: OpenJob['site'] | undefined;
};

/** Ids count up: b1, b2 for buildings and s1, s2 for surfaces. */
export function openJobBody(
  job: NewJob,
  refs: Refs,
  due: string | undefined,
): Omit<OpenJob, 'type' | 'number'> & { number?: string } {
  const plain = ({ id, commitment }: OpenJob['site']) => ({
    id,
    ...(commitment ? { commitment } : {}),
  });
  const buildings = job.buildings.map(({ name }, i) => ({ id: `b${i + 1}`, name: name.trim() }));
  const surfaces = job.buildings
    .flatMap(({ surfaces: list }, i) => list.map((each) => ({ ...each, building: `b${i + 1}` })))
    .map(({ name, kind, building }, i) => ({ id: `s${i + 1}`, building, name: name.trim(), kind }));
  return {
    ...(job.number.trim() ? { number: job.number.trim() } : {}),
    name: job.name.trim(),
    site: plain(refs.site),
    parties: {
      customer: plain(refs.customer),
      ...(refs.owner ? { owner: plain(refs.owner) } : {}),
    },
    priorities: [...job.priorities] as NonNullable<OpenJob['priorities']>,
    ...(due ? { due } : {}),
    ...(job.jurisdiction.trim() ? { jurisdiction: job.jurisdiction.trim().toUpperCase() } : {}),
    buildings,
    surfaces,
  };
}

/** The field a pointer of the service belongs to. */
export function placeOf(pointer: string): string {
  const [, first = '', second = ''] = pointer.split('/');
  if (first === 'parties' || first === 'details') return second === 'owner' ? 'owner' : 'customer';
  if (first === 'buildings') return `b${second}-name`;
  return first;
}
