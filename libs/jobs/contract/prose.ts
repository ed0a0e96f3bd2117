// Recorded words as people read them, on pages and on paper alike.

export const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

/** "14 Feb 2026" from 2026-02-14; other words as they are. */
export const plainDay = (text: string): string =>
  text.replace(
    /^(\d{4})-(\d{2})-(\d{2})$/,
    (all, year: string, month: string, date: string) =>
      `${Number(date)} ${MONTHS[Number(month) - 1] ?? all} ${year}`,
  );

/** A decimal as it is printed: a real minus sign, never a hyphen. */
export const number = (text: string | number): string => String(text).replace(/^-/, '−');

/** Words of a record: its dates as "14 Feb 2026", a real minus sign before numbers. */
export const prose = (text: string): string =>
  text.replace(/\b\d{4}-\d{2}-\d{2}\b(?!T)/g, plainDay).replace(/(^|[\s(])-(?=\d)/g, '$1−');
