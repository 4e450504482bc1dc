/**
 * Wraps a pure function so that it keeps its last answer for each key object and gives it again while the other
 * inputs are the very same objects. The wrapped function must depend on nothing but its arguments.
 */
export function remembered<K extends object, I extends readonly unknown[], V>(derive: (key: K, ...inputs: I) => V): (key: K, ...inputs: I) => V {
  const kept = new WeakMap<K, { readonly inputs: I; readonly value: V }>();
  return (key, ...inputs) => {
    const last = kept.get(key);
    if (last && last.inputs.length === inputs.length && last.inputs.every((input, i) => Object.is(input, inputs[i]))) return last.value;
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

/** The earlier list when it holds the very same things, so that its identity can stand for its content. */
export const sameList = <T>(earlier: readonly T[] | undefined, list: readonly T[]): readonly T[] =>
  earlier && earlier.length === list.length && earlier.every((thing, i) => Object.is(thing, list[i])) ? earlier : list;
