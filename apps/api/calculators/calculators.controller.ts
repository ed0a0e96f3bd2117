// The calculators over HTTP: the same input, faults and cautions as on the command line.

import { Body, Controller, Param, Query } from '@nestjs/common';
import { z } from 'zod';
import { calculateAll, calculatorNamed, calculators, calculatorSchema } from '#engineering';
import { choose, chooseSchema, type Context } from '#jobs';
import { Route, STAFF } from '../http/route.js';
import { Asking, type SignedIn } from '../http/signed-in.js';
import { Contexts } from '../jobs/contexts.js';
import { Problem } from '../problems.js';

const Input = z.union(
  [z.record(z.string(), z.unknown()), z.array(z.record(z.string(), z.unknown())).min(1).max(1000)],
  'must be an object, or a list of objects',
);
const Options = z.strictObject({ steps: z.enum(['true', 'false']).default('false') });
const Description = z.looseObject({
  name: z.string(),
  says: z.string(),
  input: z.record(z.string(), z.unknown()),
  output: z.record(z.string(), z.string()),
});
const WHO = [...STAFF, 'engineer'] as const;

@Controller('api/calc')
export class CalculatorsController {
  constructor(private readonly contexts: Contexts) {}

  @Route('GET', '', {
    says: 'The calculators and what they take',
    who: WHO,
    gives: z.object({ calculators: z.array(Description) }),
  })
  list() {
    return { calculators: [...calculators.map(calculatorSchema), chooseSchema()] };
  }

  @Route('POST', ':name', {
    says: 'Calculate one input, or each of a list; nothing is recorded',
    who: WHO,
    gives: z.unknown(),
  })
  async calculate(
    @Asking() asking: SignedIn,
    @Param('name') name: string,
    @Query({ schema: Options }) options: z.output<typeof Options>,
    @Body({ schema: Input }) input: z.output<typeof Input>,
  ): Promise<unknown> {
    if (name === 'choose') return chooseEach(input, await this.contexts.of(asking));
    if (!calculatorNamed(name)) throw new Problem('not-found', `There is no calculator ${name}.`);
    const made = calculateAll(name, input, { steps: options.steps === 'true' });
    if (made.outcome === 'results') return made.output;
    throw new Problem(
      'malformed',
      made.outcome === 'refused' ? { faults: made.faults } : made.message,
    );
  }
}

/** The company's own catalogue and rules edition in force today. */
function chooseEach(input: z.output<typeof Input>, context: Context): unknown {
  if (Array.isArray(input)) {
    return input.map((each) => {
      const made = choose(each, context);
      return made.ok ? made.value : { faults: made.faults };
    });
  }
  const made = choose(input, context);
  if (made.ok) return made.value;
  throw new Problem('malformed', { faults: made.faults });
}
