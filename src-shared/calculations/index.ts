import type { Topic } from './topic.ts';

/** Every calculator, in the order in which a design needs them. */
export const TOPICS: readonly Topic[] = [];

/** The calculator of an id, if there is one. */
export const findTopic = (id: string): Topic | undefined => TOPICS.find((topic) => topic.id === id);
