// Style as a test: who may import whom, file and function lengths, banned names, the visible tree.

import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { describe, expect, test } from '@jest/globals';

const ROOT = new URL('..', import.meta.url).pathname;

function filesUnder(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory())
      return entry.name === 'client' && folder === 'prisma' ? [] : filesUnder(path);
    return [path];
  });
}

const code = ['apps', 'libs', 'tests'].flatMap(filesUnder).filter((path) => /\.tsx?$/.test(path));
const textOf = (path: string): string => readFileSync(join(ROOT, path), 'utf8');
const product = code.filter((path) => !path.startsWith('tests/') && !path.includes('.spec.'));

interface Import {
  readonly from: string;
  readonly to: string;
}
function importsOf(path: string): Import[] {
  const found = textOf(path).matchAll(
    /(?:^|\n)\s*(?:import|export)\s[^'";]*?from\s*'([^']+)'|import\s*\(\s*'([^']+)'\s*\)|(?:^|\n)import\s+'([^']+)'/g,
  );
  return [...found].map((match) => {
    const to = match[1] ?? match[2] ?? match[3] ?? '';
    return { from: path, to: to.startsWith('.') ? relative(ROOT, join(ROOT, path, '..', to)) : to };
  });
}
const imports = product.flatMap(importsOf);

/** Roots of `libs/engineering` that every topic may use. */
const GROUND = ['units', 'sources', 'check', 'input', 'calculator'];
/** Topics that need another topic, and which. */
const TOPIC_NEEDS: Readonly<Record<string, readonly string[]>> = {
  panel: ['combinations'],
  fasteners: ['panel'],
  takeoff: ['wind', 'panel', 'fasteners'],
};

type Rule = readonly [folder: string, may: (to: string, from: string) => boolean, says: string];
const library =
  (name: string) =>
  (to: string): boolean =>
    to === name;
const within =
  (folder: string) =>
  (to: string): boolean =>
    to.startsWith(`${folder}/`);
const either =
  (...tests: ((to: string) => boolean)[]) =>
  (to: string): boolean =>
    tests.some((each) => each(to));

const RULES: readonly Rule[] = [
  [
    'libs/engineering',
    (to, from) => engineeringMay(to, from),
    'units, sources, check, and its own topic',
  ],
  ['libs/rules', either(library('#engineering'), within('libs/rules')), '#engineering'],
  [
    'libs/jobs',
    either(library('#rules'), library('#engineering'), library('zod'), within('libs/jobs')),
    '#rules, #engineering, zod',
  ],
  [
    'libs/drawings',
    either(library('d3-scale'), library('d3-shape'), within('libs/drawings')),
    'd3-scale, d3-shape',
  ],
  [
    'libs/documents',
    either(
      library('#jobs'),
      library('#drawings'),
      library('#engineering'),
      within('libs/documents'),
      (to) => /^(@myriaddreamin\/|csv-|exceljs|node:|dejavu-fonts-ttf)/.test(to),
    ),
    '#jobs (types), #drawings, #engineering, typst, csv, xlsx',
  ],
  [
    'libs/ledger',
    (to, from) =>
      to.startsWith('node:') ||
      within('libs/ledger')(to) ||
      (to === 'pg' && from.includes('postgres')) ||
      (['pkijs', 'asn1js'].includes(to) && from.includes('/time-')),
    'node built-ins; pg only in its PostgreSQL store, ASN.1 only in its time-stamps',
  ],
  [
    'apps/office',
    (to) =>
      !to.startsWith('@nestjs') &&
      !['#ledger', '#jobs', '#rules', '#documents', '#prisma', 'pg'].includes(to) &&
      !to.startsWith('libs/') &&
      !to.startsWith('apps/api') &&
      !to.startsWith('apps/cli'),
    '#jobs/contract, #drawings, #engineering; never #ledger, never Nest',
  ],
];

function engineeringMay(to: string, from: string): boolean {
  if (!to.startsWith('libs/engineering/')) return false;
  const topic = from.split('/')[2] ?? '';
  const target = to.split('/')[2]?.replace(/\.js$/, '') ?? '';
  if (from.split('/').length === 3)
    return GROUND.includes(topic.replace('.ts', '')) ? GROUND.includes(target) : true;
  return GROUND.includes(target) || target === topic || (TOPIC_NEEDS[topic] ?? []).includes(target);
}

describe('imports', () => {
  test.each(RULES)('%s imports only what it may', (folder, may, says) => {
    const wrong = imports
      .filter(({ from, to }) => from.startsWith(`${folder}/`) && !may(to, from))
      .map(({ from, to }) => `${from} imports ${to} (may: ${says})`);
    expect(wrong).toEqual([]);
  });

  test('a library is reached by its name from outside, never by a path into it', () => {
    const wrong = imports.filter(({ from, to }) => {
      const mine = from.split('/').slice(0, 2).join('/');
      return to.startsWith('libs/') && !to.startsWith(`${mine}/`);
    });
    expect(wrong).toEqual([]);
  });

  test('no circle of imports, not of types either', () => {
    const left = new Map(product.map((path) => [path.replace(/\.tsx?$/, ''), new Set<string>()]));
    for (const { from, to } of imports) {
      const target = to.replace(/\.js$/, '');
      if (left.has(target)) left.get(from.replace(/\.tsx?$/, ''))?.add(target);
    }
    // What imports nothing that is left is in no circle.
    const free = () => [...left].filter(([, to]) => [...to].every((each) => !left.has(each)));
    for (let next = free(); next.length > 0; next = free()) {
      for (const [path] of next) left.delete(path);
    }
    expect([...left.keys()]).toEqual([]);
  });

  test('connections are opened in one place, where one that ends unasked takes nothing with it', () => {
    const opened = code.filter((path) => /new pg\.(Pool|Client)\(/.test(textOf(path)));
    expect(opened).toEqual(['libs/ledger/postgres-pool.ts']);
  });

  test('engineering, rules and jobs read no clock, chance, file or environment', () => {
    const pure = product.filter((path) => /^libs\/(engineering|rules|jobs|drawings)\//.test(path));
    const wrong = pure.filter((path) =>
      /\bDate\.now\b|new Date\(\)|Math\.random|process\.|from 'node:|\bfetch\(/.test(textOf(path)),
    );
    expect(wrong).toEqual([]);
  });

  test('the ledger knows no roofing', () => {
    const words =
      /\b(roof|gauge(?!_service|_app|\.company|-ledger|-source)|panel|purlin|substrate)\b/i;
    const wrong = product.filter(
      (path) => path.startsWith('libs/ledger/') && words.test(textOf(path)),
    );
    expect(wrong).toEqual([]);
  });
});

describe('files', () => {
  const lengths = product.map((path) => ({ path, lines: textOf(path).split('\n').length - 1 }));
  const counted = lengths.filter(({ path }) => !path.endsWith('.table.ts'));

  test('no file is over 300 lines, but for tables of data', () => {
    expect(counted.filter(({ lines }) => lines > 300)).toEqual([]);
  });

  test('nine files in ten are under 200 lines', () => {
    const under = counted.filter(({ lines }) => lines < 200).length;
    expect(under / counted.length).toBeGreaterThanOrEqual(0.9);
  });

  test('no function is over 60 lines', () => {
    expect(product.filter((path) => !path.endsWith('.tsx')).flatMap(longFunctions)).toEqual([]);
  });

  test('no drawer: no file is named for being left over', () => {
    const banned = /^(utils?|helpers?|common|shared|misc|base|types|impl|manager)(\.|-|$)/;
    expect(code.filter((path) => banned.test(path.split('/').at(-1) ?? ''))).toEqual([]);
  });

  test('a file begins with a sentence that says what it is', () => {
    const wrong = product.filter((path) => !/^(#!.*\n)?\/\/ \S|^\/\*\*?\s/.test(textOf(path)));
    expect(wrong).toEqual([]);
  });

  test('no default exports in libraries, no inheritance in libraries', () => {
    const wrong = product.filter(
      (path) =>
        path.startsWith('libs/') &&
        /^export default|\bclass \w+ extends (?!Error\b)/m.test(textOf(path)),
    );
    expect(wrong).toEqual([]);
  });

  test('the visible top level is the one that was agreed', () => {
    const visible = readdirSync(ROOT)
      .filter(
        (name) => !name.startsWith('.') && !['node_modules', 'coverage', 'reports'].includes(name),
      )
      .sort();
    expect(visible).toEqual([
      'DEVELOPERS.md',
      'README.md',
      'apps',
      'libs',
      'nest-cli.json',
      'package-lock.json',
      'package.json',
      'prisma',
      'tests',
      'tsconfig.json',
    ]);
  });

  test('README is under 120 lines', () => {
    expect(textOf('README.md').split('\n').length).toBeLessThan(120);
  });

  test('every library opens with what it knows', () => {
    for (const name of readdirSync(join(ROOT, 'libs'))) {
      expect(statSync(join(ROOT, 'libs', name, 'index.ts')).isFile()).toBe(true);
    }
  });
});

/** Top-level functions and methods whose braces span more than 60 lines. */
function longFunctions(path: string): string[] {
  const lines = textOf(path).split('\n');
  return lines.flatMap((line, start) => {
    const opens =
      /^(export )?(async )?function\*? (\w+)|^  (?:async )?(\w+)\([^)]*\)[^=;]*\{$/.exec(line);
    if (!opens) return [];
    const indent = /^\s*/.exec(line)?.[0] ?? '';
    const end = lines.findIndex((each, i) => i > start && each === `${indent}}`);
    return end - start > 60
      ? [`${path}:${start + 1} ${opens[3] ?? opens[4] ?? ''} has ${end - start} lines`]
      : [];
  });
}
