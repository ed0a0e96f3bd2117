// Canonical JSON by RFC 8785, strict: what is not plain JSON is refused, never repaired.

/** Plain JSON; numbers are finite, texts are well-formed Unicode. */
export type Json =
  null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json };

/**
 * The one text of a value: names sorted by UTF-16 code units, numbers as ECMAScript prints them, no
 * space. RFC 8785, section 3.2.
 * @throws TypeError naming the place (JSON pointer) and what is wrong there
 */
export function canonical(value: unknown): string {
  return write(value, 0);
}

const MAX_DEPTH = 100;

/** Names and indexes on the way down to the value being written; read only when one is refused. */
const trail: (string | number)[] = [];

function write(value: unknown, depth: number): string {
  switch (typeof value) {
    case 'string':
      return writeText(value, depth);
    case 'number':
      if (!Number.isFinite(value)) return refuse(`${String(value)} is not a JSON number`, depth);
      return String(value);
    case 'boolean':
      return value ? 'true' : 'false';
    case 'object':
      if (value === null) return 'null';
      if (depth >= MAX_DEPTH) return refuse(`deeper than ${MAX_DEPTH} levels`, depth);
      return Array.isArray(value) ? writeList(value, depth) : writeObject(value, depth);
    default:
      return refuse(`${typeof value} is not JSON`, depth);
  }
}

/** False for text with half a surrogate pair. */
export function isUnicode(text: string): boolean {
  return !/\p{Cs}/u.test(text);
}

/** Text that stands between quotes as it is: no quote, backslash, control or surrogate. */
const PLAIN = /^[ !#-[\]-\ud7ff\ue000-\uffff]*$/;

function writeText(text: string, depth: number): string {
  if (PLAIN.test(text)) return `"${text}"`;
  if (!isUnicode(text)) return refuse('a lone surrogate is not Unicode text', depth);
  return JSON.stringify(text);
}

function writeList(list: readonly unknown[], depth: number): string {
  let out = '[';
  for (let i = 0; i < list.length; i++) {
    trail[depth] = i;
    if (i > 0) out += ',';
    out += write(list[i], depth + 1);
  }
  return out + ']';
}

function writeObject(object: object, depth: number): string {
  if (!isPlain(object)) return refuse('only plain objects are JSON', depth);
  const fields = object as Record<string, unknown>;
  const names = sorted(Object.keys(fields));
  let out = '{';
  for (let i = 0; i < names.length; i++) {
    const name = names[i] as string;
    trail[depth] = name;
    if (i > 0) out += ',';
    out += `${writeText(name, depth + 1)}:${write(fields[name], depth + 1)}`;
  }
  return out + '}';
}

function sorted(names: string[]): string[] {
  for (let i = 1; i < names.length; i++) {
    if ((names[i - 1] as string) > (names[i] as string)) return names.sort();
  }
  return names;
}

function isPlain(object: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(object);
  if (prototype !== Object.prototype && prototype !== null && !isObjectPrototype(prototype)) {
    return false;
  }
  return Object.getOwnPropertySymbols(object).length === 0;
}

/** Also of another realm, such as a worker thread's message. */
function isObjectPrototype(prototype: unknown): boolean {
  return (
    typeof prototype === 'object' &&
    Object.getPrototypeOf(prototype) === null &&
    Object.hasOwn(prototype as object, 'isPrototypeOf')
  );
}

function refuse(reason: string, depth: number): never {
  const pointer = trail
    .slice(0, depth)
    .map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`)
    .join('');
  throw new TypeError(`${pointer === '' ? 'the value' : pointer}: ${reason}`);
}
