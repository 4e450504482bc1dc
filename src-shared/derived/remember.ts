/** Whether two lists hold the very same things. */
function isSameList(one: readonly unknown[], other: readonly unknown[]): boolean {
  if (one.length !== other.length) return false;
  for (let i = 0; i < one.length; i += 1) if (!Object.is(one[i], other[i])) return false;
  return true;
}

/**
 * Wraps a pure function so that it keeps its last answer for each key object and gives it again while the other
 * inputs are the very same objects. The wrapped function must depend on nothing but its arguments. Handed bare to a
 * list it would be given places and lists as inputs, too, and keep nothing. An earlier version of the key must be no
 * input: each version would keep the one before it for ever.
 */
export function remembered<K extends object, I extends readonly unknown[], V>(derive: (key: K, ...inputs: I) => V): (key: K, ...inputs: I) => V {
  const kept = new WeakMap<K, { readonly inputs: I; readonly value: V }>();
  return (key, ...inputs) => {
    const last = kept.get(key);
    if (last && isSameList(last.inputs, inputs)) return last.value;
    const value = derive(key, ...inputs);
    kept.set(key, { inputs, value });
    return value;
  };
}

/**
 * The same for parts of a plan. Commands freeze the plan that they make and keep what they do not touch, so that
 * an unchanged part keeps its identity and is not derived anew. A part that is not frozen could still be changed in
 * place: it is derived every time.
 */
export function rememberedPart<K extends object, I extends readonly unknown[], V>(derive: (key: K, ...inputs: I) => V): (key: K, ...inputs: I) => V {
  const keeping = remembered(derive);
  return (key, ...inputs) => (Object.isFrozen(key) ? keeping(key, ...inputs) : derive(key, ...inputs));
}

function isPlain(thing: unknown): thing is Readonly<Record<string, unknown>> {
  if (typeof thing !== 'object' || thing === null) return false;
  const kind = Object.getPrototypeOf(thing);
  return kind === Object.prototype || kind === Array.prototype;
}

/**
 * Whether two things are the same, or plain lists and records of the same things.
 * @param depth  records within records; what lies deeper must be the very same object
 */
export function isAlike(one: unknown, other: unknown, depth: number): boolean {
  if (Object.is(one, other)) return true;
  if (depth === 0 || !isPlain(one) || !isPlain(other) || Array.isArray(one) !== Array.isArray(other)) return false;
  // Walked without lists of keys: a step of a drag compares thousands of records.
  let left = 0;
  for (const _ in other) left += 1;
  for (const key in one) {
    if (!Object.hasOwn(other, key) || !isAlike(one[key], other[key], depth - 1)) return false;
    left -= 1;
  }
  return left === 0;
}

/**
 * Keeps the last thing of each key object, and answers it for a later one that is alike down to a depth, so that its
 * identity can stand for its content.
 */
export function keeping<K extends object, V>(depth: number): (key: K, fresh: V) => V {
  const kept = new WeakMap<K, { readonly value: V }>();
  return (key, fresh) => {
    const last = kept.get(key);
    if (last && isAlike(last.value, fresh, depth)) return last.value;
    kept.set(key, { value: fresh });
    return fresh;
  };
}

/** The earlier list when it holds the very same things, so that its identity can stand for its content. */
export const sameList = <T>(earlier: readonly T[] | undefined, list: readonly T[]): readonly T[] =>
  earlier && isSameList(earlier, list) ? earlier : list;
