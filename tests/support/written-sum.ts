/**
 * Works out a sum as a calculation line writes it: numbers, + − · / ^, brackets, ln, log10, exp and √; "…, rounded up".
 * It knows nothing of the program: only what the paper says.
 */
export function writtenSum(written: string): number {
  const isRounded = written.endsWith(', rounded up');
  const text = written.replace(', rounded up', '').replace(/ /g, '');
  let at = 0;
  const take = (sign: string): boolean => {
    if (!text.startsWith(sign, at)) return false;
    at += sign.length;
    return true;
  };
  const number = (): number => {
    const found = /^\d+(?:\.\d+)?/.exec(text.slice(at))?.[0];
    if (found === undefined) throw new Error(`No number at “${text.slice(at)}” of “${written}”.`);
    at += found.length;
    return Number(found);
  };
  const functions: readonly (readonly [name: string, of: (value: number) => number])[] = [
    ['ln', Math.log],
    ['log10', Math.log10],
    ['exp', Math.exp],
    ['√', Math.sqrt],
    ['', (value) => value],
  ];
  const single = (): number => {
    if (take('−')) return -power();
    for (const [name, of] of functions) {
      if (!take(`${name}(`)) continue;
      const inside = sum();
      if (!take(')')) throw new Error(`No closing bracket in “${written}”.`);
      return of(inside);
    }
    return number();
  };
  const power = (): number => {
    const base = single();
    return take('^') ? base ** power() : base;
  };
  const product = (): number => {
    let value = power();
    for (;;) {
      if (take('·')) value *= power();
      else if (take('/')) value /= power();
      else return value;
    }
  };
  const sum = (): number => {
    let value = product();
    for (;;) {
      if (take('+')) value += product();
      else if (take('−')) value -= product();
      else return value;
    }
  };
  const value = sum();
  if (at < text.length) throw new Error(`“${text.slice(at)}” of “${written}” cannot be read.`);
  return isRounded ? Math.ceil(value) : value;
}

/** The first number of a result: "24.13 kg = 53.2 lb" is 24.13. */
export function resultNumber(result: string): number {
  const found = /−?\d+(?:\.\d+)?/.exec(result)?.[0];
  if (found === undefined) throw new Error(`“${result}” begins with no number.`);
  return Number(found.replace('−', '-'));
}

/** What is wrong with a line whose numbers do not give its result within its last printed digit; undefined when they do. */
export function missedResult({ label, numbers, result }: { readonly label: string; readonly numbers: string; readonly result: string }): string | undefined {
  if (numbers === '') return undefined;
  const byHand = writtenSum(numbers);
  if (result === 'longer than a day') return byHand > 86_400 ? undefined : `${label}: ${numbers} is ${byHand}, not ${result}`;
  const printed = resultNumber(result);
  // Half a unit of the last printed digit, and what six figures inside the formula can shift.
  const decimals = /−?\d+(?:\.(\d+))?/.exec(result)?.[1]?.length ?? 0;
  return Math.abs(byHand - printed) <= 0.51 * 10 ** -decimals + 2e-4 * Math.abs(printed) ? undefined : `${label}: ${numbers} is ${byHand}, not ${result}`;
}
