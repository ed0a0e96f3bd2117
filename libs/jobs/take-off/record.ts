// Recording a take-off: counted from what a person drew and from what the stages settled; every fault
// at its place, and nothing recorded where there is one.

import { takeOff } from '#engineering';
import { accept, decline, type Context, type Decision } from '../decision.js';
import type { Job, Surface } from '../job.js';
import { lookupIn } from '../lookup.js';
import { refuse, type Refusal } from '../refusal.js';
import { layoutFor } from './layout.js';
import { placeOf, requestOf, type RecordTakeOff } from './request.js';
import { resultOf } from './result.js';
import { settingOf } from './setting.js';

export function recordTakeOff(job: Job, command: RecordTakeOff, context: Context): Decision {
  const surface = job.surfaces[command.surface];
  if (!surface || surface.withdrawn !== null)
    return decline(refuse('MOVE-03', `There is no surface ${command.surface}.`, '/surface'));
  const setting = settingOf(job, surface, context.catalogue);
  if (!('rows' in setting)) return decline(...setting);
  const asked = requestOf(command, setting);
  if (!asked.ok) return decline(...asked.faults.map((fault) => faultWords(fault, command)));
  const at = lookupIn(job);
  const layout = layoutFor(at, surface, command.drawn, setting.rows);
  const counted = takeOff(asked.request, {
    layout: layout.pieces,
    ...(context.cutStock ? { solve: context.cutStock } : {}),
  });
  if (!counted.ok) return decline(...counted.faults.map((fault) => faultWords(fault, command)));
  const notes = [
    ...counted.notes,
    ...own(surface, command, setting.reads),
    ...(layout.edition
      ? [`Fasteners are counted by the zones of ASCE/SEI ${layout.edition} laid on the planes.`]
      : []),
  ];
  const result = plain(
    resultOf(
      counted.value,
      notes,
      command,
      setting,
      Object.keys(job.surfaces).indexOf(surface.id) + 1,
    ),
  );
  const { type: _, surface: id, ...rest } = command;
  return accept({
    type: 'take-off-recorded/1',
    data: {
      surface: id,
      number: (job.takeOffs[id]?.number ?? 0) + 1,
      asked: plain(rest),
      result,
      reads: {
        ...setting.reads,
        ...Object.fromEntries(layout.paths.map((path) => [path, at(path)])),
      },
      catalogue_edition: { number: context.catalogue.edition, digest: context.catalogueDigest },
    },
  });
}

/** Without keys that hold nothing: what the record keeps is plain JSON. */
const plain = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;

/** A rise other than the recorded slope is drawn on purpose or by a slip: it is said. */
function own(
  surface: Surface,
  { drawn }: RecordTakeOff,
  reads: Readonly<Record<string, unknown>>,
): readonly string[] {
  const slope = (reads[`surface/${surface.id}/slope`] as { readonly v: string } | null)?.v;
  const rises =
    drawn.by === 'shape'
      ? [drawn.rise_per_12]
      : drawn.planes.flatMap(({ rise_per_12 }) => rise_per_12 ?? []);
  const other = [
    ...new Set(rises.filter((rise) => slope !== undefined && Number(rise) !== Number(slope))),
  ];
  return other.length === 0
    ? []
    : [
        `Drawn at ${other.join(' and ')} in 12; the slope recorded for ${surface.name} is ${slope} in 12.`,
      ];
}

function faultWords(
  { pointer, message }: { readonly pointer: string; readonly message: string },
  command: RecordTakeOff,
): Refusal {
  const place = placeOf(pointer, command);
  return refuse('MOVE-10', sentence(`${subject(place)}${message}`), place);
}

/** "trims 1, stock in": what a message that names nothing is about. */
function subject(place: string): string {
  const parts = place
    .split('/')
    .slice(1)
    .filter((part) => part !== 'drawn');
  const words = parts.map((part) =>
    /^\d+$/.test(part)
      ? String(Number(part) + 1)
      : part.replaceAll(/[-_]/g, ' ').replace(/ (ft|in|lb|plf)$/, ' ($1)'),
  );
  return words.length === 0 ? '' : `${words.join(' ')}: `;
}

const sentence = (words: string): string =>
  `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.!?]$/.test(words) ? '' : '.'}`;
