import { INPUT_UNITS, inUnit, keyOf, keysOf } from './input-units.ts';
import type { Topic, TopicInput, TopicValues } from './topic.ts';

/** What came of reading JSON for a calculator. */
export type ReadValues = { readonly ok: true; readonly values: TopicValues } | { readonly ok: false; readonly reason: string };

type NumberInput = Extract<TopicInput, { kind: 'number' | 'numbers' }>;
type Value = TopicValues[string];

/** Carries the one sentence that says what is wrong with the input. */
class Refusal extends Error {}

const GREATEST_LIST = 1000;
const SAME = 1e-12;
const refuse = (reason: string): never => {
  throw new Refusal(reason);
};
const listed = (words: readonly string[]): string => (words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`);
const shown = (value: number): string => String(Number(value.toPrecision(6)));

const keysOfInput = (input: TopicInput): string[] => (input.kind === 'number' || input.kind === 'numbers' ? keysOf(input.name, input.quantity) : [input.name]);

/** The number in base SI, or a refusal that names the key and the range in the unit it was given in. */
function baseOf(json: unknown, key: string, unit: string, { quantity, least, greatest }: NumberInput): number {
  const toBase = INPUT_UNITS[quantity][unit] ?? ((value: number): number => value);
  const range = `from ${shown(inUnit(least, toBase))} to ${shown(inUnit(greatest, toBase))}`;
  if (typeof json !== 'number' || !Number.isFinite(json)) return refuse(`${key} must be a number ${range}.`);
  if (quantity === 'count' && !Number.isInteger(json)) return refuse(`${key} must be a whole number ${range}.`);
  const base = toBase(json);
  // A bound that is written in another unit may come out a last digit off.
  const isInside = base >= least - SAME * Math.abs(least) && base <= greatest + SAME * Math.abs(greatest);
  if (!isInside) return refuse(`${key} is ${json}, but must be ${range}.`);
  return Math.min(Math.max(base, least), greatest);
}

function choiceOf(json: unknown, key: string, choices: readonly string[]): string {
  const word = typeof json === 'number' ? String(json) : json;
  return choices.find((choice) => choice === word) ?? refuse(`${key} must be ${listed(choices)}.`);
}

function listOf(json: unknown, key: string, inputs: readonly TopicInput[]): TopicValues[] {
  if (!Array.isArray(json) || json.length === 0 || json.length > GREATEST_LIST) return refuse(`${key} must be a list of 1 to ${GREATEST_LIST} objects.`);
  return json.map((each, index) => valuesOf(inputs, each, `${key}[${index}]`));
}

function numbersOf(json: unknown, key: string, unit: string, input: NumberInput): number[] {
  if (!Array.isArray(json) || json.length === 0 || json.length > GREATEST_LIST) return refuse(`${key} must be a list of 1 to ${GREATEST_LIST} numbers.`);
  return json.map((each, index) => baseOf(each, `${key}[${index}]`, unit, input));
}

const unitOf = (key: string, name: string): string => (key === name ? '' : key.slice(name.length + 1));

function readValue(input: TopicInput, json: unknown, key: string, path: string): Value {
  switch (input.kind) {
    case 'number':
      return baseOf(json, path, unitOf(key, input.name), input);
    case 'numbers':
      return numbersOf(json, path, unitOf(key, input.name), input);
    case 'choice':
      return choiceOf(json, path, input.choices);
    case 'list':
      return listOf(json, path, input.inputs);
  }
}

/** What stands for an input that was not given; refuses when it must be. */
function standardOf(input: TopicInput, place: string): Value {
  if ((input.kind === 'number' || input.kind === 'choice') && input.standard !== undefined) return input.standard;
  if (input.kind !== 'list' && input.isOptional) return undefined;
  return refuse(`${place}${input.name} is missing: give ${listed(keysOfInput(input))}.`);
}

function refuseUnknown(key: string, inputs: readonly TopicInput[], place: string): never {
  const meant = inputs.find(({ name }) => key === name || key.startsWith(`${name}_`));
  if (meant) return refuse(`${place}${key} has no unit that is known for it: give ${listed(keysOfInput(meant))}.`);
  return refuse(`${place}${key} is not known here. Known are ${inputs.map((input) => keyOf(input.name, keysOfInput(input)[0]?.slice(input.name.length + 1) ?? '')).join(', ')}.`);
}

function valuesOf(inputs: readonly TopicInput[], json: unknown, where: string): TopicValues {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) return refuse(`${where || 'The input'} must be one JSON object with a key for each quantity.`);
  const given = new Map<string, unknown>(Object.entries(json));
  const place = where && `${where}.`;
  for (const key of given.keys()) if (!inputs.some((input) => keysOfInput(input).includes(key))) refuseUnknown(key, inputs, place);
  return Object.fromEntries(
    inputs.flatMap((input): [string, Value][] => {
      const keys = keysOfInput(input).filter((key) => given.has(key));
      const [key] = keys;
      if (keys.length > 1) return refuse(`${place}${input.name} is given more than once: ${keys.join(' and ')}. Give one.`);
      const value = key === undefined ? standardOf(input, place) : readValue(input, given.get(key), key, place + key);
      return value === undefined ? [] : [[input.name, value]];
    }),
  );
}

/**
 * What a calculator is given, read from parsed JSON: every key is an input's name and a known unit's suffix.
 * An unknown key, a wrong unit, a missing, repeated or impossible value is a reason that names it; never throws for input.
 */
export function readTopicValues(topic: Topic, json: unknown): ReadValues {
  try {
    return { ok: true, values: valuesOf(topic.inputs, json, '') };
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, reason: error.message };
    throw error;
  }
}
