// What a licensed engineer is asked to review: site, facts and their sources, loads by zone, profile,
// thickness, attachment, every check with its steps. No seal, no signature: those are the engineer's.

import type { Drawing } from '#drawings';
import type { EngineerPacket, Evaluation, PacketSurface } from '#jobs';
import { stepTables } from './check-tables.js';
import {
  againstTable,
  changesTable,
  choosingWords,
  comparison,
  demandTable,
  optionName,
  optionsTable,
  reasonsTable,
  zoneTable,
} from './option-tables.js';
import { issuePaper, mustCaution, PdfRefused, type PaperOptions } from './pdf.js';
import { factTable } from './fact-table.js';
import { column, numbers, printDrawing, type Pair, type Section } from './print.js';
import { dayWords, momentWords, spaced } from './words.js';

export interface PacketOptions extends PaperOptions {
  /** Zone plan, load against span, by surface id. */
  readonly drawings?: Readonly<Record<string, readonly Drawing[]>>;
}

export const PRELIMINARY = 'preliminary: for review by a licensed engineer';

/** Throws PdfRefused; a selected option that the evaluation does not hold among others. */
export async function renderEngineerPacket(
  packet: EngineerPacket,
  options: PacketOptions,
): Promise<Uint8Array> {
  const { drawings = {}, standing, ...rest } = options;
  const about = {
    kind: 'Engineer packet',
    about: `Request ${packet.request}; job ${packet.job.number}, ${packet.job.name}`,
    at: packet.frozen_at,
    cautions: mustCaution('engineer packet', packet.cautions),
  };
  const body = {
    head: head(packet),
    sections: packet.surfaces.flatMap((each) => surfaceSections(each, drawings[each.id] ?? [])),
  };
  const stands = standing === undefined ? PRELIMINARY : `${PRELIMINARY}; ${standing}`;
  return issuePaper('engineer-packet', about, body, { ...rest, standing: stands });
}

function head(packet: EngineerPacket): readonly Pair[] {
  return [
    ['Engineer asked', packet.engineer],
    ['Site', packet.site],
    ['Jurisdiction', packet.jurisdiction ?? 'not recorded'],
    ['Facts frozen', momentWords(packet.frozen_at)],
    ['Answer until', dayWords(packet.expires)],
    ['Scope', packet.scope],
    ['Not in scope', packet.exclusions === '' ? 'nothing is excluded' : packet.exclusions],
  ];
}

function surfaceSections(surface: PacketSurface, drawings: readonly Drawing[]): readonly Section[] {
  const { evaluation, name } = surface;
  const picked = evaluation.options.find(({ id }) => id === surface.selected);
  if (!picked) throw new PdfRefused(`${name}: the evaluation has no option ${surface.selected}`);
  const { rules_edition, catalogue_edition, engine } = evaluation;
  return [
    {
      name: `${name} (${surface.kind})`,
      words: choosingWords(evaluation),
      list: [
        ...surface.required.map((each) => `Required because: ${each}`),
        ...surface.exceptions.map((each) => `Exception: ${each}`),
      ],
      pairs: [
        ...surface.panel,
        ['Selected', optionName(picked)],
        [
          'Governs',
          picked.governs
            ? `zone ${picked.governs.zone}, ${picked.governs.limit_state}, utilization ${picked.governs.utilization}`
            : 'no number',
        ],
        [
          'Worked out by',
          `${engine}, rules edition ${rules_edition.number} (${rules_edition.digest}), catalogue edition ${catalogue_edition.number} (${catalogue_edition.digest})`,
        ],
      ],
      drawings: [
        ...drawings.map((each) => printDrawing(each)),
        printDrawing(comparison(name, evaluation, picked), 'beside'),
      ],
      tables: [
        demandTable(name, evaluation),
        zoneTable('Every check of the selection', picked),
        attachmentTable(name, evaluation, surface.fastener_name),
        optionsTable(name, evaluation, picked),
        ...evaluation.options
          .filter((each) => each !== picked)
          .map((each) => zoneTable('Every check of', each)),
        againstTable(name, evaluation, picked),
        changesTable(name, evaluation),
        reasonsTable(name, evaluation),
        factTable(
          `Facts and their sources, ${name}`,
          evaluation.facts,
          ({ how }) => how ?? 'decided earlier',
        ),
      ],
    },
    { name: `Arithmetic: ${name}`, level: 2, tables: stepTables(evaluation, picked) },
  ];
}

const attachmentTable = (where: string, { attachment }: Evaluation, fastener?: string) => ({
  caption: `Attachment by zone, ${where}`,
  columns: [column('Zone'), column('Fastener', 1), numbers('Spacing'), numbers('Rows')],
  rows: attachment.zones.map(({ zone, spacing, rows }) => [
    zone === 'all' ? 'every zone' : zone,
    fastener ?? spaced(attachment.fastener),
    `${spacing.v} in`,
    rows ? `${rows.v} in` : '–',
  ]),
});
