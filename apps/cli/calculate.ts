// The calculator's command line as a function: arguments in, text and exit code out. Exit code 0
// where every input was calculated, 2 where any was refused or the call itself was not understood.

import { calculateAll, calculatorNamed, calculators, calculatorSchema } from '#engineering';
import { chooseSchema } from '#jobs';
import { Command, CommanderError } from 'commander';
import { chooseAll } from './choose.js';

export interface CalcIo {
  /** The text of standard input. */
  readonly readStdin: () => Promise<string>;
  /** The text of a file; throws where it cannot be read. */
  readonly readFile: (path: string) => Promise<string>;
}

export interface CalcReply {
  readonly stdout: string;
  readonly stderr: string;
  readonly exitCode: 0 | 2;
}

interface Flags {
  readonly input?: string;
  readonly list?: true;
  readonly schema?: string;
  readonly steps?: true;
  readonly catalogue?: string;
}

export async function runCalc(args: readonly string[], io: CalcIo): Promise<CalcReply> {
  const command = described();
  try {
    command.parse([...args], { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? printed(command.helpInformation()) : refusal(error.message);
  }
  const { list, schema, input: file, steps = false } = command.opts<Flags>();
  const [name, inline] = command.args;
  if (list) return json([...calculators, chooseSchema()].map(({ name, says }) => ({ name, says })));
  if (schema !== undefined) return schemaOf(schema);
  if (name === undefined) return refusal('Name a calculator; --list shows them all.');
  if (name !== 'choose' && calculatorNamed(name) === undefined) return unknown(name);
  if (file !== undefined && inline !== undefined) {
    return refusal('Give the input once: by --input or as the last argument, not both.');
  }
  let text: string;
  try {
    text = inline ?? (file !== undefined ? await io.readFile(file) : await io.readStdin());
  } catch {
    return refusal(`The input file "${file}" cannot be read.`);
  }
  const { catalogue } = command.opts<Flags>();
  if (catalogue === undefined) return calculated(name, text, steps);
  try {
    return calculated(name, text, steps, await io.readFile(catalogue));
  } catch {
    return refusal(`The catalogue file "${catalogue}" cannot be read.`);
  }
}

function described(): Command {
  return new Command('calc')
    .description('Calculates NAME from JSON: an object, or an array of objects.')
    .argument('[NAME]', 'calculator; --list shows them all')
    .argument('[JSON]', 'the input; otherwise --input or standard input')
    .option('--input <file>', 'read the input from a file')
    .option('--list', 'list the calculators')
    .option('--schema <name>', 'what a calculator takes and gives')
    .option(
      '--catalogue <file>',
      'for choose: a catalogue edition as JSON; else the demonstration one',
    )
    .option('--steps', 'add the steps with symbol, value, unit, formula and clause')
    .exitOverride()
    .configureOutput({ writeErr: () => undefined, writeOut: () => undefined });
}

function calculated(name: string, text: string, steps: boolean, catalogue?: string): CalcReply {
  if (text.trim() === '') {
    return refusal('The input is empty; give a JSON object or an array of them.');
  }
  let input: unknown;
  try {
    input = JSON.parse(text);
  } catch (error) {
    return refusal(`The input is not JSON: ${(error as Error).message}.`);
  }
  const made =
    name === 'choose' ? chooseAll(input, catalogue) : calculateAll(name, input, { steps });
  switch (made.outcome) {
    case 'results':
      return { ...json(made.output), exitCode: made.anyRefused ? 2 : 0 };
    case 'refused':
      return { stdout: '', stderr: lines({ faults: made.faults }), exitCode: 2 };
    case 'unknown':
      return refusal(made.message);
  }
}

function schemaOf(name: string): CalcReply {
  if (name === 'choose') return json(chooseSchema());
  const one = calculatorNamed(name);
  return one === undefined ? unknown(name) : json(calculatorSchema(one));
}

function unknown(name: string): CalcReply {
  return refusal(`There is no calculator "${name}"; --list shows them all.`);
}

const lines = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;
const printed = (stdout: string): CalcReply => ({ stdout, stderr: '', exitCode: 0 });
const json = (value: unknown): CalcReply => printed(lines(value));
const refusal = (sentence: string): CalcReply => ({
  stdout: '',
  stderr: `${sentence}\n`,
  exitCode: 2,
});
