// Published vectors of the audit trail: Merkle trees, checkpoints, signatures, canonical JSON.

import { createHash } from 'node:crypto';
import { describe, expect, test } from '@jest/globals';
import {
  canonical,
  EMPTY_ROOT,
  formatCheckpoint,
  inclusionRanges,
  leafHash,
  makeSigner,
  nodeHash,
  openCheckpoint,
  openNote,
  parseCheckpoint,
  parseStrict,
  readVerifier,
  signCheckpoint,
  treeRoot,
  verifyConsistency,
  verifyEd25519,
  verifyInclusion,
  consistencyRanges,
} from '#ledger';
import type { Hash, Range } from '#ledger';
import { readCases, runCases } from './cases.js';
import type { StandardCase } from './cases.js';
import { exhaustiveDigest } from './merkle-exhaustive.js';
import { numberStream } from './number-stream.js';

type Values = Record<string, unknown>;

const hex = (text: unknown): Buffer => Buffer.from(text as string, 'hex');
const hexes = (list: unknown): Hash[] => (list as string[]).map(hex);
const text = (value: unknown): string => value as string;
const count = (value: unknown): number => value as number;
const rootOf = (leaves: readonly Hash[], { start, end }: Range): string =>
  treeRoot(leaves.slice(start, end)).toString('hex');

