// Time of one whole evaluation of a surface, and of wind, snow, a load table and a take-off:
// `node --conditions=gauge-source --import ./.config/typescript.mjs tests/bench/engineering.ts`.
// Times are of this machine; a busy one shows in the processor time beside them.

import { availableParallelism, loadavg } from 'node:os';
import {
  builtRoof,
  calculatorNamed,
  degrees,
  feet,
  rectangularOpening,
  takeOff,
  zoneLayout,
  type TakeOffRequest,
} from '#engineering';
import { evaluate, questionOf, type Question } from '#jobs';
import { contextOf } from '../../libs/jobs/given.js';
import { BARN, HOUSE, playUpTo } from '../../libs/jobs/job-files.js';

/** Of an evaluation, in processor time. */
const MEDIAN_LIMIT_MS = 1;
const P99_LIMIT_MS = 5;

interface Times {
  readonly median_ms: number;
  readonly p99_ms: number;
  /** Processor time, collection of garbage and compiling included; untouched by a busy machine. */
  readonly cpu_median_ms: number;
  readonly cpu_p99_ms: number;
}

/** Runs for a while to warm up, then `count` times; the result is kept so that none is left out. */
function timesOf(run: () => unknown, count: number): Times {
  let kept: unknown = null;
  for (let i = 0; i < count / 2; i++) kept = run();
  const times: number[] = [];
  const used: number[] = [];
  for (let i = 0; i < count; i++) {
    const cpu = process.cpuUsage();
    const start = performance.now();
    kept = run();
    times.push(performance.now() - start);
    const { user, system } = process.cpuUsage(cpu);
    used.push((user + system) / 1000);
  }
  if (kept === null) throw new Error('nothing was run');
  return {
    median_ms: shareOf(times, 0.5),
    p99_ms: shareOf(times, 0.99),
    cpu_median_ms: shareOf(used, 0.5),
    cpu_p99_ms: shareOf(used, 0.99),
  };
}

const shareOf = (times: readonly number[], share: number): number =>
  times.toSorted((p, q) => p - q)[Math.floor(share * (times.length - 1))] ?? NaN;

function report(what: string, times: Times): void {
  const { median_ms, p99_ms, cpu_median_ms, cpu_p99_ms } = times;
  const columns = [median_ms, p99_ms, cpu_median_ms, cpu_p99_ms].map((ms) =>
    ms.toFixed(3).padStart(9),
  );
  console.log(`${what.padEnd(30)}${columns.join('')}${(1000 / median_ms).toFixed(0).padStart(9)}`);
}

function questionFor(file: typeof BARN): Question {
  const { job } = playUpTo(file, 'substrate');
  const command = file.gauge;
  if (command.type !== 'select-gauge') throw new Error('the last step selects a gauge');
  const surface = job.surfaces['s1'];
  if (surface === undefined) throw new Error('the job file has no surface s1');
  const asked = questionOf(job, surface, command.attachment, contextOf());
  if (Array.isArray(asked)) throw new Error(JSON.stringify(asked));
  return asked as Question;
}

/** One calculator with an input that it accepts. */
function calculation(name: string, input: Record<string, unknown>): () => unknown {
  const calculator = calculatorNamed(name);
  if (calculator === undefined) throw new Error(`no calculator ${name}`);
  const made = calculator.calculate(input);
  if (!made.ok) throw new Error(`${name}: ${JSON.stringify(made.faults)}`);
  return () => calculator.calculate(input);
}

