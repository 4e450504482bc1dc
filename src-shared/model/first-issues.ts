import { z } from '../profile/zod.ts';

/** One thing wrong with a value: the way to it, and what is wrong in words. */
export interface Issue {
  readonly path: readonly (string | number)[];
  readonly text: string;
}

type ZodIssue = z.core.$ZodIssue;

const list = (values: readonly unknown[]): string => values.map((value) => `“${String(value)}”`).join(', ');
const TYPES: Readonly<Record<string, string>> = {
  string: 'a text', number: 'a number', boolean: 'true or false', object: 'an object', record: 'an object', array: 'a list', int: 'a whole number', null: 'empty',
};

/** What is wrong, in words that follow the name of the place: "must be a number". */
function textOf(issue: ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined ? 'is missing' : `must be ${TYPES[issue.expected] ?? issue.expected}`;
    case 'invalid_value':
      return `must be ${issue.values.length > 1 ? 'one of ' : ''}${list(issue.values.slice(0, 12))}`;
    case 'too_small':
      return issue.origin === 'array' ? `has fewer than ${issue.minimum} entries` : issue.origin === 'string' ? 'is empty' : `must be ${issue.inclusive === false ? 'more than' : 'at least'} ${issue.minimum}`;
    case 'too_big':
      return issue.origin === 'array' ? `has more than ${issue.maximum} entries` : issue.origin === 'string' ? `is longer than ${issue.maximum} characters` : `must be ${issue.inclusive === false ? 'less than' : 'at most'} ${issue.maximum}`;
    case 'unrecognized_keys':
      return `has parts that no plan has: ${list(issue.keys.slice(0, 5).map((key) => key.slice(0, 40)))}`;
    case 'invalid_format':
      return 'is not a name that may stand there';
    default:
      return 'is not as a plan has it';
  }
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null && !Array.isArray(value);

/** What is wrong with a value that has no parts, or with one taken whole. */
const wholeIssues = (schema: z.ZodType, value: unknown, path: Issue['path']): Issue[] => {
  const parsed = schema.safeParse(value, { reportInput: true });
  return parsed.success ? [] : parsed.error.issues.slice(0, 3).map((issue) => ({ path: [...path, ...issue.path.map((part) => (typeof part === 'number' ? part : String(part)))], text: textOf(issue) }));
};

/**
 * The first few things wrong with a value, part by part: stops early, so that a file with a million faults
 * costs no more than one with three. None is found exactly when the schema takes the value.
 * @param most how many are wanted
 */
export function firstIssues(schema: z.ZodType, value: unknown, most: number, path: Issue['path'] = []): Issue[] {
  if (schema instanceof z.ZodNullable) {
    const inner = schema.unwrap();
    return value === null || !(inner instanceof z.ZodType) ? [] : firstIssues(inner, value, most, path);
  }
  const found: Issue[] = [];
  const take = (part: unknown, inner: unknown, key: string | number): boolean => {
    if (inner instanceof z.ZodType) found.push(...firstIssues(inner, part, most - found.length, [...path, key]));
    return found.length < most;
  };
  if (schema instanceof z.ZodObject && isObject(value)) {
    const unknown = Object.keys(value).filter((key) => !Object.hasOwn(schema.shape, key));
    if (unknown.length > 0) found.push({ path, text: `has parts that no plan has: ${list(unknown.slice(0, 5).map((key) => key.slice(0, 40)))}` });
    for (const [key, inner] of Object.entries(schema.shape)) {
      if (!take(Object.hasOwn(value, key) ? value[key] : undefined, inner, key)) break;
    }
    return found;
  }
  if (schema instanceof z.ZodRecord && isObject(value)) {
    const keys = schema.keyType;
    for (const key of Object.keys(value)) {
      const isNamed = keys instanceof z.ZodType && keys.safeParse(key).success;
      if (!isNamed) found.push({ path: [...path, key.slice(0, 80)], text: 'has a name that is not allowed there' });
      if (found.length >= most || !take(value[key], schema.valueType, key)) break;
    }
    return found;
  }
  if (schema instanceof z.ZodArray && Array.isArray(value)) {
    for (const { _zod } of schema.def.checks ?? []) {
      const { def } = _zod;
      if ('minimum' in def && value.length < Number(def.minimum)) return [{ path, text: `has fewer than ${def.minimum} entries` }];
      if ('maximum' in def && value.length > Number(def.maximum)) return [{ path, text: `has more than ${def.maximum} entries` }];
    }
    for (const [index, part] of value.entries()) {
      if (!take(part, schema.element, index)) break;
    }
    return found;
  }
  return wholeIssues(schema, value, path);
}

/** The way to a value, with the names that the user gave on it: "levels › level-0 “Level 1” › enclosures". */
export function pathInWords(root: unknown, path: Issue['path']): string {
  let value: unknown = root;
  const words = path.map((part) => {
    value = typeof value === 'object' && value !== null && Object.hasOwn(value, part) ? (value as Readonly<Record<string | number, unknown>>)[part] : undefined;
    const name = isObject(value) && typeof value.name === 'string' ? value.name.slice(0, 60) : '';
    return name ? `${part} “${name}”` : typeof part === 'number' ? String(part + 1) : part;
  });
  return words.join(' › ');
}
