// The engineer's packet as a fold: the job as it stood when the sign-off was asked, for the surfaces
// of the request, with everything the evaluation said and the digest of the inputs in scope.

import { label } from '#rules';
import type { EventData, PastEvent } from '../contract/events.js';
import type { Evaluation } from '../contract/evaluation.js';
import type { Job, Surface } from '../job.js';
import type { Names } from './moment.js';
import { fastenerKey, jobUpTo, naming } from './moment.js';

export interface EngineerPacket {
  readonly document: 'engineer-packet';
  readonly job: { readonly number: string; readonly name: string };
  readonly request: string;
  readonly engineer: string;
  readonly site: string;
  readonly jurisdiction: string | null;
  /** When the facts were frozen, RFC 3339. */
  readonly frozen_at: string;
  readonly expires: string;
  readonly scope: string;
  readonly exclusions: string;
  readonly surfaces: readonly PacketSurface[];
  readonly cautions: readonly string[];
}

export interface PacketSurface {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  /** What the stages settled: "Profile" and "Ribbed 36, 36 in wide". */
  readonly panel: readonly (readonly [what: string, value: string])[];
  /** Option id of the selected thickness. */
  readonly selected: string;
  /** Name of the fastener by the catalogue edition of the evaluation; absent where it is not known. */
  readonly fastener_name?: string;
  readonly evaluation: Evaluation;
  /** Why an engineer is required. */
  readonly required: readonly string[];
  /** What departs from the usual: overrides, cautions acknowledged, calculated capacity. */
  readonly exceptions: readonly string[];
}

interface PacketOptions {
  readonly names?: Names;
  /** SHA-256 over canonical JSON, hexadecimal; the caller has it. */
  readonly digestOf: (value: unknown) => string;
}

/** undefined where nobody asked such a request. */
export function engineerPacket(
  events: readonly PastEvent[],
  request: string,
  { names = {}, digestOf }: PacketOptions,
): EngineerPacket | undefined {
  const at = events.findIndex(
    (event) => event.type === 'sign-off-requested/1' && event.data.request === request,
  );
  const asked = events[at];
  if (asked?.type !== 'sign-off-requested/1') return undefined;
  const job = jobUpTo(events, at);
  const name = naming(names);
  return {
    document: 'engineer-packet',
    job: { number: job.number, name: job.name },
    request,
    engineer: name(asked.data.engineer.id),
    site: name(job.site?.id ?? ''),
    jurisdiction: job.jurisdiction,
    frozen_at: asked.recordedAt,
    expires: asked.data.expires,
    scope: asked.data.scope_words,
    exclusions: asked.data.exclusions,
    surfaces: asked.data.surfaces.map((id) => packetSurface(job, id, asked.data, names, digestOf)),
    cautions: CAUTIONS,
  };
}

function packetSurface(
  job: Job,
  id: string,
  asked: EventData['sign-off-requested/1'],
  names: Names,
  digestOf: (value: unknown) => string,
): PacketSurface {
  const surface = job.surfaces[id];
  const gauge = surface?.stages.gauge.record;
  if (!surface || !gauge?.evaluation)
    throw new Error(`${id} had no evaluation when its sign-off was asked`);
  const { catalogue_edition, attachment } = gauge.evaluation;
  const fastener = names[fastenerKey(catalogue_edition.number, attachment.fastener)];
  return {
    id,
    name: surface.name,
    kind: surface.kind,
    panel: panelPairs(surface, digestOf(asked.scope[id] ?? {})),
    selected: gauge.content.option,
    ...(fastener === undefined ? {} : { fastener_name: fastener }),
    evaluation: gauge.evaluation,
    required: asked.requires[id] ?? [],
    exceptions: exceptionsOf(surface),
  };
}

function panelPairs({ stages }: Surface, scopeDigest: string): PacketSurface['panel'] {
  const style = stages.style.record?.content;
  const coating = stages.coating.record?.content;
  const substrate = stages.substrate.record?.content;
  return [
    ...(style ? [['Profile', `${style.profile_name}, ${style.width} in wide`] as const] : []),
    ...(coating
      ? [
          [
            'Finish',
            `${coating.metal}, ${coating.metallic_coating}, ${label(coating.paint_system)}, ${label(coating.color_group)}`,
          ] as const,
        ]
      : []),
    ...(substrate
      ? [
          [
            'Lies on',
            `${label(substrate.substrate)}${substrate.provisional ? ' (provisional until tear-off)' : ''}`,
          ] as const,
        ]
      : []),
    ['Digest of the inputs in scope', scopeDigest],
  ];
}

function exceptionsOf({ stages }: Surface): readonly string[] {
  const records = Object.values(stages).flatMap(({ record }) => (record ? [record] : []));
  return [
    ...records.flatMap(({ overrides }) =>
      overrides.map(({ rule, reason }) => `${rule} set aside: ${reason}`),
    ),
    ...records.flatMap(({ findings, acknowledged }) =>
      findings
        .filter(({ rule, outcome }) => outcome === 'fail' && acknowledged.includes(rule))
        .map(({ rule, words }) => `${rule} acknowledged: ${words}`),
    ),
  ];
}

const CAUTIONS = [
  'An office aid: local code and the authority having jurisdiction govern; wind and snow values come from them.',
  'What spans is for a licensed engineer to decide; this software signs for nobody and draws no seal. A panel that passes a chart is not thereby walkable.',
] as const;
