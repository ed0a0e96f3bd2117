// How a time-stamp is given to pages.

import { z } from 'zod';

export const TimeStampSchema = z
  .object({
    asks: z.boolean().describe('whether a time-stamping authority is set up'),
    stamp: z
      .object({
        at: z.string(),
        by: z.string().describe("subject of the authority's certificate"),
        size: z.int().describe('of the checkpoint that was stamped'),
      })
      .nullable()
      .describe('null: untimed'),
    fault: z.string().nullable().describe('what is wrong with the token that is kept'),
    trouble: z.string().nullable().describe('why the authority gave none when last asked'),
    untimed: z.int().nullable().describe('size of a newer checkpoint that has none yet'),
  })
  .meta({ id: 'TimeStamp' });
