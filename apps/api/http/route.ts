// One decorator says all of a route: method, path, who may use it, what it gives, and how it can
// fail. Guard, validation and the OpenAPI document read it from here.

import {
  applyDecorators,
  HttpCode,
  RequestMapping,
  RequestMethod,
  SetMetadata,
} from '@nestjs/common';
import {
  ApiBody,
  ApiConsumes,
  ApiHeader,
  ApiOperation,
  ApiParam,
  ApiProduces,
  ApiResponse,
} from '@nestjs/swagger';
import { z } from 'zod';
import type { Role } from '#jobs/contract';
import { ANSWERS, PROBLEMS, type Answer, type ProblemKind } from '../problems.js';

export const STAFF = [
  'office',
  'project-manager',
  'crew-lead',
  'warranty-reviewer',
  'standards-manager',
  'administrator',
] as const satisfies readonly Role[];

export type Who = 'anyone' | 'signed-in' | readonly Role[];

export interface RouteWords {
  readonly says: string;
  readonly who: Who;
  readonly answers?: Answer;
  /** A schema for JSON, or the media type of a file. */
  readonly gives?: z.ZodType | string;
  /** Media type of what `gives` describes, where it is not plain JSON. */
  readonly media?: string;
  /** Media types of a body that is not JSON. */
  readonly takes?: readonly string[];
  readonly headers?: Readonly<Record<string, string>>;
  readonly fails?: readonly ProblemKind[];
}

const ROUTE = 'gauge:route';
export const routeWords = (handler: object): RouteWords | undefined =>
  Reflect.getMetadata(ROUTE, handler) as RouteWords | undefined;

type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';

export function Route(method: Method, path: string, words: RouteWords): MethodDecorator {
  const answer = words.answers ?? 'ok';
  return applyDecorators(
    SetMetadata(ROUTE, words),
    RequestMapping({ method: RequestMethod[method], path }),
    HttpCode(ANSWERS[answer]),
    ApiOperation({ summary: words.says, ...operationExtras(words) }),
    ...pathParameters(path),
    ...headers(method, words),
    ...takes(words.takes),
    gives(answer, words.gives, words.media),
    ...failures(method, path, words),
  );
}

/** Which roles a route is for stands in the document too. */
const operationExtras = (words: RouteWords) => ({
  'x-roles': words.who === 'anyone' ? [] : words.who === 'signed-in' ? ['any'] : [...words.who],
});

const pathParameters = (path: string) =>
  [...path.matchAll(/:(\w+)/g)].map(([, name]) =>
    ApiParam({ name: name ?? '', required: true, schema: { type: 'string' } }),
  );

function headers(method: Method, words: RouteWords) {
  const own = Object.entries(words.headers ?? {}).map(([name, description]) =>
    ApiHeader({ name, description, required: false, schema: { type: 'string' } }),
  );
  if (method === 'GET' || words.who === 'anyone') return own;
  const description = 'the token that GET /api/session gives';
  return [...own, ApiHeader({ name: 'X-CSRF-Token', description, schema: { type: 'string' } })];
}

function takes(types: readonly string[] | undefined) {
  if (!types) return [];
  return [ApiConsumes(...types), ApiBody({ schema: { type: 'string', format: 'binary' } })];
}

function gives(answer: Answer, what: z.ZodType | string | undefined, media?: string) {
  const status = ANSWERS[answer];
  if (what === undefined) return ApiResponse({ status, description: 'Done.' });
  if (typeof what !== 'string') {
    if (media !== undefined) {
      const schema = z.toJSONSchema(what, { target: 'draft-2020-12', io: 'output' });
      const content = { [media]: { schema: inPlace(schema) as object } };
      return applyDecorators(
        ApiProduces(media),
        ApiResponse({ status, description: 'Done.', content }),
      );
    }
    return ApiResponse({ status, description: 'Done.', standardSchema: what as never });
  }
  const content = { [what]: { schema: { type: 'string', format: 'binary' } } };
  return applyDecorators(ApiProduces(what), ApiResponse({ status, description: 'Done.', content }));
}

/** A schema under another media type stands where it is used, its named parts with it. */
function inPlace(schema: z.core.JSONSchema.BaseSchema): unknown {
  const { $defs = {}, $schema: _, ...own } = schema;
  return JSON.parse(
    JSON.stringify(own, (key: string, value: unknown) => {
      const ref = key === '' ? undefined : (value as { $ref?: unknown } | null)?.$ref;
      return typeof ref === 'string' ? $defs[ref.replace('#/$defs/', '')] : value;
    }),
  );
}

function failures(method: Method, path: string, words: RouteWords) {
  const kinds = new Set<ProblemKind>([...(words.fails ?? []), 'unreadable', 'malformed', 'fault']);
  if (words.who !== 'anyone') kinds.add('not-signed-in').add('forbidden');
  if (path.includes(':')) kinds.add('not-found');
  if (method !== 'GET') kinds.add('too-large').add('unsupported-media').add('busy');
  const titles = new Map<number, Set<string>>();
  for (const kind of kinds) {
    const { status, title } = PROBLEMS[kind];
    titles.set(status, (titles.get(status) ?? new Set()).add(title));
  }
  return [...titles].map(([status, of]) =>
    ApiResponse({
      status,
      description: [...of].join('; '),
      content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
    }),
  );
}
