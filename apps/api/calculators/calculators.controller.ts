// The calculators over HTTP: the same input, faults and cautions as on the command line.

import { Body, Controller, Param, Query } from '@nestjs/common';
import { z } from 'zod';
import { calculateAll, calculatorNamed, calculators, calculatorSchema } from '#engineering';
import { Route, STAFF } from '../http/route.js';
import { Problem } from '../problems.js';

const Input = z.union([
  z.record(z.string(), z.unknown()),
  z.array(z.record(z.string(), z.unknown())).min(1).max(1000),
], 'must be an object, or a list of objects');
const Options = z.strictObject({ steps: z.enum(['true', 'false']).default('false') });
const Description = z.object({
  name: z.string(),
  says: z.string(),
  input: z.record(z.string(), z.unknown()),
  output: z.record(z.string(), z.string()),
});
const WHO = [...STAFF, 'engineer'] as const;

@Controller('api/calc')
export class CalculatorsController {
  @Route('GET', '', {
    says: 'The calculators and what they take', who: WHO, gives: z.object({ calculators: z.array(Description) }),
  })
  list() {
    return { calculators: calculators.map(calculatorSchema) };
  }

  @Route('POST', ':name', {
    says: 'Calculate one input, or each of a list; nothing is recorded',
    who: WHO,
    gives: z.unknown(),
  })
  calculate(
    @Param('name') name: string,
    @Query({ schema: Options }) options: z.output<typeof Options>,
    @Body({ schema: Input }) input: z.output<typeof Input>,
  ): unknown {
    if (!calculatorNamed(name)) throw new Problem('not-found', `There is no calculator ${name}.`);
    const made = calculateAll(name, input, { steps: options.steps === 'true' });
    if (made.outcome === 'results') return made.output;
    throw new Problem('malformed', made.outcome === 'refused' ? { faults: made.faults } : made.message);
  }
}
