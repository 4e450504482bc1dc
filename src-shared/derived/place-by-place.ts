/**
 * Wraps a pure function so that it makes a list of another one place by place, and from one list to the next only what
 * stands at a place where the item is another one than last time on the same ground. The list is the very same while
 * every thing on it is, so that its identity can stand for its content.
 * @param make  what stands at a place; it must follow from nothing but the item and the ground
 */
export function placeByPlace<A, G extends object, B>(make: (item: A, ground: G) => B): (items: readonly A[], ground: G) => readonly B[] {
  const kept = new WeakMap<G, { readonly items: readonly A[]; readonly made: readonly B[] }>();
  return (items, ground) => {
    const last = kept.get(ground);
    if (last?.items === items) return last.made;
    let made = last?.items.length === items.length ? undefined : (last?.made.slice(0, items.length) ?? []);
    for (let i = 0; i < items.length; i += 1) {
      const item = items[i] as A;
      if (last && i < last.items.length && last.items[i] === item) continue;
      const fresh = make(item, ground);
      if (!made && last?.made[i] === fresh) continue;
      made ??= last?.made.slice() ?? [];
      made[i] = fresh;
    }
    const list = made ?? last?.made ?? [];
    kept.set(ground, { items, made: list });
    return list;
  };
}
