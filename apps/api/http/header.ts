// A request header by its schema, as the other parameters have theirs.

import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { Request } from 'express';
import type { z } from 'zod';
import { Problem } from '../problems.js';
import { faultsOf } from './checked.js';

/** @throws Problem malformed, with the header's name in the pointer */
export const Header = (name: string, schema: z.ZodType): ParameterDecorator =>
  createParamDecorator((_: unknown, context: ExecutionContext): unknown => {
    const result = schema.safeParse(context.switchToHttp().getRequest<Request>().get(name));
    if (result.success) return result.data;
    throw new Problem('malformed', { faults: faultsOf(result.error.issues, `/header/${name}`) });
  })();
