// The calculators over HTTP: the same input, faults and cautions as on the command line.

import { Body, Controller, Param } from '@nestjs/common';
import { z } from 'zod';
import { CALCULATORS } from '#engineering';
import { Route, STAFF } from '../http/route.js';
import { Problem } from '../problems.js';

const Input = z.record(z.string(), z.unknown(), 'must be an object');
const Description = z.object({
  name: z.string(),
  says: z.string(),
  input: z.record(z.string(), z.unknown()),
  output: z.record(z.string(), z.string()),
  cautions: z.array(z.string()),
});
const WHO = [...STAFF, 'engineer'] as const;

@Controller('api/calc')
export class CalculatorsController {
  @Route('GET', '', {
    says: 'The calculators and what they take', who: WHO, gives: z.object({ calculators: z.array(Description) }),
  })
  list() {
    const calculators = [...CALCULATORS.values()].map(({ calculate: _, ...words }) => words);
    return { calculators };
  }

  @Route('POST', ':name', {
    says: 'Calculate; nothing is recorded',
    who: WHO,
    gives: z.object({ result: z.record(z.string(), z.unknown()), cautions: z.array(z.string()) }),
  })
  calculate(@Param('name') name: string, @Body({ schema: Input }) input: z.output<typeof Input>) {
    const calculator = CALCULATORS.get(name);
    if (!calculator) throw new Problem('not-found', `There is no calculator ${name}.`);
    const outcome = calculator.calculate(input);
    if (!outcome.ok) throw new Problem('malformed', { faults: outcome.faults });
    return { result: outcome.value, cautions: calculator.cautions };
  }
}
