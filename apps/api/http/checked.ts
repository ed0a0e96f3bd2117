// Everything from outside is checked by the schema of its parameter; all faults are named at once.

import { Injectable, type ArgumentMetadata, type PipeTransform } from '@nestjs/common';
import type { z } from 'zod';
import { Problem, type Fault } from '../problems.js';

@Injectable()
export class Checked implements PipeTransform {
  transform(value: unknown, metadata: ArgumentMetadata): unknown {
    const schema = metadata.schema as unknown as z.ZodType | undefined;
    if (!schema) return value;
    const place = metadata.type === 'body' ? '' : `/${metadata.type}`;
    const at = metadata.data === undefined ? place : `${place}/${metadata.data}`;
    const unkeepable = withNul(value, at);
    if (unkeepable.length > 0) throw new Problem('malformed', { faults: unkeepable });
    const result = schema.safeParse(value);
    if (result.success) return result.data;
    throw new Problem('malformed', { faults: faultsOf(result.error.issues, at) });
  }
}

/** Texts with the character NUL, which no table of the database can hold. */
function withNul(value: unknown, pointer: string): readonly Fault[] {
  if (typeof value === 'string') {
    return value.includes('\0') ? [{ pointer, message: 'must not hold the character NUL' }] : [];
  }
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return [];
  return Object.entries(value).flatMap(([key, each]) => [
    ...(key.includes('\0') ? [{ pointer, message: 'has a name with the character NUL' }] : []),
    ...withNul(each, `${pointer}/${escaped(key)}`),
  ]);
}

/** Faults with RFC 6901 pointers. */
export function faultsOf(issues: readonly z.core.$ZodIssue[], at = ''): readonly Fault[] {
  return issues.flatMap((issue) => {
    const pointer = at + issue.path.map((each) => `/${escaped(String(each))}`).join('');
    if (issue.code === 'unrecognized_keys') {
      return issue.keys.map((key) => ({
        pointer: `${pointer}/${escaped(key)}`,
        message: 'is not known here',
      }));
    }
    if (issue.code === 'invalid_union' && issue.errors.length > 0) {
      return faultsOf(closest(issue.errors), pointer);
    }
    return [{ pointer, message: issue.message }];
  });
}

/** Of several shapes, the one that was nearly met: the deepest first fault. */
function closest(errors: readonly (readonly z.core.$ZodIssue[])[]): readonly z.core.$ZodIssue[] {
  const depth = (issues: readonly z.core.$ZodIssue[]) =>
    Math.max(...issues.map((issue) => issue.path.length)) - issues.length / 1000;
  return errors.reduce((best, each) => (depth(each) > depth(best) ? each : best));
}

const escaped = (key: string) => key.replaceAll('~', '~0').replaceAll('/', '~1');
