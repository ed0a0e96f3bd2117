// Hazards assessed: wind and snow loads, calculated from the recorded facts or entered with source
// and date. A calculation outside its method gives no number; an engineer's pressures are then due.

import type { CommandOf } from '../contract/commands.js';
import type { HazardsContent, SnowContent, WindContent } from '../contract/events.js';
import type { Context, Decision } from '../decision.js';
import type { Job, Surface } from '../job.js';
import { lookupIn } from '../lookup.js';
import { refuse, type Refusal } from '../refusal.js';
import { calculateSnow, calculateWind } from './loads.js';
import { confirmPlain } from './confirm.js';

type Given = CommandOf<'assess-hazards'>['hazards'];

export function assessHazards(
  job: Job,
  command: CommandOf<'assess-hazards'>,
  context: Context,
): Decision {
  return confirmPlain(
    job,
    command,
    context,
    'hazards',
    (surface) => hazardsContent(job, surface, command.hazards),
    (data) => ({ type: 'hazards-assessed/1', data }),
  );
}

/** The loads as they would count, or why they cannot. */
export function hazardsContent(
  job: Job,
  surface: Surface,
  given: Given,
): HazardsContent | readonly Refusal[] {
  const wind = windContent(job, surface, given.wind);
  const snow = snowContent(job, surface, given.snow);
  const refusals = [...(Array.isArray(wind) ? wind : []), ...(Array.isArray(snow) ? snow : [])];
  if (refusals.length > 0) return refusals;
  return {
    wind: wind as WindContent,
    snow: snow as SnowContent,
    roof_live_psf: given.roof_live?.v ?? null,
    temperature: given.temperature ?? null,
  };
}

const ENTERED = { edition: null, unconfirmed: [], outside: [], steps: [] } as const;

function windContent(
  job: Job,
  surface: Surface,
  given: Given['wind'],
): WindContent | readonly Refusal[] {
  switch (given.method) {
    case 'not-applicable':
      return {
        method: 'not-applicable',
        basis: 'ASD',
        zones: [],
        by_engineer: false,
        source: given.why,
        ...ENTERED,
      };
    case 'entered': {
      const faults = given.zones.flatMap(({ zone, inward, outward }, i) => [
        ...(Number(inward.v) < 0
          ? [
              refuse(
                'MOVE-10',
                `Zone ${zone}: inward pressure acts toward the surface and is positive.`,
                `/hazards/wind/zones/${i}/inward`,
              ),
            ]
          : []),
        ...(Number(outward.v) > 0
          ? [
              refuse(
                'MOVE-10',
                `Zone ${zone}: outward pressure (uplift) is negative.`,
                `/hazards/wind/zones/${i}/outward`,
              ),
            ]
          : []),
      ]);
      const names = given.zones.map(({ zone, part }) => `${part} ${zone}`);
      const twice = names.filter((name, i) => names.indexOf(name) !== i);
      if (twice.length > 0)
        faults.push(
          refuse('MOVE-10', `Zones given twice: ${twice.join(', ')}.`, '/hazards/wind/zones'),
        );
      if (faults.length > 0) return faults;
      return {
        method: 'entered',
        basis: given.basis,
        zones: given.zones.map(({ zone, part, inward, outward }) => ({
          zone,
          part,
          inward_psf: inward.v,
          outward_psf: outward.v,
        })),
        by_engineer: given.by_engineer,
        source: `${given.source.document}, ${given.source.date}`,
        ...ENTERED,
      };
    }
    case 'calculated':
      return calculateWind(lookupIn(job), surface, given.edition);
  }
}

function snowContent(
  job: Job,
  surface: Surface,
  given: Given['snow'],
): SnowContent | readonly Refusal[] {
  switch (given.method) {
    case 'not-applicable':
      return {
        method: 'not-applicable',
        basis: 'ASD',
        roof_psf: '0',
        slippery: false,
        by_engineer: false,
        source: given.why,
        ...ENTERED,
      };
    case 'entered':
      if (Number(given.roof.v) < 0)
        return [refuse('MOVE-10', 'Snow load is not negative.', '/hazards/snow/roof')];
      return {
        method: 'entered',
        basis: given.basis,
        roof_psf: given.roof.v,
        slippery: false,
        by_engineer: given.by_engineer,
        source: `${given.source.document}, ${given.source.date}`,
        ...ENTERED,
      };
    case 'calculated':
      return calculateSnow(lookupIn(job), surface, given);
  }
}
