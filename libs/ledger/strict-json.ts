// Reads JSON that comes from outside (RFC 8259), refusing what JSON.parse lets pass: a name given
// twice, text that is not Unicode, a number too large to be one.

import { isUnicode } from './canonical.js';
import type { Json } from './canonical.js';

/** @throws SyntaxError with the offset in the text */
export function parseStrict(text: string): Json {
  const at = { text, offset: 0 };
  const value = readValue(at, 0);
  skipSpace(at);
  if (at.offset < text.length) fail(at, 'more text after the value');
  return value;
}

interface Place {
  readonly text: string;
  offset: number;
}

const MAX_DEPTH = 100;
const SPACE = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const WORDS: readonly (readonly [string, Json])[] = [
  ['true', true],
  ['false', false],
  ['null', null],
];

function readValue(at: Place, depth: number): Json {
  skipSpace(at);
  if (depth > MAX_DEPTH) fail(at, `deeper than ${MAX_DEPTH} levels`);
  const next = at.text[at.offset];
  if (next === '{') return readObject(at, depth);
  if (next === '[') return readList(at, depth);
  if (next === '"') return readString(at);
  for (const [word, value] of WORDS) if (take(at, word)) return value;
  const digits = match(at, NUMBER);
  if (digits === undefined) fail(at, 'a value is missing');
  const number = Number(digits);
  if (!Number.isFinite(number)) fail(at, `${digits} is too large for a number`);
  return number;
}

function readObject(at: Place, depth: number): Json {
  const object: Record<string, Json> = {};
  at.offset++;
  skipSpace(at);
  if (take(at, '}')) return object;
  do {
    skipSpace(at);
    const name = readString(at);
    if (Object.hasOwn(object, name)) fail(at, `the name ${JSON.stringify(name)} is given twice`);
    skipSpace(at);
    if (!take(at, ':')) fail(at, 'a colon is missing');
    const value = readValue(at, depth + 1);
    Object.defineProperty(object, name, {
      value,
      enumerable: true,
      writable: true,
      configurable: true,
    });
    skipSpace(at);
  } while (take(at, ','));
  if (!take(at, '}')) fail(at, 'a closing brace is missing');
  return object;
}

function readList(at: Place, depth: number): Json {
  const list: Json[] = [];
  at.offset++;
  skipSpace(at);
  if (take(at, ']')) return list;
  do {
    list.push(readValue(at, depth + 1));
    skipSpace(at);
  } while (take(at, ','));
  if (!take(at, ']')) fail(at, 'a closing bracket is missing');
  return list;
}

function readString(at: Place): string {
  const quoted = match(at, STRING);
  if (quoted === undefined) fail(at, 'a string is missing or not closed');
  const text = JSON.parse(quoted) as string;
  if (!isUnicode(text)) fail(at, 'a lone surrogate is not Unicode text');
  return text;
}

function skipSpace(at: Place): void {
  match(at, SPACE);
}

function take(at: Place, expected: string): boolean {
  if (!at.text.startsWith(expected, at.offset)) return false;
  at.offset += expected.length;
  return true;
}

function match(at: Place, pattern: RegExp): string | undefined {
  pattern.lastIndex = at.offset;
  const found = pattern.exec(at.text)?.[0];
  if (found !== undefined) at.offset += found.length;
  return found;
}

function fail(at: Place, reason: string): never {
  throw new SyntaxError(`JSON at offset ${at.offset}: ${reason}`);
}
