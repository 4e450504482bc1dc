import type { Plan } from './plan.ts';
import { planSchema } from './schema.ts';
import { z } from '../profile/zod.ts';

/** Order of ids by their words, then by their number: pipe-2 before pipe-10. */
function compareIds(a: string, b: string): number {
  const [, aWord = a, aNumber = ''] = /^(.*?)(\d{0,15})$/.exec(a) ?? [];
  const [, bWord = b, bNumber = ''] = /^(.*?)(\d{0,15})$/.exec(b) ?? [];
  if (aWord !== bWord) return aWord < bWord ? -1 : 1;
  return Number(aNumber) - Number(bNumber) || (a < b ? -1 : a > b ? 1 : 0);
}

/** The value with its fields in the schema's order and its records in the order of their ids. */
function ordered(value: unknown, schema: unknown): unknown {
  if (schema instanceof z.ZodNullable) return value === null ? null : ordered(value, schema.unwrap());
  if (Array.isArray(value)) return value.map((each) => ordered(each, schema instanceof z.ZodArray ? schema.element : undefined));
  if (typeof value !== 'object' || value === null) return value;
  const fields: Readonly<Record<string, unknown>> = { ...value };
  const shape: Readonly<Record<string, unknown>> = schema instanceof z.ZodObject ? schema.shape : {};
  const known = Object.keys(shape).filter((key) => Object.hasOwn(fields, key));
  const rest = Object.keys(fields).filter((key) => !Object.hasOwn(shape, key)).sort(compareIds);
  const inner = schema instanceof z.ZodRecord ? schema.valueType : undefined;
  return Object.fromEntries([...known, ...rest].map((key) => [key, ordered(fields[key], shape[key] ?? inner)]));
}

/** Text with one field a line, but small values (places, references) on one: a plan then compares line by line. */
function lines(value: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const inner = `${indent} `;
  const isList = Array.isArray(value);
  const entries = isList ? value.map((each) => lines(each, inner)) : Object.entries(value).map(([key, each]) => `${JSON.stringify(key)}: ${lines(each, inner)}`);
  const [open, close] = isList ? ['[', ']'] : ['{', '}'];
  if (entries.length === 0) return open + close;
  const short = `${open} ${entries.join(', ')} ${close}`;
  if (short.length <= 100 && !short.includes('\n')) return short;
  return `${open}\n${entries.map((entry) => inner + entry).join(',\n')}\n${indent}${close}`;
}

/**
 * The text of a plan.json. Equal plans print equally whatever the order in which they were drawn, and a small
 * change changes few lines, so that two plans can be compared with any text tool.
 */
export const printPlan = (plan: Plan): string => `${lines(ordered(plan, planSchema), '')}\n`;
