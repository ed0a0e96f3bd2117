// The kinds of things a small form asks, each with what to do where it is empty.

export const NAMES_OF_KINDS = {
  text: 'fill this in',
  long: 'write it in words',
  lines: 'write at least one line',
  day: 'enter the date like 14 Feb 2026',
  pick: 'choose one',
  choice: 'choose one',
  many: 'choose at least one',
  count: 'enter a whole number',
  decimal: 'enter a number in digits',
  files: 'add a file',
} as const;