const byTopic: Record<string, (inputs: Values, each: StandardCase) => Values> = {
  'merkle/root': (inputs) => ({ root_sha256_hex: treeRoot(leaves(inputs)).toString('hex') }),
  'merkle/hash': (inputs) => {
    if ('left_hex' in inputs) {
      const node = nodeHash(hex(inputs['left_hex']), hex(inputs['right_hex']));
      return { sha256_hex: node.toString('hex') };
    }
    const leaf = inputs['leaf_data_hex'];
    return { sha256_hex: (leaf === undefined ? EMPTY_ROOT : leafHash(hex(leaf))).toString('hex') };
  },
  'merkle/nodes': (inputs) => ({ node_sha256_hex_by_level: levels(leaves(inputs)) }),
  'merkle/negative': (inputs) => {
    const [left, right] = [leafHash(hex(inputs['leaf1_hex'])), leafHash(hex(inputs['leaf2_hex']))];
    const node = nodeHash(left, right);
    const forged = leafHash(Buffer.concat([left, right]));
    return {
      node_sha256_hex: node.toString('hex'),
      forged_leaf_sha256_hex: forged.toString('hex'),
      must_differ: !node.equals(forged),
    };
  },
  'merkle/inclusion': (inputs, each) => {
    const all = leaves(inputs);
    const ranges = inclusionRanges(count(inputs['leaf_index']), all.length);
    return {
      path_node_names: each.expected['path_node_names'],
      path_sha256_hex: ranges.map((range) => rootOf(all, range)),
    };
  },
  'merkle/consistency': (inputs, each) => {
    const all = leaves(inputs);
    const ranges = consistencyRanges(count(inputs['size1_leaves']), count(inputs['size2_leaves']));
    return {
      proof_node_names: each.expected['proof_node_names'],
      proof_sha256_hex: ranges.map((range) => rootOf(all, range)),
    };
  },
  'merkle/exhaustive': (_inputs, each) => exhaustiveDigest(each.id),
  'merkle/consistency-verify': (inputs) => ({
    accept: verifyConsistency(
      count(inputs['size1_leaves']),
      count(inputs['size2_leaves']),
      hex(inputs['root1_sha256_hex']),
      hex(inputs['root2_sha256_hex']),
      hexes(inputs['proof_sha256_hex']),
    ),
  }),
  'merkle/inclusion-verify': (inputs) => ({
    accept: verifyInclusion(
      count(inputs['leaf_index']),
      count(inputs['tree_size_leaves']),
      hex(inputs['leaf_sha256_hex']),
      hexes(inputs['proof_sha256_hex']),
      hex(inputs['root_sha256_hex']),
    ),
  }),
  'checkpoint/end-to-end': (inputs) => {
    const entries = (inputs['entries_utf8'] as string[]).map((entry) => leafHash(entry));
    const origin = text(inputs['origin']);
    const signer = makeSigner(origin, hex(inputs['published_test_seed_hex']));
    expect(signer.verifier.text).toBe(inputs['verifier_key']);
    const root = treeRoot(entries);
    const note = signCheckpoint({ origin, size: entries.length, root }, [signer]);
    const opened = openCheckpoint(note, [readVerifier(text(inputs['verifier_key']))]);
    return { root_sha256_base64: opened.root.toString('base64'), checkpoint_utf8: note };
  },
  'checkpoint/signed-note': (inputs) => ({
    accept: accepts(() =>
      openNote(text(inputs['note_utf8']), [readVerifier(text(inputs['verifier_key']))]),
    ),
  }),
  'checkpoint/format': (inputs, each) => {
    if ('text_utf8' in inputs) {
      const accept = accepts(() => parseCheckpoint(text(inputs['text_utf8'])));
      return { accept, why: each.expected['why'] };
    }
    return {
      text_utf8: formatCheckpoint(
        {
          origin: text(inputs['origin']),
          size: count(inputs['tree_size_leaves']),
          root: Buffer.from(text(inputs['root_bytes_utf8'])),
        },
        inputs['extension_lines'] as string[],
      ),
    };
  },
  'jcs/document': (inputs) => {
    const result = canonical(parseStrict(text(inputs['json_utf8'])));
    return {
      canonical_utf8: result,
      canonical_hex: Buffer.from(result).toString('hex'),
      sha256_hex_computed_here: createHash('sha256').update(result).digest('hex'),
    };
  },
  'jcs/number': (inputs, each) => {
    const value = hex(inputs['ieee754_double_big_endian_hex']).readDoubleBE();
    if ('must_refuse' in each.expected) return { must_refuse: !accepts(() => canonical(value)) };
    return { canonical_utf8: canonical(value) };
  },
  'jcs/sort': (inputs) => {
    const sorted = canonical(parseStrict(text(inputs['json_utf8'])));
    return { values_in_order: [...sorted.matchAll(/:"([^"]*)"/g)].map((found) => found[1]) };
  },
  'jcs/negative': (inputs) => ({
    must_refuse: !accepts(() => canonical(parseStrict(text(inputs['json_utf8'])))),
  }),
  'jcs/number-exhaustive': (inputs) => numberStream(count(inputs['lines'])),
  'ed25519/sign-verify': (inputs) => {
    const signer = makeSigner('case', hex(inputs['seed_hex']));
    const encoded = signer.verifier.text.slice('case+00000000+'.length);
    const open = Buffer.from(encoded, 'base64').subarray(1);
    const message = hex(inputs['message_hex']);
    const signature = signer.sign(message);
    expect(verifyEd25519(open, message, signature)).toBe(true);
    return { public_key_hex: open.toString('hex'), signature_hex: signature.toString('hex') };
  },
  'ed25519/verify': verifySignature,
  'ed25519/negative': verifySignature,
};

function verifySignature(inputs: Values): Values {
  const [key, message, signature] = ['public_key_hex', 'message_hex', 'signature_hex'].map((name) =>
    hex(inputs[name]),
  ) as [Buffer, Buffer, Buffer];
  return { accept: verifyEd25519(key, message, signature) };
}

function accepts(work: () => unknown): boolean {
  try {
    work();
    return true;
  } catch {
    return false;
  }
}

function leaves(inputs: Values): Hash[] {
  return hexes(inputs['leaves_hex']).map((entry) => leafHash(entry));
}

function levels(level: Hash[]): string[][] {
  const names = level.map((hash) => hash.toString('hex'));
  if (level.length === 1) return [names];
  const above = level.flatMap((hash, i) =>
    i % 2 === 1 ? [nodeHash(level[i - 1] as Hash, hash)] : [],
  );
  return [names, ...levels(above)];
}

const cases = readCases('audit');

test('every topic has its evaluation', () => {
  expect(Object.keys(byTopic).sort()).toEqual([...new Set(cases.map((each) => each.topic))].sort());
});

const BY_REQUIREMENT = [
  ['requirement 5: canonical bytes', 'jcs/'],
  ['requirement 6: the tree', 'merkle/'],
  ['requirement 7: checkpoints', 'checkpoint/'],
  ['signatures', 'ed25519/'],
] as const;

test('every topic belongs to a requirement', () => {
  const without = cases.filter(
    ({ topic }) => !BY_REQUIREMENT.some(([, prefix]) => topic.startsWith(prefix)),
  );
  expect(without.map(({ id }) => id)).toEqual([]);
});

describe.each(BY_REQUIREMENT)('%s', (_, prefix) => {
  runCases(
    cases.filter(({ topic }) => topic.startsWith(prefix)),
    (each) => (byTopic[each.topic] as (typeof byTopic)[string])(each.inputs, each),
  );
});
