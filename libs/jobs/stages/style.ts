// Style chosen: profile and width of the catalogue edition, and whether laps are sealed.

import type { CommandOf } from '../contract/commands.js';
import type { Context, Decision } from '../decision.js';
import type { Job } from '../job.js';
import { refuse } from '../refusal.js';
import { confirmPlain } from './confirm.js';

export function chooseStyle(
  job: Job,
  command: CommandOf<'choose-style'>,
  context: Context,
): Decision {
  const profile = context.catalogue.profiles.find(({ id }) => id === command.profile);
  return confirmPlain(
    job,
    command,
    context,
    'style',
    () => {
      if (!profile) {
        return [
          refuse(
            'MOVE-11',
            `Profile ${command.profile} is not in catalogue edition ${context.catalogue.edition}.`,
            '/profile',
          ),
        ];
      }
      const width = profile.widths.find(({ v }) => Number(v) === Number(command.width.v));
      if (!width) {
        const widths = profile.widths.map(({ v }) => `${v} in`).join(', ');
        return [
          refuse(
            'MOVE-11',
            `${profile.name} covers ${widths}, not ${command.width.v} in.`,
            '/width',
          ),
        ];
      }
      return {
        profile: profile.id,
        profile_name: profile.name,
        family: profile.family,
        width: width.v,
        lap_sealant: command.lap_sealant,
      };
    },
    (data) => ({ type: 'style-chosen/1', data }),
  );
}
