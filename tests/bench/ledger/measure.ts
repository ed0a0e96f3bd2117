// Measuring side by side: variants take turns within a round, and each is compared with the ceiling
// of the same round, so that the machine's mood cancels out.

export interface Sample {
  /** Per second. */
  readonly rate: number;
  readonly p50: number;
  readonly p99: number;
}

export interface Variant {
  readonly name: string;
  /** One call is one transaction of client `i`. */
  readonly step: (client: number) => Promise<unknown>;
}

export interface Row {
  readonly name: string;
  readonly rate: number;
  /** Median over the rounds of this variant's rate to the first variant's. */
  readonly ratio: number;
  readonly p50: number;
  readonly p99: number;
}

export interface Effort {
  readonly clients: number;
  readonly rounds: number;
  readonly seconds: number;
  readonly beforeRound?: () => Promise<unknown>;
}

/** The first variant is the one that all are compared with. */
export async function compare(variants: readonly Variant[], effort: Effort): Promise<Row[]> {
  const samples = new Map(variants.map((each) => [each.name, [] as Sample[]]));
  for (const each of variants) await drive(each, effort.clients, 0.3);
  for (let round = 0; round < effort.rounds; round++) {
    await effort.beforeRound?.();
    for (let i = 0; i < variants.length; i++) {
      const each = variants[(i + round) % variants.length] as Variant;
      samples.get(each.name)?.push(await drive(each, effort.clients, effort.seconds));
    }
  }
  const base = samples.get(variants[0]?.name ?? '') ?? [];
  return [...samples].map(([name, own]) => ({
    name,
    rate: median(own.map((s) => s.rate)),
    ratio: median(own.map((s, round) => s.rate / (base[round] as Sample).rate)),
    p50: median(own.map((s) => s.p50)),
    p99: median(own.map((s) => s.p99)),
  }));
}

/** So many clients, each waiting for its answer before the next call. */
async function drive({ step }: Variant, clients: number, seconds: number): Promise<Sample> {
  const latencies: number[] = [];
  const start = performance.now();
  const end = start + seconds * 1000;
  const client = async (i: number) => {
    for (let before = performance.now(); before < end; before = performance.now()) {
      await step(i);
      latencies.push(performance.now() - before);
    }
  };
  await Promise.all(Array.from({ length: clients }, (_, i) => client(i)));
  const rate = latencies.length / ((performance.now() - start) / 1000);
  return { rate, p50: quantile(latencies, 0.5), p99: quantile(latencies, 0.99) };
}

export function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}

export function quantile(values: readonly number[], part: number): number {
  const sorted = Float64Array.from(values).sort();
  const at = (sorted.length - 1) * part;
  const [low, high] = [sorted[Math.floor(at)] ?? Number.NaN, sorted[Math.ceil(at)] ?? Number.NaN];
  return low + (high - low) * (at - Math.floor(at));
}
