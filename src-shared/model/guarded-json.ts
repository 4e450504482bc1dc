import { type PlanFailure, RESTORE_COPY, planFailure } from './plan-problem.ts';

/** What JSON text can hold. */
export type JsonValue = null | boolean | number | string | JsonValue[] | { [key: string]: JsonValue };
/** An object of JSON text. */
export type JsonObject = { [key: string]: JsonValue };

/** Longest text that is read [characters]; a plan of 20,000 pipes has half of it. */
export const LONGEST_JSON = 16 * 1024 * 1024;
/** Deepest nesting that is read; a plan has ten. */
export const DEEPEST_JSON = 40;
/** Most values that are read, so that a small text cannot fill the memory; a plan of 20,000 pipes has half of them. */
export const MOST_JSON_VALUES = 1_000_000;

const FORBIDDEN_KEYS = ['__proto__', 'constructor', 'prototype'];

const placeOf = (text: string, at: number): string => {
  let line = 1;
  let start = 0;
  for (let end = text.indexOf('\n'); end >= 0 && end < at; end = text.indexOf('\n', start)) {
    line += 1;
    start = end + 1;
  }
  return `line ${line}, character ${at - start + 1}`;
};

/** Counts nesting and values without building anything. */
function measure(text: string): { depth: number; values: number } {
  let depth = 0;
  let deepest = 0;
  let values = 1;
  let inString = false;
  for (let i = 0; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    if (inString) {
      if (code === 0x5c) i += 1;
      else if (code === 0x22) inString = false;
    } else if (code === 0x22) inString = true;
    else if (code === 0x7b || code === 0x5b) {
      depth += 1;
      values += 1;
      if (depth > deepest) deepest = depth;
    } else if (code === 0x7d || code === 0x5d) depth -= 1;
    else if (code === 0x2c) values += 1;
  }
  return { depth: deepest, values };
}

const SPACE = /[ \t\n\r]*/y;
const PLAIN = /(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![\w.+-])/y;
const ESCAPED = /["\\/bfnrt]|u[0-9a-fA-F]{4}/y;

/** Where a pattern ends that begins at a place, or −1. */
const endOf = (pattern: RegExp, text: string, at: number): number => {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : -1;
};

/** Where the string ends that begins at a place, or −1 − the place of what is wrong in it. */
function stringEnd(text: string, at: number): number {
  for (let i = at + 1; i < text.length; i += 1) {
    const code = text.charCodeAt(i);
    if (code === 0x22) return i + 1;
    if (code < 0x20) return -1 - i;
    if (code === 0x5c) {
      const end = endOf(ESCAPED, text, i + 1);
      if (end < 0) return -1 - i;
      i = end - 1;
    }
  }
  return -1 - text.length;
}

const excerpt = (text: string, at: number): string => text.slice(at, at + 12).split(/[\n\r]/)[0] ?? '';

/** Where text stops being JSON, and what is wrong there. Only asked for text that does not parse. */
function faultOf(text: string): { at: number; what: string } {
  const opened: string[] = [];
  let wants: 'value' | 'value or end' | 'key' | 'key or end' | 'colon' | 'comma or end' = 'value';
  let end = 0;
  for (;;) {
    const at = endOf(SPACE, text, end);
    const sign = text.charAt(at);
    if (sign === '') return { at, what: 'the text ends too early' };
    const isMark = '{}[],:'.includes(sign);
    end = isMark ? at + 1 : sign === '"' ? stringEnd(text, at) : endOf(PLAIN, text, at);
    if (end < 0) {
      const place = sign === '"' ? -1 - end : at;
      return place >= text.length ? { at: place, what: 'the text ends too early' } : { at: place, what: `“${excerpt(text, place)}” is not understood` };
    }
    const wrong = () => ({ at, what: `“${excerpt(text, at)}” does not belong` });
    if (sign === '}' || sign === ']') {
      const isEnd = wants === 'comma or end' || (sign === '}' ? wants === 'key or end' : wants === 'value or end');
      if (!isEnd || opened.pop() !== (sign === '}' ? '{' : '[')) return wrong();
      wants = 'comma or end';
    } else if (sign === ',') {
      if (wants !== 'comma or end' || opened.length === 0) return wrong();
      wants = opened.at(-1) === '{' ? 'key' : 'value';
    } else if (sign === ':') {
      if (wants !== 'colon') return wrong();
      wants = 'value';
    } else if (wants === 'key' || wants === 'key or end') {
      if (sign !== '"') return wrong();
      wants = 'colon';
    } else if (wants === 'value' || wants === 'value or end') {
      if (isMark) opened.push(sign);
      wants = !isMark ? 'comma or end' : sign === '{' ? 'key or end' : 'value or end';
    } else return wrong();
  }
}

/** The first key anywhere in a value that could reach into the program's own objects. */
function findForbiddenKey(root: JsonValue): string | undefined {
  const waiting: JsonValue[] = [root];
  for (let value = waiting.pop(); value !== undefined; value = waiting.pop()) {
    if (value === null || typeof value !== 'object') continue;
    const forbidden = Array.isArray(value) ? undefined : FORBIDDEN_KEYS.find((key) => Object.hasOwn(value, key));
    if (forbidden) return forbidden;
    for (const inner of Object.values(value)) if (inner !== null && typeof inner === 'object') waiting.push(inner);
  }
  return undefined;
}

/**
 * Reads JSON text that nobody vouches for: bounded in size, nesting and number of values, and without keys
 * that could reach into the program's own objects.
 * @param name what the text is, as the user knows it: "plan.json"
 */
export function parseGuardedJson(text: string, name: string): { readonly ok: true; readonly value: JsonValue } | PlanFailure {
  if (text.length > LONGEST_JSON) {
    return planFailure('too-large', 'The plan is too large to be read.', `${name}, ${Math.round(text.length / 1048576)} MB`, 'Split the job into several plans.');
  }
  const { depth, values } = measure(text);
  if (depth > DEEPEST_JSON) return planFailure('damaged', 'The plan is nested far deeper than any plan this program writes.', name, RESTORE_COPY);
  if (values > MOST_JSON_VALUES) return planFailure('too-large', 'The plan has too many parts to be read.', name, 'Split the job into several plans.');
  try {
    const value: JsonValue = JSON.parse(text.startsWith('\ufeff') ? text.slice(1) : text);
    const key = findForbiddenKey(value);
    if (key) {
      const at = text.indexOf(`"${key}"`);
      return planFailure('damaged', `The plan has a name in it that is not allowed: ${key}.`, at < 0 ? name : `${name}, ${placeOf(text, at)}`, RESTORE_COPY);
    }
    return { ok: true, value };
  } catch {
    const { at, what } = faultOf(text);
    return planFailure('damaged', `The plan is not whole: ${what}.`, `${name}, ${placeOf(text, at)}`, RESTORE_COPY);
  }
}
