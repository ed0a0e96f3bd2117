// The days that were lost when a backup was restored, and entered again. Told, not done: nothing was
// ever taken from the log of these jobs, and what is invented is that this was so.

export const RESTORED = {
  /** The backup was of the evening before the first, and was restored on the last. */
  from: '2021-06-10',
  to: '2021-06-14',
  words:
    'Entered again from paper: the backup of 9 Jun 2021 was restored on 14 Jun 2021, and what was recorded between them was gone (invented; told and not done).',
} as const;
