// The content a stage command would settle, as far as it can be said without the rules' consent: what
// a rehearsal lays over the record so that rules can speak of it.

import { isOpenFraming, type Substrate } from '#rules';
import type { Command } from '../contract/commands.js';
import { factPath } from '../contract/fact-dictionary.js';
import type { Context } from '../decision.js';
import type { Job, Surface } from '../job.js';
import { lookupIn } from '../lookup.js';
import { hazardsContent } from './hazards.js';

export function draftContent(
  job: Job,
  surface: Surface,
  command: Command,
  context: Context,
): object | null {
  switch (command.type) {
    case 'choose-style': {
      const profile = context.catalogue.profiles.find(({ id }) => id === command.profile);
      return profile
        ? {
            profile: profile.id,
            profile_name: profile.name,
            family: profile.family,
            width: command.width.v,
            lap_sealant: command.lap_sealant,
          }
        : null;
    }
    case 'choose-coating': {
      const { metal, metallic_coating, paint_system, color_group, color = null } = command;
      return { metal, metallic_coating, paint_system, color_group, color };
    }
    case 'assess-hazards': {
      const content = hazardsContent(job, surface, command.hazards);
      return Array.isArray(content) ? null : content;
    }
    case 'confirm-substrate': {
      const substrate = lookupIn(job)(
        factPath('surface', surface.id, 'substrate'),
      ) as Substrate | null;
      return substrate === null
        ? null
        : { substrate, open_framing: isOpenFraming(substrate), provisional: command.provisional };
    }
    default:
      return null;
  }
}
