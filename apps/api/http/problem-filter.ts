// Turns everything thrown into a problem: a refusal with its reasons, a fault with only an id.

import {
  Catch,
  HttpException,
  Injectable,
  type ArgumentsHost,
  type ExceptionFilter,
} from '@nestjs/common';
import type { Request, Response } from 'express';
import { v7 as uuid } from 'uuid';
import { Problem, PROBLEMS, problemBody, type ProblemKind } from '../problems.js';
import { Log } from './log.js';

@Injectable()
@Catch()
export class ProblemFilter implements ExceptionFilter {
  constructor(private readonly log: Log) {}

  catch(thrown: unknown, host: ArgumentsHost): void {
    const response = host.switchToHttp().getResponse<Response>();
    const request = host.switchToHttp().getRequest<Request>();
    const problem = problemOf(thrown) ?? this.fault(thrown, request);
    if (response.headersSent) {
      response.destroy();
      return;
    }
    const { retryAfter } = problem.details;
    if (retryAfter !== undefined) response.setHeader('Retry-After', String(retryAfter));
    response.status(PROBLEMS[problem.kind].status);
    response.setHeader('Cache-Control', 'no-store');
    response.type('application/problem+json').send(JSON.stringify(problemBody(problem)));
  }

  private fault(thrown: unknown, request: Request): Problem {
    const incident = uuid();
    this.log.error({ incident, method: request.method, path: request.path, err: thrown }, 'fault');
    return new Problem('fault', { incident });
  }
}

function problemOf(thrown: unknown): Problem | undefined {
  if (thrown instanceof Problem) return thrown;
  if (thrown instanceof HttpException) {
    const kind = kindOf(thrown.getStatus());
    if (kind) return new Problem(kind, thrown.message);
  }
  const status = (thrown as { status?: unknown } | null)?.status;
  const kind = typeof status === 'number' ? kindOf(status) : undefined;
  return kind ? new Problem(kind) : undefined;
}

/** What the framework throws by status: our first kind of the same one. */
function kindOf(status: number): ProblemKind | undefined {
  if (status >= PROBLEMS.fault.status) return undefined;
  const kinds = Object.keys(PROBLEMS) as ProblemKind[];
  return kinds.find((kind) => PROBLEMS[kind].status === status) ?? 'unreadable';
}
