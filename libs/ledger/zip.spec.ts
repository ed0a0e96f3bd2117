import { expect, test } from '@jest/globals';
import fc from 'fast-check';
import { readZip, writeZip } from './zip.js';

const content = fc.uint8Array({ maxLength: 3000 }).map((bytes) => Buffer.from(bytes));
const name = fc.stringMatching(/^[a-zé]{1,8}(\/[a-z0-9]{1,8}\.txt)?$/);

test('what is written is read back, and the same content gives the same bytes', () => {
  fc.assert(
    fc.property(fc.dictionary(name, content, { maxKeys: 8, noNullPrototype: true }), (all) => {
      const files = new Map(Object.entries(all));
      const bytes = writeZip(files);
      expect(readZip(bytes)).toEqual(files);
      expect(writeZip(files)).toEqual(bytes);
    }),
  );
});

test('one bit changed anywhere is found, or changes nothing that is read', () => {
  const files = new Map([
    ['a.txt', Buffer.from('gauge 24 '.repeat(50))],
    ['b.bin', Buffer.from([1, 2, 3])],
  ]);
  const bytes = writeZip(files);
  for (let at = 0; at < bytes.length; at++) {
    const changed = Buffer.from(bytes);
    changed.writeUInt8(changed.readUInt8(at) ^ 0x10, at);
    let read: ReadonlyMap<string, Buffer> | undefined;
    try {
      read = readZip(changed);
    } catch (error) {
      expect(error).toBeInstanceOf(Error);
    }
    for (const [each, was] of read ?? []) if (files.has(each)) expect(was).toEqual(files.get(each));
  }
});

test.each(['../up', '/root', 'a/../../b', 'a\\b'])('a file named %s is refused', (bad) => {
  expect(() => readZip(writeZip(new Map([[bad, Buffer.from('x')]])))).toThrow('with the name');
});
