// The packet an engineer answers: the job as it stood when the sign-off was asked, frozen by its
// digest. A fold of the record, so that it is the same whenever it is opened.

import { Injectable } from '@nestjs/common';
import { evolve, initial, jobView, type PastEvent } from '#jobs';
import { digestOf } from '../data/ledgers.js';
import { fold, Jobs } from '../jobs/fold.js';
import { pastEvent } from '../jobs/job-stream.js';

export interface Packet {
  readonly digest: string;
  readonly frozen_at: string;
  readonly engineer: string;
  readonly body: unknown;
}

type Asked = Extract<PastEvent, { type: 'sign-off-requested/1' }>;

@Injectable()
export class Packets {
  constructor(private readonly jobs: Jobs) {}

  /** undefined where the job has no such request. */
  async find(company: string, job: string, request: string): Promise<Packet | undefined> {
    const events = await this.jobs.events(company, job);
    const asked = events.find(
      (event) =>
        event.type === 'sign-off-requested/1' && (event.data as Asked['data']).request === request,
    );
    if (!asked) return undefined;
    const before = fold(initial(job), events.slice(0, asked.version - 1));
    const { surfaces, ...rest } = (pastEvent(asked) as Asked).data;
    const view = jobView(evolve(before, pastEvent(asked)));
    const body = {
      request: { ...rest, surfaces, asked_by: asked.by.person, asked_at: asked.recordedAt },
      job: { ...view, surfaces: view.surfaces.filter(({ id }) => surfaces.includes(id)) },
      cautions: CAUTIONS,
    };
    return {
      digest: digestOf(body),
      frozen_at: asked.recordedAt,
      engineer: rest.engineer.id,
      body,
    };
  }
}

const CAUTIONS = [
  'An office aid: local code and the authority having jurisdiction govern, and give the wind ' +
    'and snow values.',
  'What spans is for a licensed engineer to decide; this software signs for nobody.',
];
