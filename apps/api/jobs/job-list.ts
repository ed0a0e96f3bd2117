// The lists that follow the jobs: one line a job, surfaces that wait for an engineer, requests that
// wait for an answer. Rows are made from the folded job alone.

import { AFTER_STAGES, factPath, jobRow, jobView, STAGES, type Job, type JobView } from '#jobs';
import { isOpenFraming, type Substrate } from '#rules';

/** The name that its checkpoint stands under. */
export const JOB_LIST = 'jobs';

/** Jobs without surfaces come first, at -1. */
const IN_ORDER: readonly string[] = [...STAGES, 'done', ...AFTER_STAGES];

/** Columns as in the tables, without company and generation. */
export interface ListRows {
  readonly job: object;
  readonly unsigned: readonly object[];
  readonly requests: readonly object[];
}

export function listRows(job: Job): ListRows {
  const view = jobView(job);
  const row = jobRow(job);
  const order = IN_ORDER.indexOf(row.stage);
  return {
    job: {
      id: job.id,
      version: view.version,
      number: row.number,
      name: row.name,
      customer: row.customer,
      site: row.site,
      stage: row.stage,
      stage_order: order,
      stage_words: row.stage_words,
      state: row.state,
      surfaces_done: row.surfaces_done,
      surfaces: row.surfaces,
      next_action: row.next_action,
      waits_on: row.on,
      due: row.due,
      assigned: row.assigned,
      updated_at: row.updated_at,
    },
    unsigned: unsignedRows(view, row.updated_at),
    requests: requestRows(view),
  };
}

function unsignedRows(view: JobView, updatedAt: string): readonly object[] {
  return view.surfaces
    .filter(
      ({ id, withdrawn, sign_off }) =>
        withdrawn === null &&
        sign_off.status !== 'confirmed' &&
        (sign_off.required.length > 0 || spans(view, id)),
    )
    .map(({ id, name, stages, sign_off }) => {
      const request = view.requests.find((each) => each.request === sign_off.request);
      return {
        job: view.id,
        surface: id,
        number: view.number,
        job_name: view.name,
        surface_name: name,
        waits_for: waitsFor(sign_off.status, stages.gauge.status),
        engineer: request?.engineer ?? null,
        asked_at: request?.asked.at ?? null,
        since: stages.gauge.confirmed?.at ?? stages.substrate.confirmed?.at ?? updatedAt,
        due: view.due,
      };
    });
}

/** On open framing by what is recorded now, before any gauge is selected. */
function spans(view: JobView, surface: string): boolean {
  const substrate = view.facts.find(
    ({ path }) => path === factPath('surface', surface, 'substrate'),
  )?.value;
  return typeof substrate === 'string' && isOpenFraming(substrate as Substrate);
}

type Status = JobView['surfaces'][number]['sign_off']['status'];

function waitsFor(signOff: Status, gauge: Status): string {
  if (signOff === 'waiting') return "the engineer's answer";
  if (signOff === 'declined') return 'another design: the engineer declined';
  if (gauge !== 'confirmed') return 'the gauge, before an engineer can be asked';
  return signOff === 'needs-recheck' ? 'a new sign-off: inputs changed' : 'an engineer to be asked';
}

function requestRows(view: JobView): readonly object[] {
  return view.requests
    .filter(({ standing }) => standing === 'waiting')
    .map((request) => ({
      job: view.id,
      request: request.request,
      number: view.number,
      job_name: view.name,
      surfaces: request.surfaces.map((id) => ({
        id,
        name: view.surfaces.find((each) => each.id === id)?.name ?? id,
      })),
      engineer: request.engineer,
      asked_at: request.asked.at,
      asked_by: request.asked.by,
      expires: request.expires,
      standing: request.standing,
      due: view.due,
    }));
}
