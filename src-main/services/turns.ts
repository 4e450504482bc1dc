/** Runs pieces of work with the same key one after the other, in the order they came. */
export type InTurn = <T>(key: string, work: () => Promise<T>) => Promise<T>;

export function makeTurns(): InTurn {
  const last = new Map<string, Promise<unknown>>();
  return (key, work) => {
    const turn = (last.get(key) ?? Promise.resolve()).then(work);
    const settled = turn.then(
      () => undefined,
      () => undefined,
    );
    last.set(key, settled);
    void settled.then(() => {
      if (last.get(key) === settled) last.delete(key);
    });
    return turn;
  };
}
