import { expect, test } from '@jest/globals';
import { openCheckpoint, signCheckpoint } from './checkpoint.js';
import { EMPTY_ROOT } from './merkle.js';
import { makeSigner, openNote, readVerifier, signNote } from './note.js';

const old = makeSigner('roof.example/log', Buffer.alloc(32, 1));
const young = makeSigner('roof.example/log', Buffer.alloc(32, 2));
const text = 'one line\nanother\n';

test('a note of two keys opens for either, and lines of unknown keys are ignored', () => {
  const note = signNote(text, [old, young]);
  expect(openNote(note, [old.verifier])).toBe(text);
  expect(openNote(note, [young.verifier])).toBe(text);
  expect(() => openNote(note, [])).toThrow('not signed by a key that is known here');
});

test('a wrong signature by a known key refuses a note that another key signed rightly', () => {
  const note = signNote(text, [old, young]);
  const line = note.split('\n').at(-2) as string;
  const encoded = line.split(' ').at(-1) as string;
  const bytes = Buffer.from(encoded, 'base64');
  bytes.writeUInt8(bytes.readUInt8(40) ^ 1, 40);
  const broken = note.replace(encoded, bytes.toString('base64'));
  expect(() => openNote(broken, [old.verifier, young.verifier])).toThrow('does not fit the text');
  expect(openNote(broken, [old.verifier])).toBe(text);
});

test.each([
  ['control characters', 'a\tb\n'],
  ['no last line end', 'a'],
  ['a lone surrogate', '\ud800\n'],
])('a text with %s is not signed', (_, bad) => {
  expect(() => signNote(bad, [old])).toThrow(SyntaxError);
});

test('a verifier key is read back from its text, and one with a wrong id is refused', () => {
  expect(readVerifier(old.verifier.text).id).toBe(old.verifier.id);
  expect(() => readVerifier(old.verifier.text.replace(old.verifier.id, '00000000'))).toThrow();
  expect(() => readVerifier('roof.example/log')).toThrow(SyntaxError);
});

test('a checkpoint is read back, and not when a digit of its size changed', () => {
  const checkpoint = { origin: 'roof.example/log', size: 12, root: EMPTY_ROOT };
  const note = signCheckpoint(checkpoint, [old]);
  expect(openCheckpoint(note, [old.verifier])).toEqual(checkpoint);
  expect(() => openCheckpoint(note.replace('\n12\n', '\n13\n'), [old.verifier])).toThrow();
});
