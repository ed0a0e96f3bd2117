// The calculator's command line: every way in, every refusal, and the exit codes.

import { describe, expect, test } from '@jest/globals';
import { calculators } from '#engineering';
import { runCalc, type CalcReply } from './calculate.js';

const calc = (args: readonly string[], stdin = '', files: Record<string, string> = {}) =>
  runCalc(args, {
    readStdin: () => Promise.resolve(stdin),
    readFile: (path) =>
      files[path] === undefined ? Promise.reject(new Error('none')) : Promise.resolve(files[path]),
  });

const outputOf = (reply: CalcReply): unknown => JSON.parse(reply.stdout);
const G90 = '{"designation":"G90"}';

describe('input', () => {
  test.each([
    ['standard input', ['coating-mass'], G90, {}],
    ['the last argument', ['coating-mass', G90], '', {}],
    ['a file', ['coating-mass', '--input', 'a.json'], '', { 'a.json': G90 }],
  ])('by %s', async (_way, args, stdin, files) => {
    const reply = await calc(args, stdin, files);
    expect(reply).toMatchObject({ exitCode: 0, stderr: '' });
    expect(outputOf(reply)).toMatchObject({ total_ozft2: 0.9, one_side_min: 0.32 });
  });

  test('given twice is refused', async () => {
    const reply = await calc(['coating-mass', '--input', 'a.json', G90], '', { 'a.json': G90 });
    expect(reply).toMatchObject({ exitCode: 2, stdout: '' });
    expect(reply.stderr).toMatch(/once/);
  });
});

describe('output', () => {
  test('keys at the top, notes and cautions beside them, steps only when asked', async () => {
    const plain = outputOf(await calc(['coating-mass', G90]));
    expect(plain).toMatchObject({ notes: expect.any(Array), cautions: expect.any(Array) });
    expect(plain).not.toHaveProperty('steps');
    const asked = outputOf(await calc(['coating-mass', '--steps', G90])) as { steps: unknown[] };
    expect(asked.steps[0]).toEqual({
      symbol: 'TST',
      value: 0.9,
      unit: 'oz/ft2',
      formula: 'least total of both sides for G90',
      clause: 'ASTM A653/A653M-15, Table 1',
    });
  });

  test('an array gives an array, also with one element or none', async () => {
    expect(outputOf(await calc(['coating-mass', `[${G90}]`]))).toHaveLength(1);
    expect(outputOf(await calc(['coating-mass', '[]']))).toEqual([]);
  });

  test('a refused element stands in its place, and the exit code is 2', async () => {
    const reply = await calc(['coating-mass', `[${G90},{"designation":"60G"},7,${G90}]`]);
    expect(reply).toMatchObject({ exitCode: 2, stderr: '' });
    const output = outputOf(reply) as Record<string, unknown>[];
    expect(output.map((each) => 'faults' in each)).toEqual([false, true, true, false]);
    expect(output[1]).toEqual({
      faults: [{ pointer: '/designation', message: expect.stringContaining('must be one of G30') }],
    });
  });

  test('the faults of a single object go to standard error, every one', async () => {
    const reply = await calc(['corrosion', '{"T_C":99,"RH_pct":"x","Zn":1,"SO2_Pd_mg_m2d":1}']);
    expect(reply).toMatchObject({ exitCode: 2, stdout: '' });
    const { faults } = JSON.parse(reply.stderr) as { faults: { pointer: string }[] };
    expect(faults.map((each) => each.pointer).sort()).toEqual([
      '/Cl_Sd_mg_m2d',
      '/RH_pct',
      '/T_C',
      '/Zn',
    ]);
  });
});

describe('one clear sentence for a call not understood', () => {
  test.each([
    ['unknown name', ['no-such'], '{}', /no calculator "no-such"/],
    ['no name', [], '{}', /Name a calculator/],
    ['not JSON', ['coating-mass', '{nope'], '', /not JSON/],
    ['empty input', ['coating-mass'], ' \n', /empty/],
    ['unreadable file', ['coating-mass', '--input', 'gone.json'], '', /cannot be read/],
    ['unknown option', ['coating-mass', '--no-such'], '{}', /unknown option/],
    ['unknown schema', ['--schema', 'no-such'], '', /no calculator "no-such"/],
  ])('%s', async (_what, args, stdin, says) => {
    const reply = await calc(args, stdin);
    expect(reply).toMatchObject({ exitCode: 2, stdout: '' });
    expect(reply.stderr).toMatch(says);
    expect(reply.stderr.trim().split('\n')).toHaveLength(1);
  });
});

describe('what there is', () => {
  test('--list names every calculator once', async () => {
    const names = (outputOf(await calc(['--list'])) as { name: string }[]).map((each) => each.name);
    expect(names).toEqual([...calculators.map((each) => each.name), 'choose']);
    expect(new Set(names).size).toBe(names.length);
  });

  test.each(calculators.map((each) => each.name))('--schema %s', async (name) => {
    const schema = outputOf(await calc(['--schema', name])) as Record<string, object>;
    expect(schema).toMatchObject({ name, input: { type: 'object', additionalProperties: false } });
    expect(Object.keys(schema['output'] ?? {}).length).toBeGreaterThan(2);
  });
});
