// The shape of every problem, for the OpenAPI document.

import { z } from 'zod';

const Figure = z.object({ name: z.string(), v: z.string(), u: z.string() });

export const RefusalSchema = z
  .object({
    kind: z.enum([
      'refused-by-rules',
      'wrong-stage',
      'stale',
      'not-found',
      'forbidden',
      'invalid-request',
    ]),
    code: z.string().describe('a rule id'),
    words: z.string(),
    cites: z.array(z.string()),
    figures: z.array(Figure),
    pointer: z.string().optional(),
  })
  .meta({ id: 'Refusal' });

export const ProblemSchema = z
  .object({
    type: z.string(),
    title: z.string(),
    status: z.int(),
    detail: z.string().optional(),
    faults: z.array(z.object({ pointer: z.string(), message: z.string() })).optional(),
    refusals: z.array(RefusalSchema).optional(),
    since: z
      .array(
        z.object({
          by: z.string(),
          at: z.string(),
          words: z.string(),
          surfaces: z.array(z.string()),
        }),
      )
      .optional(),
    incident: z.string().optional(),
  })
  .meta({ id: 'Problem' });
