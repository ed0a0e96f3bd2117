// The attachment of one zone, as commands before and after the order give it.

import { z } from 'zod';
import { amountIn, Name } from './amounts.js';

export const ZoneAttachment = z.strictObject({
  zone: Name,
  spacing: amountIn('in').describe('clips along the panel, or screws across it in each row'),
  rows: amountIn('in')
    .optional()
    .describe('on a solid deck: spacing of screw rows along the panel'),
});
