// Times of the ledger: UTC by RFC 3339 with microseconds, "2026-11-25T08:00:00.000001Z". As text
// they sort in time's order; as numbers they are microseconds since 1970.

const FORM = /^([1-9]\d{3}-\d\d-\d\dT\d\d:\d\d:\d\d)(?:\.(\d{1,6}))?Z$/;

/** The millisecond written last: many events of a batch share one. */
let last = { millis: Number.NaN, text: '' };

/** @throws RangeError for a time outside the years 1000 to 9999 */
export function formatMicros(micros: number): string {
  const millis = Math.floor(micros / 1000);
  if (millis !== last.millis) last = { millis, text: formatMillis(millis) };
  const rest = micros - millis * 1000;
  return `${last.text}${rest < 10 ? '00' : rest < 100 ? '0' : ''}${rest}Z`;
}

/** Without the "Z". */
function formatMillis(millis: number): string {
  const text = new Date(millis).toISOString();
  if (text.length !== 24) throw new RangeError(`${millis} is outside the years 1000 to 9999`);
  return text.slice(0, 23);
}

/**
 * Microseconds since 1970 of a UTC time with up to six digits of a second.
 * @throws RangeError for any other text, and for a day or hour that does not exist
 */
export function parseMicros(text: string): number {
  const [, second, fraction = ''] = FORM.exec(text) ?? [];
  const millis = second === undefined ? Number.NaN : Date.parse(`${second}Z`);
  if (second === undefined || !new Date(millis || 0).toISOString().startsWith(second)) {
    throw new RangeError(`"${text}" is not a time such as 2026-11-25T08:00:00.000001Z`);
  }
  return millis * 1000 + Number(fraction.padEnd(6, '0'));
}

/** The same moment in the one form the ledger keeps. */
export function normalTime(text: string): string {
  return formatMicros(parseMicros(text));
}