const WIND = {
  edition: '7-16',
  V_mph: 115,
  exposure: 'C',
  h_ft: 20,
  Kzt: 1,
  elevation_ft: 0,
  enclosure: 'enclosed',
  areas_ft2: [10, 20, 50],
  roof: { shape: 'gable', theta_deg: 18.4, width_ft: 40, length_ft: 60, overhang: true },
};
const SNOW = {
  edition: '7-16',
  pg_psf: 30,
  pg_basis: 'service-50yr',
  risk_category: 'II',
  Ce: 1,
  Ct: 1,
  ventilated: false,
  surface: 'slippery-unobstructed',
  R_roof: 30,
  roof: { shape: 'gable', rise_per_12: 4, W_ft: 20 },
};
/** One repeat of a sheet: a trapezoidal rib, 3/4 in high at 9 in. */
const LOAD_TABLE = {
  outline: [
    { x_in: 0, y_in: 0 },
    { x_in: 3.5, y_in: 0 },
    { x_in: 4, y_in: 0.75 },
    { x_in: 5, y_in: 0.75 },
    { x_in: 5.5, y_in: 0 },
    { x_in: 9, y_in: 0 },
  ],
  repeat_in: 9,
  gauges: [22, 24, 26],
  grade: 'SS 80',
  spans: 3,
  span_ft: [2, 2.5, 3, 3.5, 4, 4.5, 5],
  deflection: 180,
};

/** A hip roof with a chimney under its zone layout: some 150 strips, four trims. */
function hipRoof(): () => unknown {
  const [along, across, overhang] = [60, 40, 1];
  const planes = builtRoof({
    shape: 'hip',
    along_ft: along,
    across_ft: across,
    overhang_ft: overhang,
    rise_per_12: 6,
    start: 'left',
  });
  if (!planes.ok) throw new Error(JSON.stringify(planes.faults));
  const [front, ...others] = planes.value;
  const chimney = rectangularOpening('chimney', { x_ft: 22, y_ft: 5, width_ft: 3, height_ft: 2 });
  const layout = zoneLayout({
    edition: '7-16',
    h: feet(17),
    eaveHeight: feet(12),
    roof: {
      shape: 'hip',
      theta: degrees(26.565),
      width: feet(across),
      length: feet(along),
      falls: 'along-width',
      overhang: feet(overhang),
    },
  });
  const request: TakeOffRequest = {
    planes: [{ ...front!, openings: [chimney] }, ...others],
    panel: {
      coverage_in: 16,
      weight_psf: 1.2,
      longest_ft: 45,
      round_up_in: 0.25,
      ends_in: { eave: 1, hip: -1 },
    },
    attachment: {
      fastener: 'clip',
      zones: [
        { zone: 'all', spacing_in: 24, per_row: 1 },
        { zone: '3', spacing_in: 12, per_row: 1 },
      ],
      screws_each: 2,
    },
    trims: (['eave', 'ridge', 'hip', 'sidewall'] as const).map((edge) => ({
      name: edge,
      edges: [edge],
      stock_in: 126,
      lap_in: 4,
      weight_plf: 0.5,
    })),
    closures: [],
    sealants: [],
    underlayments: [],
  };
  const made = takeOff(request, { layout });
  if (!made.ok) throw new Error(JSON.stringify(made.faults));
  return () => takeOff(request, { layout });
}

const HEADS = ['median', 'p99', 'cpu', 'cpu p99', 'per s'];
console.log(
  `load ${loadavg()[0]?.toFixed(1)} on ${availableParallelism()} processors; milliseconds`,
);
console.log(`${''.padEnd(30)}${HEADS.map((each) => each.padStart(9)).join('')}`);
const evaluations = Object.entries({ barn: BARN, house: HOUSE }).map(([name, file]) => {
  const question = questionFor(file);
  const options = evaluate(question, []).options.length;
  const times = timesOf(() => evaluate(question, []), 2000);
  report(`evaluation (${name}, ${options} options)`, times);
  return times;
});
report('wind', timesOf(calculation('wind', WIND), 3000));
report('snow', timesOf(calculation('snow', SNOW), 3000));
report('load table, 3 x 7', timesOf(calculation('load-table', LOAD_TABLE), 500));
report('take-off, hip with chimney', timesOf(hipRoof(), 300));

const slow = evaluations.filter(
  ({ cpu_median_ms, cpu_p99_ms }) => cpu_median_ms > MEDIAN_LIMIT_MS || cpu_p99_ms > P99_LIMIT_MS,
);
if (slow.length > 0) {
  console.error(`An evaluation is over ${MEDIAN_LIMIT_MS} ms median or ${P99_LIMIT_MS} ms p99.`);
  process.exitCode = 1;
}
