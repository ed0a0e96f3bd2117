// npm run bench:office -- [--minutes 5] [--jobs 100000] [--people 25] [--pause 4]: so many people working
// in a large company over real HTTP, and what they waited for. Each finds a job, opens it and writes to
// it, then pauses for about so many seconds. A short form: --minutes 0.5 --jobs 2000. Exit code 1 where
// a goal is missed.

import { parseArgs } from 'node:util';
import { setTimeout as sleep } from 'node:timers/promises';
import type { BenchClient } from './client.js';
import { jobId } from './fill.js';
import { tell } from './verdict.js';
import { makeWorld } from './world.js';

const { values } = parseArgs({
  options: {
    minutes: { type: 'string', default: '5' },
    jobs: { type: 'string', default: '100000' },
    people: { type: 'string', default: '25' },
    pause: { type: 'string', default: '4' },
  },
});
const MINUTE_MS = 60_000;
/** Between two acts of one person: half of it to one and a half. */
const PAUSE_MS = Number(values.pause) * 1000;
const say = (line: string) => process.stdout.write(`${line}\n`);
const times = {
  list: [] as number[],
  job: [] as number[],
  command: [] as number[],
  ask: [] as number[],
};
let refused = 0;
const LISTS = [
  'sort=due',
  'state=Blocked&sort=due',
  'stage=gauge&sort=-due',
  'find=Customer%2010',
  'due=overdue&sort=due',
  'sort=-updated',
  'find=B-777',
  'state=Waiting&stage=sign-off&sort=due',
];

const FACT = {
  type: 'record-facts',
  facts: [
    {
      on: null,
      fact: 'wind-speed',
      value: { v: '105', u: 'mph' },
      how: 'told',
      source: 'The county',
    },
  ],
  reason: 'Asked again.',
};

const jobs = Number(values.jobs);
const size = { jobs, eventsPerJob: 20, people: Number(values.people) };
const world = await makeWorld(size, say);
let met = false;
try {
  await Promise.all(world.people.map((each) => act(each, 0)));
  for (const each of Object.values(times)) each.length = 0;
  const end = performance.now() + Number(values.minutes) * MINUTE_MS;
  await Promise.all(world.people.map((each, i) => work(each, i, end)));
  const acts = Object.values(times).reduce((n, each) => n + each.length, 0);
  say(
    `${world.people.length} people, ${values.minutes} minutes, ${acts} requests, ${refused} refused`,
  );
  met = tell(
    [
      { what: 'command', times: times.command, part: 0.95, under: 60 },
      { what: 'server list', times: times.list, part: 0.95, under: 100 },
      { what: 'job page', times: times.job, part: 0.95, under: 100 },
      { what: 'what the rules say', times: times.ask, part: 0.95, under: 200 },
    ],
    say,
  );
} finally {
  await world.stop();
}
process.exit(met ? 0 : 1);

async function work(person: BenchClient, i: number, end: number): Promise<void> {
  // Nobody begins at the same moment as all others.
  await sleep(PAUSE_MS * Math.random());
  for (let n = i; performance.now() < end; n++) {
    await act(person, n);
    await sleep(PAUSE_MS * (0.5 + Math.random()));
  }
}

/** Finds a job, opens it, writes; as an office does all day. */
async function act(person: BenchClient, n: number): Promise<void> {
  const list = await person.get(`/jobs?${LISTS[n % LISTS.length]}`);
  times.list.push(list.ms);
  const id = jobId(Math.floor(Math.random() * jobs));
  const job = await person.get(`/jobs/${id}`);
  times.job.push(job.ms);
  await command(person, id, job.etag, {
    type: 'add-note',
    about: null,
    words: `Called, time ${n}.`,
  });
  if (n % 4 === 0) await command(person, id, null, { type: 'describe-job', assigned: person.id });
  if (n % 4 === 2) {
    const asked = await person.post(`/jobs/${id}/rehearsals`, FACT);
    times.ask.push(asked.ms);
    await command(person, id, null, FACT);
  }
}

async function command(
  person: BenchClient,
  id: string,
  etag: string | null,
  body: unknown,
): Promise<void> {
  const version = etag ?? (await person.get(`/jobs/${id}`)).etag ?? '';
  const headers = { 'if-match': version, 'idempotency-key': crypto.randomUUID() };
  try {
    times.command.push((await person.post(`/jobs/${id}/commands`, body, headers)).ms);
  } catch (error) {
    // Two of them on one job at once: the second is told so, as it should be.
    if (!/ answered (409|412)/.test(String(error))) throw error;
    refused++;
  }
}
