/** A copy of a part of the plan that shares nothing with it. */
export const copyOf = <T>(part: T): T => JSON.parse(JSON.stringify(part));
