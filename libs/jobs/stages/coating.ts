// Coating chosen: base metal with its metallic coating, paint system and color group. The exact color
// may stay open until the order.

import type { CommandOf } from '../contract/commands.js';
import type { Context, Decision } from '../decision.js';
import type { Job } from '../job.js';
import { confirmPlain } from './confirm.js';

export function chooseCoating(
  job: Job,
  command: CommandOf<'choose-coating'>,
  context: Context,
): Decision {
  const { metal, metallic_coating, paint_system, color_group, color = null } = command;
  return confirmPlain(
    job,
    command,
    context,
    'coating',
    () => ({ metal, metallic_coating, paint_system, color_group, color }),
    (data) => ({ type: 'coating-chosen/1', data }),
  );
}
