/**
 * Keeps the last answer of a function of plain figures: in one plan most networks have the same cylinders. The function must
 * depend on nothing but its arguments.
 */
export function lastAnswer<A extends readonly (number | string | null)[], T>(work: (...figures: A) => T): (...figures: A) => T {
  let last: { readonly figures: A; readonly answer: T } | undefined;
  return (...figures) => {
    if (last?.figures.every((figure, i) => Object.is(figure, figures[i]))) return last.answer;
    const answer = work(...figures);
    last = { figures, answer };
    return answer;
  };
}
