import type { TopicValues } from './topic.ts';

/** A number the calculator was given. @throws {RangeError} naming it when it is not one */
export function numberGiven(values: TopicValues, name: string): number {
  const value = values[name];
  if (typeof value !== 'number') throw new RangeError(`${name} is missing.`);
  return value;
}

/** An optional number the calculator was given. */
export const optionalNumber = (values: TopicValues, name: string): number | undefined => (values[name] === undefined ? undefined : numberGiven(values, name));

/** One of the choices the calculator was given. @throws {RangeError} naming it when it is none of them */
export function choiceGiven<Choice extends string>(values: TopicValues, name: string, choices: readonly Choice[]): Choice {
  const found = choices.find((choice) => choice === values[name]);
  if (found === undefined) throw new RangeError(`${name} must be one of ${choices.join(', ')}.`);
  return found;
}

/** The objects of a list the calculator was given. @throws {RangeError} naming it when it is not one */
export function listGiven(values: TopicValues, name: string): readonly TopicValues[] {
  const value = values[name];
  if (typeof value !== 'object') throw new RangeError(`${name} is missing.`);
  return value.filter((each): each is TopicValues => typeof each === 'object');
}

/** The numbers of a list the calculator was given. @throws {RangeError} naming it when it is not one */
export function numbersGiven(values: TopicValues, name: string): readonly number[] {
  const value = values[name];
  if (typeof value !== 'object') throw new RangeError(`${name} is missing.`);
  return value.filter((each): each is number => typeof each === 'number');
}
