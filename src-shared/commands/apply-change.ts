import { firstIssues } from '../model/first-issues.ts';
import type { z } from '../profile/zod.ts';
import { refuse } from './command.ts';

/** A field's key as a word: `railHeight_m` is "Rail height". */
function wordOf(key: string): string {
  const plain = key.replace(/_(m|m2|m3|m3_s|rad|pct|K|Pa|kg|V|A|dBA|cd)$/, '').replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return plain.charAt(0).toUpperCase() + plain.slice(1);
}

/**
 * Sets the named fields of a thing, once each fits the schema of the plan; refuses with a sentence otherwise.
 * A field given as undefined stays as it is.
 * @param fields the fields that may be set, every one optional
 */
export function applyChange<T extends object>(thing: T, fields: z.ZodObject, change: Partial<T>): void {
  const given = Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
  const [issue] = firstIssues(fields, given, 1);
  if (issue) {
    const text = issue.text === 'must be at least 0' ? 'cannot be less than 0' : issue.text;
    refuse(issue.path.length === 0 ? `This cannot be changed: it ${text}.` : `${wordOf(String(issue.path[0]))} ${text}.`);
  }
  Object.assign(thing, structuredCopy(given));
}

/** A copy that shares nothing with what was given, so that the plan owns its parts. */
const structuredCopy = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(structuredCopy);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, structuredCopy(part)]));
};
