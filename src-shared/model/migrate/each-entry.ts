import type { JsonObject, JsonValue } from '../guarded-json.ts';

/** Whether a value of a plan file is an object with fields. */
export const isObject = (value: JsonValue | undefined): value is JsonObject => typeof value === 'object' && value !== null && !Array.isArray(value);

/** Gives every entry of a record more fields; what is no record is left for the schema to refuse. */
export const each = (record: JsonValue | undefined, change: (entry: JsonObject) => JsonObject): JsonValue =>
  isObject(record) ? Object.fromEntries(Object.entries(record).map(([id, entry]) => [id, isObject(entry) ? change(entry) : entry])) : (record ?? null);
