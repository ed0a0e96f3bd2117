// Between the record's decimal text and the numbers of a calculation, both by the unit that a key ends
// in. Rounded once, here.

const UNIT = /_(ft|in|per_12|plf|psf|lb|deg)$/;

/** Every decimal text under a key with a unit becomes a number; the rest stays as it is. */
export function asNumbers(value: unknown, key = ''): unknown {
  if (Array.isArray(value)) return value.map((each) => asNumbers(each));
  if (typeof value === 'string') return UNIT.test(key) ? Number(value) : value;
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, each]) => each !== undefined)
      .map(([name, each]) => [name, asNumbers(each, name)]),
  );
}

/** Trailing zeros are left out: "288", not "288.0000". */
export function decimal(value: number, places: number): string {
  const text = value.toFixed(places);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}

export const inInches = (value: number): string => decimal(value, 4);
export const inFeet = (value: number): string => decimal(value, 4);
export const inSquareFeet = (value: number): string => decimal(value, 2);
export const inPounds = (value: number): string => decimal(value, 1);
