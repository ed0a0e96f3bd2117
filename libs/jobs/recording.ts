// Recording facts: any time, in any order, each with how it is known. A change of what a confirmed
// stage read needs a reason; a correction names the entry that was wrong.

import type { CommandOf, FactEntry } from './contract/commands.js';
import { factDefinition, factPath, factValueFault, type Path } from './contract/fact-dictionary.js';
import { accept, decline, type Decision } from './decision.js';
import { CONFIRMED_STAGES, type Job } from './job.js';
import { same } from './lookup.js';
import { refuse, type Refusal } from './refusal.js';

export function recordFacts(job: Job, command: CommandOf<'record-facts'>): Decision {
  const seen = new Set<Path>();
  const refusals: Refusal[] = [];
  const facts = command.facts.map((entry, i) => {
    const at = `/facts/${i}`;
    const { on } = factDefinition(entry.fact);
    refusals.push(...entryFaults(job, entry, at));
    const path = factPath(on, entry.on, entry.fact);
    if (seen.has(path)) refusals.push(refuse('MOVE-10', `${entry.fact} is given twice.`, at));
    seen.add(path);
    const { on: _, fact: __, ...rest } = entry;
    return { path, ...rest };
  });
  if (refusals.length > 0) return decline(...refusals);
  const disturbed = disturbs(job, facts);
  if (disturbed.length > 0 && !command.reason) {
    return decline(
      refuse(
        'MOVE-02',
        `${disturbed.join(', ')} rest on what this changes: say why it changes.`,
        '/reason',
      ),
    );
  }
  const { reason = null, corrects = null } = command;
  return accept({ type: 'facts-recorded/1', data: { facts, reason, corrects } });
}

function entryFaults(job: Job, entry: FactEntry, at: string): readonly Refusal[] {
  const { on } = factDefinition(entry.fact);
  const refusals: Refusal[] = [];
  const whole = on === 'site' || on === 'job';
  const known = whole
    ? entry.on === null
    : entry.on !== null &&
      (on === 'building' ? job.buildings[entry.on] : job.surfaces[entry.on]) !== undefined;
  if (!known) {
    const want = whole
      ? `the ${on}, so "on" is null`
      : `a ${on}: there is no ${on} ${entry.on ?? '(none)'}`;
    refusals.push(refuse('MOVE-03', `${entry.fact} is a fact of ${want}.`, `${at}/on`));
  }
  const fault = factValueFault(entry.fact, entry.value);
  if (fault) refusals.push(refuse('MOVE-10', `${entry.fact} ${fault}.`, `${at}/value`));
  if (entry.how === 'document' && !entry.source && !entry.files?.length) {
    refusals.push(
      refuse('MOVE-17', `${entry.fact} is said to come from a document: name it.`, `${at}/source`),
    );
  }
  return refusals;
}

/** Confirmed stages, by words, that read a value this would change. */
function disturbs(
  job: Job,
  facts: readonly { readonly path: Path; readonly value: unknown }[],
): readonly string[] {
  const changed = facts.filter(({ path, value }) => {
    const before = job.facts[path];
    return before !== undefined && !same(before.value, value);
  });
  return Object.values(job.surfaces).flatMap((surface) =>
    CONFIRMED_STAGES.filter((stage) => {
      const { status, record } = surface.stages[stage];
      return (
        status === 'confirmed' &&
        changed.some(({ path }) => Object.hasOwn(record?.reads ?? {}, path))
      );
    }).map((stage) => `${surface.name}: ${stage}`),
  );
}
