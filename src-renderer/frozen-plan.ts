/** A plan that came from the window to a worker, frozen so that what is derived of it is kept. */
export function frozen<T>(thing: T): T {
  if (typeof thing === 'object' && thing !== null && !Object.isFrozen(thing)) {
    for (const part of Object.values(thing)) frozen(part);
    Object.freeze(thing);
  }
  return thing;
}
