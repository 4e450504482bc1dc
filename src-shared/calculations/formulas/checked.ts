/** A number that a formula can use. @throws {RangeError} naming it when it is not finite */
export function finite(name: string, value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`${name} must be a finite number, not ${value}.`);
  return value;
}

/** A number above zero. @throws {RangeError} naming it otherwise */
export function positive(name: string, value: number): number {
  if (!(finite(name, value) > 0)) throw new RangeError(`${name} must be above 0, not ${value}.`);
  return value;
}

/** Zero or more. @throws {RangeError} naming it otherwise */
export function notNegative(name: string, value: number): number {
  if (!(finite(name, value) >= 0)) throw new RangeError(`${name} must be 0 or more, not ${value}.`);
  return value;
}

/** A number in a range, ends included. @throws {RangeError} naming it otherwise */
export function within(name: string, value: number, least: number, greatest: number): number {
  if (!(finite(name, value) >= least && value <= greatest)) throw new RangeError(`${name} must be from ${least} to ${greatest}, not ${value}.`);
  return value;
}

/** A number between two, ends not included. @throws {RangeError} naming it otherwise */
export function between(name: string, value: number, least: number, greatest: number): number {
  if (!(finite(name, value) > least && value < greatest)) throw new RangeError(`${name} must be above ${least} and below ${greatest}, not ${value}.`);
  return value;
}
