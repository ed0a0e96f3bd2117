// Quantities of two units never pass for one another: the compiler itself is asked, once with the
// right call and once with each swapped one.

import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from '@jest/globals';
import ts from 'typescript';

const FOLDER = path.dirname(fileURLToPath(import.meta.url));

/** The right call, then calls in which one thing is swapped. */
const CALLS: readonly (readonly [right: string, ...swapped: string[]])[] = [
  [`panelWindArea(feet(5), feet(3))`, `panelWindArea(inches(60), feet(3))`, `panelWindArea(5, 3)`],
  [
    `dimensionA('7-16', feet(40), feet(20), degrees(18))`,
    `dimensionA('7-16', feet(40), degrees(18), feet(20))`,
  ],
  [`exposureCoefficient('7-16', 'C', feet(20))`, `exposureCoefficient('7-16', 'C', mph(20))`],
  [
    `fastenerDemand(psf(30), inches(24), inches(12))`,
    `fastenerDemand(inches(24), psf(30), inches(12))`,
    `fastenerDemand(psf(30), feet(2), inches(12))`,
  ],
  [`panelWeight(psf(1), inches(41), inches(36))`, `panelWeight(inches(41), psf(1), inches(36))`],
  [`sheetWeightOf('steel', inches(0.0239))`, `sheetWeightOf('steel', ksi(50))`],
  [`designThickness(inches(0.0179))`, `designThickness(pounds(0.0179))`],
  [`asdSnow('7-22', psf(30))`, `asdSnow('7-22', plf(30))`],
];
const NAMES = [...new Set(CALLS.flat().flatMap((call) => call.match(/[a-zA-Z]+(?=\()/g) ?? []))];

function compiled(lines: readonly string[]): ReadonlyMap<number, string> {
  const file = path.join(FOLDER, 'units-asked.ts');
  const text = `import { ${NAMES.join(', ')} } from './index.js';\n${lines.join(';\n')};\n`;
  const options: ts.CompilerOptions = {
    strict: true,
    noEmit: true,
    skipLibCheck: true,
    target: ts.ScriptTarget.ES2023,
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    lib: ['lib.es2023.d.ts'],
    types: [],
  };
  const host = ts.createCompilerHost(options);
  const { getSourceFile, fileExists } = host;
  host.fileExists = (name) => name === file || fileExists(name);
  host.getSourceFile = (name, ...rest) =>
    name === file
      ? ts.createSourceFile(name, text, ts.ScriptTarget.ES2023)
      : getSourceFile(name, ...rest);
  const program = ts.createProgram([file], options, host);
  const found = program.getSemanticDiagnostics(program.getSourceFile(file));
  return new Map(
    found.map(({ start = 0, file: of, messageText }) => [
      (of?.getLineAndCharacterOfPosition(start).line ?? 0) - 1,
      ts.flattenDiagnosticMessageText(messageText, ' '),
    ]),
  );
}

test('the right call compiles, and no call with swapped units does', () => {
  const lines = CALLS.flat();
  const faults = compiled(lines);
  const right = new Set(CALLS.map(([call]) => call));
  const wrong = lines.filter((call, i) => faults.has(i) === right.has(call));
  expect(wrong).toEqual([]);
  expect([...faults.values()].every((message) => /not assignable/.test(message))).toBe(true);
}, 60_000);
