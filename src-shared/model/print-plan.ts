import { z } from '../profile/zod.ts';
import type { Plan } from './plan.ts';
import { planSchema } from './schema.ts';

/** In which order the parts of a value are printed: named fields in the schema's order, anything else by its id. */
interface Layout {
  readonly fields: ReadonlyMap<string, Layout>;
  /** Layout of every entry of a record or list. */
  readonly each: Layout | undefined;
}

const NO_LAYOUT: Layout = { fields: new Map(), each: undefined };

function layoutOf(schema: unknown): Layout {
  if (schema instanceof z.ZodNullable) return layoutOf(schema.unwrap());
  if (schema instanceof z.ZodObject) return { fields: new Map(Object.entries(schema.shape).map(([key, inner]) => [key, layoutOf(inner)])), each: undefined };
  if (schema instanceof z.ZodRecord) return { fields: new Map(), each: layoutOf(schema.valueType) };
  if (schema instanceof z.ZodArray) return { fields: new Map(), each: layoutOf(schema.element) };
  return NO_LAYOUT;
}

const PLAN_LAYOUT = layoutOf(planSchema);

/** Ids by their words, then by their number: pipe-2 before pipe-10. */
function sortedIds(ids: readonly string[]): string[] {
  if (ids.length < 2) return [...ids];
  const parts = ids.map((id) => {
    const digits = /\d{1,15}$/.exec(id)?.[0] ?? '';
    return { id, word: id.slice(0, id.length - digits.length), number: Number(digits) };
  });
  const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
  return parts.sort((a, b) => order(a.word, b.word) || a.number - b.number || order(a.id, b.id)).map(({ id }) => id);
}

/** Longest value that stands on one line. */
const LONGEST_LINE = 100;

/** Text with one part a line, but small values (places, references) on one: two plans then compare line by line. */
function textOf(value: unknown, { fields, each }: Layout, indent: string): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const inner = `${indent} `;
  const entries: string[] = [];
  const isList = Array.isArray(value);
  if (isList) for (const part of value) entries.push(textOf(part, each ?? NO_LAYOUT, inner));
  else {
    const held: Readonly<Record<string, unknown>> = { ...value };
    const add = (key: string, layout: Layout): void => {
      entries.push(`${JSON.stringify(key)}: ${textOf(held[key], layout, inner)}`);
    };
    for (const [key, layout] of fields) if (Object.hasOwn(held, key)) add(key, layout);
    for (const key of sortedIds(Object.keys(held).filter((name) => !fields.has(name)))) add(key, each ?? NO_LAYOUT);
  }
  const [open, close] = isList ? '[]' : '{}';
  if (entries.length === 0) return `${open}${close}`;
  const isShort = entries.reduce((length, entry) => length + entry.length + 2, 2) <= LONGEST_LINE && entries.every((entry) => !entry.includes('\n'));
  return isShort ? `${open} ${entries.join(', ')} ${close}` : `${open}\n${inner}${entries.join(`,\n${inner}`)}\n${indent}${close}`;
}

/**
 * The text of a plan.json. Equal plans print equally whatever the order in which they were drawn, and a small
 * change changes few lines, so that two plans can be compared with any text tool.
 */
export const printPlan = (plan: Plan): string => `${textOf(plan, PLAN_LAYOUT, '')}\n`;
