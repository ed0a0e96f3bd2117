// The source that everything invented names.

export const invented = (document: string) => ({
  document: `${document} (invented for the demonstration)`,
  edition: 'edition 1',
  date: '2026-01-05',
  invented: true,
});
