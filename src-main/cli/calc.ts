import { Command } from 'commander';
import { TOPICS } from '#shared/calculations/index';
import { INPUT_UNITS, keysOf } from '#shared/calculations/input-units';
import { readTopicValues } from '#shared/calculations/read-values';
import type { Topic, TopicInput } from '#shared/calculations/topic';
import { HostProblem } from '../services/host-problem.ts';
import { DISCHARGE_TITLE, dischargeCommand, dischargeHelp } from './calc-discharge.ts';
import { type ConsoleOut, type ExitCode, wrapped } from './console-out.ts';

const CAUTION = "Preliminary. The unit's own manual, its listing, the adopted code and licensed practice decide.";
/** Far above any calculator's input, and small enough to hold. */
const MOST_INPUT_CHARACTERS = 1_000_000;

/** All that stands on standard input. */
export async function readStandardInput(): Promise<string> {
  let text = '';
  for await (const chunk of process.stdin.setEncoding('utf8')) {
    text += String(chunk);
    if (text.length > MOST_INPUT_CHARACTERS) throw new HostProblem('refused', 'The input is far too long for a calculator.', '', 'Give one JSON object.');
  }
  return text;
}

const baseUnit = (input: Extract<TopicInput, { kind: 'number' | 'numbers' }>): string => Object.keys(INPUT_UNITS[input.quantity])[0] || 'no unit';

function whenMissing(input: TopicInput): string {
  if ((input.kind === 'number' || input.kind === 'choice') && input.standard !== undefined) return `; ${input.standard} when missing`;
  return input.kind !== 'list' && input.isOptional ? '; may be missing' : '';
}

function takes(input: TopicInput): string {
  switch (input.kind) {
    case 'number':
      return `number, ${input.least} to ${input.greatest} [${baseUnit(input)}]`;
    case 'numbers':
      return `list of numbers, each ${input.least} to ${input.greatest} [${baseUnit(input)}]`;
    case 'choice':
      return `one of ${input.choices.join(', ')}`;
    case 'list':
      return 'list of objects with';
  }
}

function inputLines(input: TopicInput, width: number, indent: string): string[] {
  const keys = input.kind === 'number' || input.kind === 'numbers' ? keysOf(input.name, input.quantity) : [input.name];
  return [
    ...wrapped(keys.join(' | '), width, indent),
    ...wrapped(`${input.help} (${takes(input)}${whenMissing(input)})`, width, `${indent}    `),
    ...(input.kind === 'list' ? input.inputs.flatMap((each) => inputLines(each, width, `${indent}    `)) : []),
  ];
}

function helpOf(topic: Topic, width: number): string {
  return [
    '',
    'In: one JSON object on standard input, each key once in any of its units',
    ...topic.inputs.flatMap((input) => inputLines(input, width, '  ')),
    '',
    'Out: one JSON object',
    ...Object.entries(topic.outputs).flatMap(([key, what]) => wrapped(`${key}: ${what}`, width, '  ')),
    '',
    'Basis',
    ...topic.bases.flatMap(({ formula, source, caution }) => [
      ...wrapped(formula, width, '  '),
      ...wrapped(`Source: ${source}`, width, '    '),
      ...(caution ? wrapped(`Caution: ${caution}`, width, '    ') : []),
    ]),
    '',
    ...wrapped(CAUTION, width),
  ].join('\n');
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new HostProblem('refused', 'Standard input is not JSON.', '', 'Give one JSON object with a key for each quantity.');
  }
}

/** The result of a calculator as one line of JSON. */
function answer(topic: Topic, text: string): string {
  const read = readTopicValues(topic, parsed(text));
  if (!read.ok) throw new HostProblem('refused', read.reason, '', `See calc ${topic.id} --help.`);
  try {
    const result = topic.run(read.values);
    const lost = Object.entries(result).find(([, value]) => typeof value === 'number' && !Number.isFinite(value));
    if (lost) throw new RangeError(`${lost[0]} cannot be worked out from these values.`);
    return JSON.stringify(result);
  } catch (error) {
    if (error instanceof RangeError) throw new HostProblem('refused', error.message, '', `See calc ${topic.id} --help.`);
    throw error;
  }
}

function topicCommand(topic: Topic, out: ConsoleOut, end: (code: ExitCode) => void, readInput: () => Promise<string>): Command {
  return new Command(topic.id)
    .description(topic.title)
    .addHelpText('after', () => helpOf(topic, out.width))
    .action(async () => {
      out.line(answer(topic, await readInput()));
      end(0);
    });
}

/** `calc TOPIC`: one calculator, JSON on standard input to JSON on standard output. */
export function calcCommand(out: ConsoleOut, end: (code: ExitCode) => void, readInput: () => Promise<string>): Command {
  const command = new Command('calc')
    .description('work out one topic: a JSON object in, a JSON object out')
    .argument('[topic]', 'which calculator')
    .option('--list', 'list every calculator with its keys')
    .action((topic: string | undefined, { list = false }: { list?: boolean }) => {
      if (!list) {
        const what = topic === undefined ? 'Say which topic.' : `There is no topic "${topic}".`;
        throw new HostProblem('refused', what, '', `Topics are ${[...TOPICS.map(({ id }) => id), 'discharge'].join(', ')}.`);
      }
      for (const each of TOPICS) {
        out.line(`${each.id}  ${each.title}`);
        out.line(helpOf(each, out.width));
        out.line('');
      }
      out.line(`discharge  ${DISCHARGE_TITLE}`);
      out.line(dischargeHelp(out.width));
      end(0);
    });
  for (const topic of TOPICS) command.addCommand(topicCommand(topic, out, end, readInput));
  command.addCommand(dischargeCommand(out, end, readInput));
  return command;
}
