/** Share of a limit that float noise may make up. */
const NOISE = 1e-9;

/** Slack given to a comparison with a limit that is no length or angle, so that float noise never turns a kept limit into a fault. */
export const slackOf = (limit: number): number => NOISE * Math.abs(limit);
